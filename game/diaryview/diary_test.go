package diaryview

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// An invented dancer, Mira, who has practised on the loudspeaker in her kitchen for
// five weeks. Nothing of it was measured.
const diaryToday = "2026-03-14"

var diaryWeeks = [][2]string{{"2026-02-08", "2026-02-14"}, {"2026-02-15", "2026-02-21"},
	{"2026-02-22", "2026-02-28"}, {"2026-03-01", "2026-03-07"}, {"2026-03-08", "2026-03-14"}}

// accuracy is so many right of so many, week by week; none of a week without any.
func accuracy(rhythm string, tapped bool, weeks ...[2]int) diary.Accuracy {
	a := diary.Accuracy{Rhythm: rhythm, Tapped: tapped}
	for i, of := range weeks {
		if of[1] == 0 {
			continue
		}
		a.Spans = append(a.Spans, diary.Span{From: diaryWeeks[i][0], To: diaryWeeks[i][1],
			Right: of[0], N: of[1], Share: stat.Share(of[0], of[1])})
		a.All.Right, a.All.N = a.All.Right+of[0], a.All.N+of[1]
	}
	a.All.From, a.All.To = a.Spans[0].From, a.Spans[len(a.Spans)-1].To
	a.All.Share = stat.Share(a.All.Right, a.All.N)
	return a
}

// about0 is an estimate in the middle of its interval.
func estimate(value, half float64, n int) scoring.Estimate {
	return scoring.Estimated(value, value-half, value+half, n, 6)
}

// tapping is finger timing of normally distributed taps.
func fingering(rhythm string, rounds, taps int, bias, half, spread float64, counts ...diary.Count) diary.Fingers {
	f := diary.Fingers{Rhythm: rhythm, Rounds: rounds, Taps: taps, Out: taps / 20, Added: taps / 40,
		Bias: estimate(bias, half, rounds), Spread: scoring.Estimated(spread, 0.9*spread, 1.12*spread, rounds, 6), Counts: counts}
	f.Bins = make([]int, 2*diary.Reached/diary.BinWidth)
	chance := rand.New(rand.NewPCG(uint64(rounds), uint64(taps)))
	for range taps {
		bin := int(math.Floor((bias + spread*chance.NormFloat64() + diary.Reached) / diary.BinWidth))
		f.Bins[max(0, min(len(f.Bins)-1, bin))]++
	}
	return f
}

