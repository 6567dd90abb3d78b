package audio

import (
	"bufio"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
)

// Why a sound cannot be written as a WAV file.
var (
	ErrTooLong = errors.New("audio: longer than a WAV file can be (4 GiB)")
	ErrNoSound = errors.New("audio: a value is not a number")
)

const (
	wavHeader = 44 // bytes
	wavFrame  = channels * 2
)

// WriteWAV writes frames of two values each, left first, full scale 1, as a
// WAV file of 16-bit PCM: every player and every phone reads it, and its
// noise of −96 dBFS is below that of any room. What exceeds full scale is
// clipped. Half a frame at the end is left out.
//
// Rounding is dithered by noise of triangular distribution, one step either
// way, which makes the error independent of the sound (Lipshitz, Wannamaker &
// Vanderkooy, "Quantization and dither: a theoretical survey", JAES 40,
// 1992). The noise comes from the seed: the same frames and seed give the
// same bytes.
//
// The form is the canonical one: a RIFF chunk of type WAVE with the chunks
// "fmt " (16 bytes, WAVE_FORMAT_PCM) and "data" (IBM & Microsoft, "Multimedia
// Programming Interface and Data Specifications 1.0", 1991).
func WriteWAV(w io.Writer, rate SampleRate, frames []float32, seed uint64) error {
	n := len(frames) / channels
	header, err := newWAVHeader(rate, int64(n))
	if err != nil {
		return err
	}
	out := bufio.NewWriter(w)
	out.Write(header[:]) // a bufio.Writer keeps its first error for Flush
	dither := random(seed)
	var b [2]byte
	for i, x := range frames[:n*channels] {
		if math.IsNaN(float64(x)) {
			return fmt.Errorf("frame %d: %w", i/channels, ErrNoSound)
		}
		binary.LittleEndian.PutUint16(b[:], uint16(quantise(x, &dither)))
		out.Write(b[:])
	}
	return out.Flush()
}

// quantise returns x in steps of 1/32768, dithered and clipped.
func quantise(x float32, dither *random) int16 {
	y := float64(x)*32768 + (dither.signed()+dither.signed())/2
	return int16(math.RoundToEven(min(max(y, math.MinInt16), math.MaxInt16)))
}

// newWAVHeader returns what stands before the samples. All numbers are
// little-endian; the sizes are of what follows them.
func newWAVHeader(rate SampleRate, frames int64) (h [wavHeader]byte, err error) {
	if frames > (math.MaxUint32-wavHeader+8)/wavFrame {
		return h, ErrTooLong
	}
	size := uint32(frames * wavFrame)
	b := append(h[:0], "RIFF"...)
	b = binary.LittleEndian.AppendUint32(b, wavHeader-8+size)
	b = append(b, "WAVEfmt "...)
	b = binary.LittleEndian.AppendUint32(b, 16)
	b = binary.LittleEndian.AppendUint16(b, 1) // WAVE_FORMAT_PCM
	b = binary.LittleEndian.AppendUint16(b, channels)
	b = binary.LittleEndian.AppendUint32(b, uint32(rate))
	b = binary.LittleEndian.AppendUint32(b, uint32(rate)*wavFrame)
	b = binary.LittleEndian.AppendUint16(b, wavFrame)
	b = binary.LittleEndian.AppendUint16(b, 16) // bits of a sample
	b = append(b, "data"...)
	binary.LittleEndian.AppendUint32(b, size)
	return h, nil
}
