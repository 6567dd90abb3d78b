package diary

import "groundbeat/scoring"

// Figures are what a diary tells about one player on one output. Results of different
// outputs are never put together: each is late, and audible, in its own way.
type Figures struct {
	Output    string // as the player named it; "" where none was measured
	Rounds    int
	Accuracy  []Accuracy // by rhythm, the most practised first
	Fingers   []Fingers  // likewise
	Mixed     Mixed
	Reach     []Reach    // by kind of round, the most practised first
	Practised []Practice // by day, the latest first
}

// Accuracy is how often one rhythm was told, or its dums were tapped, over time.
type Accuracy struct {
	Rhythm string // name of its file
	Tapped bool   // its dums were tapped in time; else it was told by name
	Rounds int
	All    Span    // of all periods together
	Spans  []Span  // ascending, only those in which there was any
	Levels []Level // by riff level, the barest first
}

// Level is what came of one riff level in all periods together.
type Level struct {
	Riff string // as in package history
	Span
}

// Span is what came of a stretch of days.
type Span struct {
	From, To string // first and last day of the stretch, 2006-01-02
	Right, N int    // of N answers, or of N dums asked for, were right, or tapped within the window
	// Share is Right of N. Of answers by name its observations are the answers; of dums
	// tapped they are the rounds: dums of one round are missed together.
	Share scoring.Estimate
	// Full is how full the riffs were: the mean of their levels, from 0, bare, to 4, solo.
	// BPM is how fast dums were tapped, in beats a minute, in the mean of the rounds; of
	// answers by name it is 0. Where difficulty follows the player both become more as
	// she learns.
	Full, BPM float64
}

// Fingers are how taps lay about the dums of one rhythm in the latest rounds that came
// out right, at most [LatestRounds]: finger timing.
type Fingers struct {
	Rhythm   string
	From, To string // first and last day of these rounds
	Rounds   int
	Taps     int              // that belong to a dum
	Out      int              // dums left out
	Added    int              // taps that belong to none
	Bins     []int            // taps by offset less set-up, BinWidth each, the first from −Reached
	Bias     scoring.Estimate // ms: + behind, − ahead; rounds are its observations
	Spread   scoring.Estimate // ms
	Counts   []Count          // by dum of the cycle
}

// BinWidth is the width of a bin of Fingers, and Reached how far they go to either
// side, in ms. Taps beyond are counted in the outermost.
const (
	BinWidth = 5
	Reached  = 150
)

// Count is how taps lay about one dum of the cycle.
type Count struct {
	Step   int              // in the cycle, from 0
	Offset scoring.Estimate // ms: + behind, − ahead; rounds are its observations
}

// Mixed is what was said for what was played, where a rhythm was told by name: the
// latest answers, those of whole days, back to where there are [LatestAnswers].
type Mixed struct {
	Rhythms []string // the rows and columns
	Said    [][]int  // Said[i][j]: how often j was said for i
	// Worst are the mix-ups in order, the worst first: by their share, of those with
	// LeastMixed answers or more. What was said but once is a slip, and none.
	Worst []MixUp
}

// MixUp is one rhythm taken for another.
type MixUp struct {
	Played, Said string
	Share        scoring.Estimate // of the times that Played was played
}

// Reach is how much riff one hears through, over time: the hide at which answers are
// right half way between chance and best. Rounds with a help for the ear tell nothing of
// it. Chance is one of the choices. Of changes only those count in which the rhythm did
// change, and chance is half of that: unsure, one presses or does not. Where dums are
// tapped it is what one gets who knows rhythm and tempo but does not hear where in the
// cycle it is.
type Reach struct {
	Kind  string           // of round, as in package history
	N     int              // rounds whose hide is known
	Now   scoring.Estimate // hide, 0 to 1, of the latest answers, at most LatestHeard
	Spans []Heard          // ascending, each of its latest LatestHeard answers at most
}

// Heard is how far one heard through in a stretch of days.
type Heard struct {
	From, To string
	Hide     scoring.Estimate
}

// Practice is one day on which something was practised.
type Practice struct {
	Day    string // 2006-01-02, where the player was
	Rounds int
	Kinds  map[string]int // rounds by kind
}

// Met is what came of one rhythm at one riff level on one day: for spaced review.
type Met struct {
	Rhythm, Riff string
	Day          string // 2006-01-02
	Right, N     int    // of N rounds; see [history.Right]
}
