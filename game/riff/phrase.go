package riff

// A bar is what one cycle is in its phrase.
type bar byte

const (
	stated   bar = 'A' // the theme
	varied   bar = 'V' // the theme with another end
	asked    bar = 'Q' // its beginning, then air: the base alone is heard
	answered bar = 'B' // what answers it
	led      bar = 'f' // the theme, and a short fill into the next phrase
	crowned  bar = 'F' // a long fill that ends the phrase
	broken   bar = 'X' // a declared break ends it
	rolled   bar = 'R' // a declared roll ends it
)

// themePhrases is how many phrases one theme lasts: a question and its answer,
// developed and closed.
const themePhrases = 4

// orders are the orders of the bars in the four phrases of a theme: three plain
// and the fourth filled, question and answer, the theme developed, and its end.
// (Three and one, and question and answer: M. Frishkopf, University of Alberta,
// "Percussion piece"; fours, the last ornamented or rolled: threewinds.wordpress.com,
// 2009; the rest common practice, no source.)
var orders = [themePhrases][]string{
	{"AAAf", "AAAf", "ABAf"},
	{"AAAF", "AAVF", "ABAF", "QBQF"},
	{"VVVf", "AVAf", "QVQf"},
	{"AVBF", "VAVF", "QBVF"},
}

// shortOrders are those of phrases of two cycles.
var shortOrders = [themePhrases][]string{
	{"Af"},
	{"AF"},
	{"Af", "Qf"},
	{"AF", "BF", "VF"},
}

// openOdds is how often, in a hundred, the last cycle of an answer is a declared
// break or roll: of the first answer of a theme, and of the one that closes it.
var openOdds = [...][2]int{Ornamented: {}, Riffing: {25, 60}, Solo: {40, 85}}

// order returns what the bars of a phrase are.
func (r Riff) order(phrase int) string {
	c := draw(r.seed, r.level, forPlan, phrase)
	ways := orders
	if r.phrase == 2 {
		ways = shortOrders
	}
	bars := []byte(one(c, ways[phrase%themePhrases]))
	if phrase%2 == 1 && c.percent(openOdds[r.level][phrase%themePhrases/2]) {
		bars[len(bars)-1] = byte(one(c, []bar{broken, rolled}))
	}
	return string(bars)
}

// bar returns what a cycle is, and which phrase it belongs to.
func (r Riff) bar(cycle int) (kind bar, phrase int) {
	phrase = cycle / r.phrase
	if r.level <= Filled {
		return stated, phrase
	}
	return bar(r.order(phrase)[cycle%r.phrase]), phrase
}
