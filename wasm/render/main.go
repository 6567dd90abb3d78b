// Command render writes a rhythm as it sounds to a WAV file, and says how loud
// it is, for listening and measuring without a browser:
//
//	go run ./wasm/render -rhythm saidi -riff filled -o saidi.wav
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// order is what is to be rendered.
type order struct {
	rhythm, file, riff, drum, out string
	bpm, eights                   int
	seed                          uint64
	countIn                       bool
}

func main() {
	o := order{}
	flag.StringVar(&o.rhythm, "rhythm", "maqsum", "a rhythm's id, or any of its spellings")
	flag.StringVar(&o.file, "file", "", "a rhythm file of your own, instead of -rhythm")
	flag.IntVar(&o.bpm, "bpm", 0, "beats a minute; 0: the usual tempo")
	flag.IntVar(&o.eights, "eights", 4, "length in eights")
	flag.StringVar(&o.riff, "riff", "bare", "riff level: bare or filled")
	flag.StringVar(&o.drum, "drum", "both", "both, lead or bass")
	flag.Uint64Var(&o.seed, "seed", 1, "decides the small variation of the strokes")
	flag.BoolVar(&o.countIn, "count-in", false, "begin with 5 6 7 8")
	flag.StringVar(&o.out, "o", "", "the WAV file to write; without it, only the measurements are told")
	flag.Parse()
	if err := o.render(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "render:", err)
		os.Exit(1)
	}
}

func (o order) render(report io.Writer) error {
	c, err := o.cycle()
	if err != nil {
		return err
	}
	p, err := o.passage(c)
	if err != nil {
		return err
	}
	// A second for the last stroke to ring out.
	frames, err := audio.Render(audio.Rate, audio.Rate.Frame(p.End())+int64(audio.Rate), p.Hits(audio.Rate, 0)...)
	if err != nil {
		return err
	}
	mix, err := o.mix()
	if err != nil {
		return err
	}
	mix.Apply(frames)
	meter := audio.NewMeter(audio.Rate)
	meter.Add(frames)
	fmt.Fprintf(report, "%s, %d beats a minute, %d eights, %s: %.1f LUFS, %.1f dBTP\n",
		c.Name, p.BPM(), o.eights, o.riff, meter.Loudness(), meter.Peak())
	if o.out == "" {
		return nil
	}
	return write(o.out, frames, o.seed)
}

func (o order) cycle() (*rhythm.Cycle, error) {
	if o.file != "" {
		f, err := os.Open(o.file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return rhythm.Parse(o.file, f)
	}
	all, err := rhythm.Load(assets.Rhythms)
	if err != nil {
		return nil, err
	}
	c, found := all.Find(o.rhythm)
	if !found {
		return nil, fmt.Errorf("there is no rhythm %q; there are %s", o.rhythm, strings.Join(all.IDs(), ", "))
	}
	return c, nil
}

func (o order) passage(c *rhythm.Cycle) (*round.Passage, error) {
	level, err := riff.ParseLevel(o.riff)
	if err != nil {
		return nil, err
	}
	if o.eights < round.MinEights || o.eights > round.MaxEights {
		return nil, fmt.Errorf("%d eights; allowed is %d to %d", o.eights, round.MinEights, round.MaxEights)
	}
	bpm := o.bpm
	if bpm == 0 {
		bpm = c.Tempo.Usual
	}
	return round.NewPassage(bpm, level, o.seed, o.countIn, round.Section{Rhythm: c, Cycles: c.CyclesIn(o.eights)})
}

func (o order) mix() (audio.Mix, error) {
	mix := audio.Full()
	switch o.drum {
	case "both":
	case "lead":
		mix.Bass = 0
	case "bass":
		mix.Lead = 0
	default:
		return mix, fmt.Errorf("-drum %s: allowed is both, lead, bass", o.drum)
	}
	return mix, nil
}

func write(name string, frames []float32, seed uint64) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(audio.WriteWAV(f, audio.Rate, frames, seed), f.Close())
}