func miraFigures() diary.Figures {
	return diary.Figures{Output: "kitchen", Rounds: 214,
		Accuracy: []diary.Accuracy{
			accuracy("maqsum", false, [2]int{11, 14}, [2]int{17, 20}, [2]int{15, 16}, [2]int{21, 22}, [2]int{13, 13}),
			accuracy("saidi", false, [2]int{5, 13}, [2]int{9, 18}, [2]int{11, 17}, [2]int{17, 21}, [2]int{18, 20}),
			accuracy("baladi", false, [2]int{10, 12}, [2]int{12, 15}, [2]int{3, 5}, [2]int{12, 14}, [2]int{11, 13}),
			accuracy("masmudi-kabir", false, [2]int{8, 12}, [2]int{0, 0}, [2]int{9, 13}, [2]int{10, 12}, [2]int{4, 6}),
			accuracy("ciftetelli", false, [2]int{0, 0}, [2]int{0, 0}, [2]int{6, 14}, [2]int{7, 13}, [2]int{8, 12}),
			accuracy("ayyub", false, [2]int{0, 0}, [2]int{0, 0}, [2]int{0, 0}, [2]int{2, 3}, [2]int{2, 4}),
			accuracy("maqsum", true, [2]int{61, 96}, [2]int{112, 160}, [2]int{72, 96}, [2]int{104, 128}, [2]int{56, 64}),
			accuracy("saidi", true, [2]int{50, 96}, [2]int{60, 96}, [2]int{64, 96}, [2]int{0, 0}, [2]int{68, 96}),
			accuracy("malfuf", true, [2]int{0, 0}, [2]int{29, 32}, [2]int{0, 0}, [2]int{61, 64}, [2]int{31, 32}),
			accuracy("ayyub", true, [2]int{0, 0}, [2]int{0, 0}, [2]int{0, 0}, [2]int{0, 0}, [2]int{5, 8}),
		},
		Fingers: []diary.Fingers{
			fingering("maqsum", 34, 512, -6, 3, 21, diary.Count{Step: 0, Offset: estimate(-14, 4, 34)}, diary.Count{Step: 4, Offset: estimate(2, 5, 34)}),
			fingering("saidi", 24, 336, 17, 5, 27, diary.Count{Step: 0, Offset: estimate(5, 6, 24)},
				diary.Count{Step: 3, Offset: estimate(12, 6, 24)}, diary.Count{Step: 4, Offset: estimate(34, 7, 24)}),
			fingering("malfuf", 8, 121, 4, 7, 16, diary.Count{Step: 0, Offset: estimate(4, 7, 8)}),
			fingering("ciftetelli", 7, 60, -3, 16, 38, diary.Count{Step: 0, Offset: estimate(-8, 14, 7)},
				diary.Count{Step: 8, Offset: estimate(-66, 21, 7)}, diary.Count{Step: 10, Offset: scoring.Unknown(4, 6)}),
			{Rhythm: "ayyub", Rounds: 2, Taps: 13, Out: 3, Bias: scoring.Unknown(2, 6), Spread: scoring.Unknown(2, 6),
				Bins: make([]int, 2*diary.Reached/diary.BinWidth), Counts: []diary.Count{{Step: 0, Offset: scoring.Unknown(2, 6)}, {Step: 4, Offset: scoring.Unknown(2, 6)}}},
		},
		Mixed: diary.Mixed{
			Rhythms: []string{"maqsum", "saidi", "baladi", "masmudi-kabir", "ciftetelli", "ayyub"},
			Said:    [][]int{{77, 5, 3, 0, 0, 0}, {19, 60, 9, 1, 0, 0}, {4, 6, 48, 1, 0, 0}, {1, 0, 1, 31, 10, 0}, {0, 0, 1, 17, 21, 0}, {0, 0, 0, 0, 0, 4}},
			Worst: []diary.MixUp{{Played: "ciftetelli", Said: "masmudi-kabir", Share: stat.Share(17, 39)},
				{Played: "saidi", Said: "maqsum", Share: stat.Share(19, 89)}},
		},
		Reach: []diary.Reach{
			{Kind: "which", Now: scoring.Estimated(0.42, 0.33, 0.49, 120, 30), Spans: []diary.Heard{
				{From: "2026-02-08", To: "2026-02-14", Hide: scoring.Estimated(0.14, 0.06, 0.22, 33, 30)},
				{From: "2026-02-15", To: "2026-02-21", Hide: scoring.Estimated(0.21, 0.13, 0.3, 38, 30)},
				{From: "2026-02-22", To: "2026-02-28", Hide: scoring.Unknown(11, 30)},
				{From: "2026-03-01", To: "2026-03-07", Hide: scoring.Estimated(0.36, 0.27, 0.45, 40, 30)},
				{From: "2026-03-08", To: "2026-03-14", Hide: scoring.Estimated(0.44, 0.36, 0.53, 42, 30)}}},
			{Kind: "dums", Now: scoring.Estimated(0.31, 0.12, 0.55, 31, 30), Spans: []diary.Heard{
				{From: "2026-03-01", To: "2026-03-07", Hide: scoring.Unknown(14, 30)}, {From: "2026-03-08", To: "2026-03-14", Hide: scoring.Unknown(17, 30)}}},
			{Kind: "same", Now: scoring.Unknown(12, 30), Spans: []diary.Heard{{From: "2026-03-08", To: "2026-03-14", Hide: scoring.Unknown(12, 30)}}},
		},
		Practised: []diary.Practice{
			{Day: "2026-03-14", Rounds: 9, Kinds: map[string]int{"dums": 4, "which": 5}},
			{Day: "2026-03-13", Rounds: 3, Kinds: map[string]int{"which": 3}},
			{Day: "2026-03-11", Rounds: 24, Kinds: map[string]int{"dums": 8, "which": 12, "stop": 2, "change": 2}},
			{Day: "2026-03-07", Rounds: 12, Kinds: map[string]int{"dums": 12}},
			{Day: "2026-03-04", Rounds: 7, Kinds: map[string]int{"dums": 2, "same": 3, "stroke": 1, "how-many": 1}},
			{Day: "2026-02-28", Rounds: 1, Kinds: map[string]int{"which": 1}},
			{Day: "2026-02-11", Rounds: 15, Kinds: map[string]int{"dums": 7, "which": 8}},
			{Day: "2025-12-30", Rounds: 2, Kinds: map[string]int{"dums": 2}},
		}}
}

