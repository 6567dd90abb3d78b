package riff_test

import (
	"fmt"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A phrase of maqsum at each level, in the letters that drummers write: four
// cycles, and the bass drum below them.
func Example() {
	maqsum, err := rhythm.Parse("maqsum.txt", strings.NewReader(
		"name: maqsum\nmetre: 4/4\nskeleton: DT-TD-T-\nfilled: D-T-kkT-D-kkT-kk\n"+
			"tempo: 90 105 130 quarter\nmemory: all of it\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for level := riff.Bare; level <= riff.Solo; level++ {
		part, err := riff.Play(maqsum, level, 4, 11)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(level)
		for cycle := range 4 {
			fmt.Println("  " + letters(maqsum, part.Lead, cycle))
		}
	}
	fmt.Println("the bass drum, always")
	part, _ := riff.Play(maqsum, riff.Solo, 4, 11)
	fmt.Println("  " + letters(maqsum, part.Bass, 0))
	// Output:
	// bare
	//   D-T- --T- D--- T---
	//   D-T- --T- D--- T---
	//   D-T- --T- D--- T---
	//   D-T- --T- D--- T---
	// filled
	//   D-T- kkT- D-kk T-kk
	//   D-T- kkT- D-kk T-kk
	//   D-T- kkT- D-kk T-kk
	//   D-T- kkT- D-kk T-kk
	// ornamented
	//   D-Tk tkT- (Dktktk) T-tk
	//   D-Tk tkTk (Dktktk) S-tk
	//   D-Tk tkT- (Dktktk) T-tk
	//   D-Tk tkT- (Dktktk) (TktTtk)
	// riffing
	//   D-kT tkDk DD-k D-Sk
	//   D--- TtkD tkTt kS--
	//   D-kT tkDk DD-k D-Sk
	//   D-kT tkDk Tktk Tktk
	// solo
	//   StkS -Ttk TtkD -kD-
	//   StkS -Ttk TtkD -kD-
	//   StkS -Ttk TtkD -kD-
	//   StkS -Ttk T--T --tk
	// the bass drum, always
	//   D-T- --T- D--- T---
}
