package audio

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The header written out by hand from "Multimedia Programming Interface and
// Data Specifications 1.0" (IBM & Microsoft, 1991): three frames at 48 kHz.
func TestWAVHeader(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteWAV(&b, Rate, make([]float32, 7), 1), "half a frame is left out")
	require.Len(t, b.Bytes(), 44+12)
	require.Equal(t, []byte{
		'R', 'I', 'F', 'F', 48, 0, 0, 0, 'W', 'A', 'V', 'E',
		'f', 'm', 't', ' ', 16, 0, 0, 0,
		1, 0, // WAVE_FORMAT_PCM
		2, 0, // channels
		0x80, 0xBB, 0, 0, // 48000 frames a second
		0x00, 0xEE, 0x02, 0, // 192000 bytes a second
		4, 0, // bytes of a frame
		16, 0, // bits of a sample
		'd', 'a', 't', 'a', 12, 0, 0, 0,
	}, b.Bytes()[:44])
}

// samples reads a canonical file as a reader who knows only the format would.
func samples(t *testing.T, p []byte) (rate uint32, x []int16) {
	t.Helper()
	le := binary.LittleEndian
	require.Equal(t, "RIFF", string(p[:4]))
	require.Equal(t, uint32(len(p)-8), le.Uint32(p[4:]))
	require.Equal(t, "WAVE", string(p[8:12]))
	for p = p[12:]; len(p) > 0; {
		name, size := string(p[:4]), le.Uint32(p[4:])
		body := p[8 : 8+size]
		switch name {
		case "fmt ":
			rate = le.Uint32(body[4:])
		case "data":
			for i := 0; i < len(body); i += 2 {
				x = append(x, int16(le.Uint16(body[i:])))
			}
		}
		p = p[8+size+size%2:]
	}
	return rate, x
}

func TestWAVSamples(t *testing.T) {
	frames := make([]float32, 2*1000)
	for i := range frames {
		frames[i] = float32(0.9 * math.Sin(float64(i)/17))
	}
	var b bytes.Buffer
	require.NoError(t, WriteWAV(&b, 44100, frames, 9))
	rate, x := samples(t, b.Bytes())
	require.Equal(t, uint32(44100), rate)
	require.Len(t, x, len(frames))
	for i, v := range x {
		// half a step of rounding and a step of dither
		require.InDelta(t, float64(frames[i])*32768, float64(v), 1.5)
	}
	var again, other bytes.Buffer
	require.NoError(t, WriteWAV(&again, 44100, frames, 9))
	require.NoError(t, WriteWAV(&other, 44100, frames, 10))
	require.Equal(t, b.Bytes(), again.Bytes(), "a seed is a promise")
	require.NotEqual(t, b.Bytes(), other.Bytes())
}

// Dither of triangular distribution makes the mean of what is written the
// sound itself, and the power of the error (1/12 + 1/6) steps² = 1/4,
// whatever the sound (Lipshitz et al., 1992).
func TestWAVDither(t *testing.T) {
	const n = 40000
	for _, steps := range []float64{0, 0.1, 0.25, 0.5, -0.7} {
		frames := make([]float32, n)
		for i := range frames {
			frames[i] = float32(steps / 32768)
		}
		var b bytes.Buffer
		require.NoError(t, WriteWAV(&b, Rate, frames, 3))
		_, x := samples(t, b.Bytes())
		var sum, square float64
		for _, v := range x {
			e := float64(v) - steps
			sum, square = sum+e, square+e*e
		}
		require.InDelta(t, 0, sum/n, 0.01, "%v steps", steps)
		require.InDelta(t, 0.25, square/n, 0.01, "%v steps", steps)
	}
}

func TestWAVClips(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, WriteWAV(&b, Rate, []float32{2, -2, 1.0001, float32(math.Inf(1))}, 1))
	_, x := samples(t, b.Bytes())
	require.Equal(t, []int16{32767, -32768, 32767, 32767}, x)
}

type fullDisk struct{ room int }

var errFull = errors.New("disk full")

func (d *fullDisk) Write(p []byte) (int, error) {
	if d.room -= len(p); d.room < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestWAVErrors(t *testing.T) {
	nan := float32(math.NaN())
	err := WriteWAV(&bytes.Buffer{}, Rate, []float32{0, 0, 0, nan}, 1)
	require.ErrorIs(t, err, ErrNoSound)
	require.EqualError(t, err, "frame 1: audio: a value is not a number")
	require.ErrorIs(t, WriteWAV(&fullDisk{10000}, Rate, make([]float32, 20000), 1), errFull)

	const most = (1<<32 - 1 - 36) / 4
	_, err = newWAVHeader(Rate, most)
	require.NoError(t, err)
	_, err = newWAVHeader(Rate, most+1)
	require.ErrorIs(t, err, ErrTooLong)
}
