package session

import "strconv"

// quiet is the volume at the first visit: −8.9 dB, so that the bare rhythms, at some
// −24 LUFS in full, begin at about −33, well below what is usual on the web. loudAtFirst
// is the most at the start of a later one, −3.9 dB: what she has on her ears by now may
// be louder than what she had then. Own choice.
const (
	quiet       = 60
	loudAtFirst = 80
)

// firstVolume is the volume at the start: what it was last, also if that was silence,
// and never louder than that.
func (d *desk) firstVolume() int {
	volume, err := strconv.Atoi(d.Store.Remembered(rememberedVolume))
	if err != nil {
		return quiet
	}
	return min(max(volume, 0), loudAtFirst)
}

// setVolume sets the volume, 0 to 100. The level goes with its square, which is
// nearer to how loudness is heard.
func (d *desk) setVolume(volume int) {
	d.volume = min(max(volume, 0), 100)
	part := float64(d.volume) / 100
	d.Sound.Volume(part * part)
}

// shownVolume is the volume, or less than 0 where there is no sound to set.
func (d *desk) shownVolume() int {
	if !d.Sound.Audible() {
		return -1
	}
	return d.volume
}
