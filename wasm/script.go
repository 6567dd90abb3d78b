//go:build js

package main

import (
	"syscall/js"

	"groundbeat/game/host"
	"groundbeat/wasm/store"
)

// publish makes the page script window.groundbeat. It is part of the product:
// the README documents it.
//
//	version  the program's version
//	heard()  {epoch, frame, rate, at}: the stream frame (with fraction) heard at
//	         performance time at (ms), and frames per second of that clock; null
//	         while nothing is heard
//	balance(lead, bass, stage)
//	         the drums' levels, 0 to 1, and where they stand: "centre" (the same
//	         in both ears), "spread" or "apart" (lead left, bass right, each at
//	         its full level); heard within 30 ms
//	volume(v)  the level behind them, 0 to 1
//	         (what these two do not take they refuse with a RangeError or a
//	         TypeError that says what is allowed; without sound they do nothing)
//	log()    a promise of all finished rounds of everybody, oldest first; what is
//	         no JSON is left out (and stays where it is)
func publish(parts js.Value, sound host.Sound, wall host.Wall, s *store.Store) {
	heard := js.FuncOf(func(js.Value, []js.Value) any {
		p, err := sound.Heard(wall.Now())
		if err != nil {
			return nil
		}
		return map[string]any{"epoch": p.Epoch, "frame": p.Frame, "rate": p.Rate, "at": p.At}
	})
	log := js.FuncOf(func(js.Value, []js.Value) any {
		return promise(func() (any, error) {
			lines, err := s.Lines()
			return records(lines), err
		})
	})
	mix := parts.Get("mix")
	js.Global().Set("groundbeat", map[string]any{
		"version": parts.Get("version"), "heard": heard, "log": log,
		"balance": mix.Get("balance"), "volume": mix.Get("volume"),
	})
	js.Global().Delete("groundbeatParts")
}

// records are the lines as objects.
func records(lines []string) []any {
	rounds := []any{}
	for _, line := range lines {
		if round := record(line); round.Type() == js.TypeObject {
			rounds = append(rounds, round)
		}
	}
	return rounds
}

// record is a line as an object, undefined where it is none.
func record(line string) (round js.Value) {
	defer func() {
		if recover() != nil {
			round = js.Undefined()
		}
	}()
	return js.Global().Get("JSON").Call("parse", line)
}

// promise runs f beside the page's own work and hands its outcome over.
func promise(f func() (any, error)) js.Value {
	var resolve, reject js.Value
	executor := js.FuncOf(func(_ js.Value, args []js.Value) any {
		resolve, reject = args[0], args[1]
		return nil
	})
	defer executor.Release() // it is called at once, and never again
	promised := js.Global().Get("Promise").New(executor)
	go func() {
		if value, err := f(); err != nil {
			reject.Invoke(js.Global().Get("Error").New(err.Error()))
		} else {
			resolve.Invoke(value)
		}
	}()
	return promised
}
