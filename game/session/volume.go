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
func (x *Session) firstVolume() int {
	volume, err := strconv.Atoi(x.shared.Store.Remembered(rememberedVolume))
	if err != nil {
		return quiet
	}
	return min(max(volume, 0), loudAtFirst)
}
