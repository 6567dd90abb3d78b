package audio

import "math"

// taps is how many samples the interpolation between two samples looks at.
const taps = 12

// between are the four phases of the interpolation filter of ITU-R BS.1770-4,
// annex 2, table 1 (48 taps, for 48 kHz).
var between = [4][taps]float64{
	{0.0017089843750, 0.0109863281250, -0.0196533203125, 0.0332031250000, -0.0594482421875, 0.1373291015625, 0.9721679687500, -0.1022949218750, 0.0476074218750, -0.0266113281250, 0.0148925781250, -0.0083007812500},
	{-0.0291748046875, 0.0292968750000, -0.0517578125000, 0.0891113281250, -0.1665039062500, 0.4650878906250, 0.7797851562500, -0.2003173828125, 0.1015625000000, -0.0582275390625, 0.0330810546875, -0.0189208984375},
	{-0.0189208984375, 0.0330810546875, -0.0582275390625, 0.1015625000000, -0.2003173828125, 0.7797851562500, 0.4650878906250, -0.1665039062500, 0.0891113281250, -0.0517578125000, 0.0292968750000, -0.0291748046875},
	{-0.0083007812500, 0.0148925781250, -0.0266113281250, 0.0476074218750, -0.1022949218750, 0.9721679687500, 0.1373291015625, -0.0594482421875, 0.0332031250000, -0.0196533203125, 0.0109863281250, 0.0017089843750},
}

// A truePeak follows the greatest value of one channel between the samples.
type truePeak struct {
	past     [2 * taps]float64 // the last samples, twice, so that taps of them lie in a row
	at       int
	greatest float64
}

// add takes the next sample.
func (p *truePeak) add(x float64) {
	p.at = (p.at + taps - 1) % taps
	p.past[p.at], p.past[p.at+taps] = x, x
	last := (*[taps]float64)(p.past[p.at:]) // the newest first
	for i := range between {
		phase := &between[i]
		var y float64
		for k := range taps {
			y += phase[k] * last[k]
		}
		if y = math.Abs(y); y > p.greatest {
			p.greatest = y
		}
	}
}
