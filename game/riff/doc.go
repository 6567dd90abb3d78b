// Package riff decides what the two drums of a round play over a rhythm: the
// lead drum, which fills and ornaments, and the bass drum, which holds the base.
// The result is strokes on steps, not times and not sound.
//
// The bass drum plays the whole skeleton at every level, every dum firm and in
// its place and the teks soft, so that the base is always there to be heard; but
// for declared breaks and rolls, the open spans of a part, in which both drums go
// together and nothing is ever asked.
//
// # What the lead drum plays
//
// Bare and Filled are patterns of the rhythm's own file. The other levels are made
// from a seed, of what drummers of the darbuka play:
//
//   - light strokes in the gaps, the hands in turn, so that the strong hand is free
//     for the next full stroke; doubles, and three strokes in the time of two;
//   - accents in threes and twos against the fours of the metre, 3-3-2 above all;
//     in odd metres within the printed groups;
//   - phrases of four cycles (of two where a cycle is an eight or longer): three
//     plain and the fourth filled, question and answer; four such phrases state a
//     theme, develop it and close it, and then comes another theme;
//   - a short fill that leads into the next phrase, a long one that ends it; fills
//     grow, and resolve on the next 1; from cycle to cycle of a phrase the high
//     strokes swell;
//   - at the ends of answers, never in the first phrase: breaks, a few accents of
//     both drums and a stop, and rolls of the lead drum.
//
// At Ornamented the lead drum says every dum of the base and no other. At Riffing
// it says some of them and has dums of its own. At Solo it says none: where one
// falls it strikes high, or not at all. So the base is hidden further from level to
// level: over every supplied rhythm and whatever the seed, by [Hide] at the usual
// tempo, up to 0.05 at Bare, 0.15 at Filled and 0.25 at Ornamented, 0.05 to 0.6 at
// Riffing and 0.3 to 0.75 at Solo. [Hidden] finds a riff that hides as much as asked.
//
// Fills in the rests, the bridge to the next 1 and the drums' roles: wikipedia.org,
// "Dumbek rhythms"; danzaemusicaaraba.com, "Doholla o tar". Phrases of four, and
// three and one: M. Frishkopf, University of Alberta, "Percussion piece"; Saqra,
// shira.net, on drum solos; threewinds.wordpress.com, 2009. Groups of three and
// two: toppetcaretraining.blogspot.com, 2021. Fills in the second half of masmudi
// kabir and at the end of çiftetelli: threewinds.wordpress.com; Phantis,
// "Tsifteteli". The end on a stop or a roll: serpentine.org, "Drum solos". What is
// combined with what, and how often, is common practice, without a source.
//
// # The same for ever
//
// A seed is a promise: the same rhythm, level and seed give the same riff on every
// machine, as long as [Version] stays. Every decision is made in whole numbers.
// Each cycle can be had by itself ([Riff.Cycles]). A riff is made for the rhythm's
// fastest tempo and is the same at every slower one, to practise slowly and then
// at full speed; see [HandGap] for what hands can do, and [Riff.At] for tempi
// beyond.
package riff
