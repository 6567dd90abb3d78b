//go:build browser && !js

package main

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestZZDiary(t *testing.T) {
	s := serve(t)
	b := open(t)
	text, err := os.ReadFile("/tmp/invented.jsonl")
	require.NoError(t, err)
	b.visit(s.URL + "/?screen=diary")
	b.wait("document.querySelector('#practise')")
	b.give("#import input", "invented.jsonl", string(text))
	b.wait("document.querySelector('#take')")
	b.shoot("diary-preview")
	b.run("document.querySelector('#take').click()")
	b.wait("document.querySelector('#named-finding')")
	for _, l := range looks {
		b.into(l)
		b.visit(s.URL + "/?screen=diary")
		b.wait("document.querySelector('#named-finding')")
		b.rest(300)
		h := get[float64](b, "document.documentElement.scrollHeight")
		t.Log(l.name, h, get[[]string](b, layout))
		l.scale = 1
		l.height = 2000
		b.into(l)
		b.visit(s.URL + "/?screen=diary")
		b.wait("document.querySelector('#named-finding')")
		for i := range 5 {
			b.run(fmt.Sprintf("scrollTo(0, %d)", i*1950))
			b.rest(300)
			b.shoot(fmt.Sprintf("diary-%s-%d", l.name, i))
			if float64(i+1)*1950 > h {
				break
			}
		}
	}
}
