//go:build js

package main

import (
	"encoding/json"
	"fmt"

	"groundbeat/game"
)

// The measured outputs are one small text in the browser's local storage. What
// cannot be read is set aside under another name, not lost.
const (
	outputsKey    = "groundbeat.outputs"
	brokenKey     = "groundbeat.outputs.broken"
	outputsFormat = 1
)

// keptOutputs is the text's form.
type keptOutputs struct {
	Version int `json:"v"`
	game.Outputs
}

// Outputs implements [game.Store].
func (s *store) Outputs() (o game.Outputs) {
	var err error
	defer func() {
		if err != nil {
			fmt.Println("outputs:", err) // for whoever looks into the console
		}
	}()
	defer recovered(&err)
	text := s.local.Call("getItem", outputsKey)
	if text.IsNull() {
		return o
	}
	var kept keptOutputs
	if err = json.Unmarshal([]byte(text.String()), &kept); err == nil && kept.Version == outputsFormat {
		return kept.Outputs
	}
	s.local.Call("setItem", brokenKey, text)
	return o
}

// KeepOutputs implements [game.Store].
func (s *store) KeepOutputs(o game.Outputs) (err error) {
	defer recovered(&err)
	text, err := json.Marshal(keptOutputs{outputsFormat, o})
	if err != nil {
		return err
	}
	s.local.Call("setItem", outputsKey, string(text))
	return nil
}