// beginning is a diary in which there are rounds, and too few of everything.
func beginning() diary.Figures {
	all := miraFigures()
	return diary.Figures{Output: "kitchen", Rounds: 11,
		Accuracy: []diary.Accuracy{all.Accuracy[5], all.Accuracy[9]}, Fingers: all.Fingers[4:],
		Mixed: diary.Mixed{Rhythms: []string{"ayyub", "maqsum"}, Said: [][]int{{4, 3}, {0, 0}}},
		Reach: all.Reach[2:], Practised: all.Practised[:1]}
}

func mira(t testing.TB) *Diary {
	return &Diary{
		People: []Person{{"a", "Mira"}, {"b", "Leila"}}, Who: "a", Outputs: []string{"kitchen", "headphones", ""},
		Rounds: 260, Figures: miraFigures(), Today: diaryToday, Rhythms: everyRhythm(t), Minutes: 10,
		Next: []Next{{Reason: ReasonMixUp, Kind: "which", Rhythms: []string{"ciftetelli", "masmudi-kabir"}},
			{Reason: ReasonDue, Kind: "dums", Rhythms: []string{"baladi"}}, {Reason: ReasonWell, Kind: "dums", Rhythms: []string{"malfuf"}}},
	}
}

func diaryScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, change func(*Diary)) {
		d := mira(t)
		change(d)
		all["diary-"+name] = d.Screen(w)
	}
	add("told", func(*Diary) {})
	add("empty", func(d *Diary) {
		d.People, d.Outputs, d.Rounds, d.Figures = []Person{{ID: "a"}}, nil, 0, diary.Figures{}
		d.Next = []Next{{Reason: ReasonFirst, Kind: "dums", Rhythms: []string{"maqsum"}}, {Reason: ReasonSlow, Kind: "dums", Rhythms: []string{"malfuf"}, Tempi: []int{90}}, {Reason: ReasonRung, Kind: "stroke"}}
	})
	add("beginning", func(d *Diary) {
		d.People, d.Outputs, d.Rounds, d.Figures = d.People[:1], nil, 11, beginning()
		d.Next = []Next{{Reason: ReasonEdge, Kind: "which", Rhythms: []string{"maqsum", "baladi", "saidi"}, Level: view.LevelOrnamented}, {Reason: ReasonTempo, Kind: "dums", Rhythms: []string{"maqsum"}, Tempi: []int{88, 96, 100}}}
	})
	add("silent", func(d *Diary) { d.Silent, d.Minutes, d.Notes = true, 5, []view.Note{view.NoteNotKept} })
	add("import", func(d *Diary) {
		d.Minutes = 20
		d.Import = &Import{File: "mira.jsonl", New: 31, Here: 180, Newer: 2, People: []string{"Mira", "Samia"}, Own: true, Broken: []Broken{{12, "no comma"}, {40, "unknown kind \"sing\""},
			{41, "no comma"}, {42, "no comma"}, {43, "no comma"}, {44, "no comma"}, {99, "no end"}}}
	})
	add("import-nothing", func(d *Diary) { d.Import = &Import{File: "mira.jsonl", Here: 1} })
	add("imported", func(d *Diary) {
		d.Imported, d.SetAside, d.Newer, d.MayGo = Imported{"mira.jsonl", "2026-03-13", 31}, 1, 2, true
	})
	add("erasing", func(d *Diary) { d.Erasing = EraseOne })
	add("erasing-all", func(d *Diary) { d.Erasing = EraseEverybody })
	add("failed", func(d *Diary) { d.Failed, d.Rounds, d.Figures, d.Next = true, 0, diary.Figures{}, nil })
	add("behind", func(d *Diary) { d.Behind, d.Typed, d.Problem = 9000, "mira", NameUsed })
	add("merging", func(d *Diary) { d.Merging = "b" })
	add("invented", func(d *Diary) { d.Invented, d.Figures.Output = true, "" })

	ready := dums(t, view.Ready).Screen(w)
	all["diary-practice-ready"] = Practice{Part: 2, Parts: 7, Minutes: 6}.On(ready, w)
	return all
}

