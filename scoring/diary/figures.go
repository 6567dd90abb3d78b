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
	All    Span   // of all periods together
	Spans  []Span // ascending, only those in which there was any
}

// Span is what came of a stretch of days.
type Span struct {
	From, To string           // first and last day of the stretch, 2006-01-02
	Right, N int              // of N answers, or of N dums asked for, were right, or tapped within the window
	Share    scoring.Estimate // Wilson
}

// Fingers are how taps lay about the dums of one rhythm: finger timing.
type Fingers struct {
	Rhythm string
	Rounds int
	Taps   int              // that belong to a dum
	Out    int              // dums left out
	Added  int              // taps that belong to none
	Bins   []int            // taps by offset less set-up, BinWidth each, the first from −Reached
	Bias   scoring.Estimate // ms: + behind, − ahead; rounds are its observations
	Spread scoring.Estimate // ms
	Counts []Count          // by dum of the cycle
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

// Mixed is what was said for what was played, where a rhythm was told by name.
type Mixed struct {
	Rhythms   []string // the rows and columns
	Said      [][]int  // Said[i][j]: how often j was said for i
	Agreement scoring.Estimate
	// Worst are the mix-ups in order, the worst first: by their share, of those with
	// LeastMixed answers or more.
	Worst []MixUp
}

// MixUp is one rhythm taken for another.
type MixUp struct {
	Played, Said string
	Share        scoring.Estimate // of the times that Played was played
}

// Reach is how much riff one hears through, over time: the hide at which answers are
// right half way between chance and best.
type Reach struct {
	Kind  string           // of round, as in package history
	Now   scoring.Estimate // hide, 0 to 1, of the latest answers
	Spans []Heard          // ascending
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
	Right, N     int    // of N rounds; a tapped round is right as package quiz says
}