// diaryPictures is one of each, with what is rare in it.
func diaryPictures(t testing.TB) map[string]*picture.Picture {
	w, d := words(t), mira(t)
	f := &d.Figures
	days := timeline{first: "2026-02-08", last: diaryToday}
	many := mira(t)
	many.Figures.Mixed = everyOne(t)
	return map[string]*picture.Picture{
		"diary-right":         d.right(w, f.Accuracy[1], days),
		"diary-right-one":     d.right(w, f.Accuracy[3], days),
		"diary-right-year":    d.right(w, year(), timeline{first: "2025-09-14", last: diaryToday}),
		"diary-fingers":       d.fingers(w, f.Fingers[1]),
		"diary-fingers-wide":  d.fingers(w, f.Fingers[3]),
		"diary-round":         d.round(w, d.rhythm("saidi"), f.Fingers[1]),
		"diary-round-unknown": d.round(w, d.rhythm("ciftetelli"), f.Fingers[3]),
		"diary-mixed":         d.mixed(w),
		"diary-mixed-many":    many.mixed(w),
		"diary-reach":         d.reached(w, f.Reach[0], days),
		"diary-reach-now":     d.reached(w, f.Reach[1], timeline{first: diaryToday, last: diaryToday}),
		"diary-days":          d.practised(w),
	}
}

// year is half a year of weeks, as many as are shown.
func year() diary.Accuracy {
	a := diary.Accuracy{Rhythm: "maqsum"}
	last, _ := time.Parse(time.DateOnly, diaryToday)
	for i := range 26 {
		to := last.AddDate(0, 0, 7*(i-25))
		a.Spans = append(a.Spans, diary.Span{From: to.AddDate(0, 0, -6).Format(time.DateOnly), To: to.Format(time.DateOnly),
			Right: 9 + (i*7)%5 + i/3, N: 24, Share: stat.Share(9+(i*7)%5+i/3, 24)})
	}
	return a
}

// everyOne is mix-ups among as many rhythms as a quiz may ask.
func everyOne(t testing.TB) diary.Mixed {
	var m diary.Mixed
	for _, c := range everyRhythm(t) {
		if c.Quiz {
			m.Rhythms = append(m.Rhythms, c.ID)
		}
	}
	for i := range m.Rhythms {
		said := make([]int, len(m.Rhythms))
		said[i], said[(i*5+1)%len(said)], said[(i*3+2)%len(said)] = 15, 4, 1+i
		m.Said = append(m.Said, said)
	}
	return m
}

func TestDiaryFindings(t *testing.T) {
	w, d := words(t), mira(t)
	require.Equal(t, "You have become surer of sa'idi: 38 % right at first, 90 % now.", d.findRight(w, false).text)
	require.Equal(t, "More dums of maqsum are not missed: 64 % at first, 88 % now.", d.findRight(w, true).text)
	require.Equal(t, "You tap sa'idi about 17 ms behind (12 to 22 ms).", d.findFingers(w).text)
	require.Equal(t, "In çiftetelli your 5 comes about 63 ms earlier than its dums on the whole (28 to 98 ms).", d.findRound(w).text)
	require.Equal(t, "You take çiftetelli for masmudi kabir about 44 % of the time (29 to 59 %).", d.findMixed(w, nil).text)
	require.Equal(t, "In “Which rhythm?” you hear through more riff than at first: now riffing.", d.findReach(w).text)
	require.Equal(t, "73 rounds on 8 days since 30 December 2025.", d.findPractised(w))
}
