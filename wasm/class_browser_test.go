//go:build browser && !js

package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
)

// legible measures what a room sees: how high the smallest capitals are, in parts of
// the picture's height, as the typeface really draws them; the least contrast of any
// text (WCAG 2.2, 1.4.3); and what lies in the outer 5 %.
const legible = `(() => {
	const pen = document.createElement("canvas").getContext("2d");
	const rgb = (text) => { pen.clearRect(0, 0, 1, 1); pen.fillStyle = text; pen.fillRect(0, 0, 1, 1); return [...pen.getImageData(0, 0, 1, 1).data]; };
	const light = (c) => { const v = c.slice(0, 3).map((x) => x / 255).map((x) => x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4);
		return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2]; };
	const ratio = (a, b) => { const [x, y] = [light(a), light(b)].sort((x, y) => y - x); return (x + 0.05) / (y + 0.05); };
	const ground = (el) => { for (; el; el = el.parentElement) { const c = rgb(getComputedStyle(el).backgroundColor); if (c[3] === 255) return c; } return rgb("white"); };
	const capital = (style, size) => { pen.font = style.fontWeight + " " + size + "px " + style.fontFamily; return pen.measureText("H").actualBoundingBoxAscent; };
	const out = { smallest: 1, what: "", contrast: 99, dim: "", outside: [] };
	const texts = document.createTreeWalker(document.querySelector("#page"), NodeFilter.SHOW_TEXT);
	const disc = (text) => { // what a stroke's letter lies on
		const box = text.getBoundingClientRect(), x = box.x + box.width / 2, y = box.y + box.height / 2;
		const dots = [...text.ownerSVGElement.querySelectorAll("circle")].filter((c) => getComputedStyle(c).fill !== "none");
		const dot = dots.find((c) => { const b = c.getBoundingClientRect(); return x > b.left && x < b.right && y > b.top && y < b.bottom; });
		return dot ? rgb(getComputedStyle(dot).fill) : ground(text.ownerSVGElement);
	};
	while (texts.nextNode()) {
		const node = texts.currentNode, el = node.parentElement, style = getComputedStyle(el);
		if (!node.data.trim() || style.visibility !== "visible" || !el.getClientRects().length) continue;
		const drawn = el instanceof SVGElement;
		const size = parseFloat(style.fontSize) * (drawn ? el.ownerSVGElement.getBoundingClientRect().width / 1000 : 1);
		const height = capital(style, size) / innerHeight;
		if (height < out.smallest) [out.smallest, out.what] = [height, node.data];
		const contrast = ratio(rgb(drawn ? style.fill : style.color), drawn ? disc(el) : ground(el));
		if (contrast < out.contrast) [out.contrast, out.dim] = [contrast, node.data];
	}
	for (const el of document.querySelectorAll("#page > *, #ways > *")) {
		const b = el.getBoundingClientRect();
		if (getComputedStyle(el).visibility !== "visible" || !b.width) continue;
		if (b.left < 0.05 * innerWidth - 0.5 || b.right > 0.95 * innerWidth + 0.5 || b.top < 0.05 * innerHeight - 0.5 || b.bottom > 0.95 * innerHeight + 0.5)
			out.outside.push((el.id || el.className) + [b.left, b.top, b.right, b.bottom].map(Math.round));
	}
	const boxes = [...document.querySelectorAll("#page > *")].filter((el) => el.getBoundingClientRect().width && getComputedStyle(el).visibility === "visible");
	boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => {
		const p = a.getBoundingClientRect(), q = b.getBoundingClientRect();
		if (Math.min(p.right, q.right) - Math.max(p.left, q.left) > 1 && Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top) > 1) out.outside.push(a.id + " over " + b.id);
	}));
	if (document.documentElement.scrollHeight > innerHeight) out.outside.push("scrolls");
	return out;
})()`

type measured struct {
	Smallest, Contrast float64
	What, Dim          string
	Outside            []string
}

// readable checks that a room can read what is shown, and takes a picture of it.
func (b *tab) readable(name string, worst *measured) {
	b.t.Helper()
	b.rest(150)
	b.shoot("class-" + name)
	m := get[measured](b, legible)
	if m.Smallest < worst.Smallest {
		worst.Smallest, worst.What = m.Smallest, name+": "+m.What
	}
	if m.Contrast < worst.Contrast {
		worst.Contrast, worst.Dim = m.Contrast, name+": "+m.Dim
	}
	for _, o := range m.Outside {
		worst.Outside = append(worst.Outside, name+": "+o)
	}
}

// stage is what the room sees, by its heading.
func (b *tab) stage() string { return b.text("h1") }

// on presses a key and waits for another heading.
func (b *tab) on(key string) {
	b.t.Helper()
	before := b.stage()
	b.keys(key)
	b.wait(fmt.Sprintf("document.querySelector('h1').innerText !== %q", before))
}

// warmUp opens a set by its link and goes to its first task: two presses.
func (b *tab) warmUp(s *server, set string) {
	b.t.Helper()
	b.visit(s.URL + "/?screen=class&set=" + set)
	b.wait("document.querySelector('#set-1')")
	b.click("#set-1")
	b.wait("document.querySelector('#heading-in')")
}

// sounds waits for something to be heard.
func (b *tab) sounds() {
	b.t.Helper()
	b.wait("groundbeat.heard()")
	b.rest(400)
}

// Every stage of every kind, at the two sizes that projectors have, one dark and one
// light: a room can read it from the back.
func TestClassIsLegible(t *testing.T) {
	s := serve(t)
	for _, window := range []struct {
		name          string
		width, height int64
		dark          bool
	}{{"1920x1080", 1920, 1080, true}, {"1024x768", 1024, 768, false}} {
		t.Run(window.name, func(t *testing.T) {
			b := openFor(t, 6*time.Minute)
			b.size(window.width, window.height, 1)
			b.dark(window.dark)
			worst := measured{Smallest: 1, Contrast: 99}
			b.visit(s.URL + "/?screen=class")
			b.wait("document.fonts.status === 'loaded'")
			b.shoot("class-prepare-" + window.name)
			for i, from := range []string{"even", "masmudi-kabir.ciftetelli", "even", "malfuf.ayyub.khaliji", "even", "ciftetelli.masmudi-kabir", "even", "masmudi-kabir.ciftetelli"} {
				k := append(quiz.Kinds(), quiz.HandsUp)[i]
				set, name := from+"_solo_"+string(k)+"_4_7", string(k)+"-"+window.name
				if i >= len(quiz.Kinds()) {
					name = "long-" + name
				}
				b.warmUp(s, set)
				if i == 0 {
					b.sounds()
					b.readable("walk-in-"+window.name, &worst)
				}
				b.on(kb.PageDown)
				b.readable("asking-"+name, &worst)
				b.keys(kb.PageDown)
				b.wait("document.querySelector('#go').innerText === 'Go on'")
				b.sounds()
				b.readable("sounding-"+name, &worst)
				b.on(kb.PageDown)
				for n := 0; strings.HasPrefix(b.stage(), "Hands up"); n++ {
					if n == 0 {
						b.keys("f")
						b.wait("document.querySelector('#hands-few').getAttribute('aria-pressed')")
						b.readable("counting-"+name, &worst)
					} else {
						b.keys("s")
					}
					b.on(kb.PageDown)
				}
				b.readable("told-"+name, &worst)
				if k.Counted() {
					b.wait("groundbeat.heard()")
					b.on(kb.PageDown)
					b.keys("o") // ends what is heard once more, so that the line stands still
					b.wait("document.querySelector('#line svg')")
					b.readable("hearing-"+name, &worst)
				}
				b.keys(kb.Escape)
				b.wait("document.querySelector('#class-resume')")
			}
			t.Logf("smallest capitals %.2f %% of the height (%s), least contrast %.2f (%s)", 100*worst.Smallest, worst.What, worst.Contrast, worst.Dim)
			require.Empty(t, worst.Outside)
			require.GreaterOrEqual(t, worst.Smallest, 0.035, worst.What)
			require.GreaterOrEqual(t, worst.Contrast, 7.0, worst.Dim)
		})
	}
}

// clicked is what a presenter's clicker sends.
const (
	forward = kb.PageDown
	back    = kb.PageUp
)

// kept is the run as the browser keeps it.
func (b *tab) keptRun() string {
	b.t.Helper()
	return get[string](b, `localStorage.getItem("groundbeat.class.run") ?? ""`)
}

// A whole quiz of each kind with nothing but a clicker's keys, from the bare screen to
// the page after it; reloaded on the way, with presses that were not meant.
func TestClassWithAClicker(t *testing.T) {
	s := serve(t)
	b := openFor(t, 8*time.Minute)
	b.size(1280, 800, 1)
	b.early(`window.asked = []; Object.defineProperty(navigator, "wakeLock", { value: { request: async (kind) => { asked.push(kind); return { release() { asked.push("released"); } }; } } });
		window.print = () => asked.push("print"); Element.prototype.requestFullscreen = async () => { asked.push("full"); };`)
	for _, k := range quiz.Kinds() {
		set := "five_filled_" + string(k) + "_2_5"
		b.warmUp(s, set)
		require.Equal(t, "?screen=class&set="+set, get[string](b, "location.search"))
		b.sounds()
		require.Equal(t, "heading-in", b.focused())
		b.on(forward) // the second press: the first question
		require.Equal(t, []string{"screen"}, get[[]string](b, "asked"), "the display stays awake")

		// A reload in the middle comes back to it, and silent.
		asked := b.stage()
		b.steps(chromedp.Reload())
		b.wait("document.querySelector('#go')")
		require.Equal(t, asked, b.stage(), k)
		require.Nil(t, get[any](b, "groundbeat.heard()"))

		b.keys(forward)
		b.sounds()
		b.wait("document.querySelector('#go').innerText === 'Go on'")
		require.Equal(t, asked, b.stage())
		if k == quiz.FindTheOne { // heard to its end
			b.waitFor("document.querySelector('#go').innerText === 'Hands up'", time.Minute)
		}
		b.on(forward)
		for n := 0; strings.HasPrefix(b.stage(), "Hands up"); n++ {
			b.keys([]string{"m", "12", "n", "0"}[n%4])
			b.on(forward)
		}
		before := b.keptRun()
		b.on(back) // not meant
		require.NotEqual(t, before, b.keptRun())
		b.on(forward)
		require.Equal(t, before, b.keptRun(), "nothing is lost")
		if k.Counted() {
			require.Contains(t, before, `"most","12"`)
			b.sounds()
			b.on(forward)
			require.Equal(t, "Now you hear it", b.stage())
			b.sounds()
			require.NotEmpty(t, b.text("#line")+get[string](b, "document.querySelector('#line').dataset.place ?? ''"))
		}
		for range 12 { // through the rest of it
			if b.stage() == "After the warm-up" {
				break
			}
			b.keys("k")
			b.rest(150)
		}
		require.Equal(t, "After the warm-up", b.stage(), k)
		require.Equal(t, "?screen=class&set="+set, get[string](b, "location.search"))
		b.keys(back)
		b.wait("document.querySelector('#go')")
		b.keys(forward)
		b.rest(150)
		b.keys(forward)
		b.wait("document.querySelector('#sheet')")
		if k == quiz.HandsUp {
			b.shoot("class-after-1280x800")
			b.run("document.querySelector('#print').click()")
			require.Contains(t, get[[]string](b, "asked"), "print")
			require.Contains(t, get[[]string](b, "asked"), "released")
		}
		b.keys(kb.Escape)
		b.wait("document.querySelector('#class-sets')")
		require.Equal(t, "", b.text("#class-resume"), "it is over")
	}
	require.Equal(t, 0, b.rounds(), "the class's diary is apart from a player's")
	diary, unread := quiz.ParseDiary(get[string](b, `localStorage.getItem("groundbeat.class.diary")`))
	require.Zero(t, unread)
	require.Len(t, diary, len(quiz.Kinds()))
}

// The keys work wherever the focus is, and leave to a control what is its own.
func TestClassKeysAndFocus(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := open(t)
	b.warmUp(s, "five_bare_hands-up_2_5")
	b.on(forward)
	asked := b.stage()

	b.run("document.querySelector('#skip').focus()")
	b.keys(kb.ArrowRight) // plays, though another button has the focus
	b.sounds()
	require.Equal(t, "skip", b.focused())
	require.Equal(t, asked, b.stage())
	b.run("document.querySelector('#slower').focus()")
	b.keys(kb.Enter) // is the button's
	b.wait("document.querySelector('#slower').getAttribute('aria-pressed')")
	require.Equal(t, asked, b.stage())
	b.keys(" ")
	b.wait("!document.querySelector('#slower').getAttribute('aria-pressed')")
	b.click("#alone") // a pointer leaves the focus where it was
	require.Equal(t, "slower", b.focused())

	for _, key := range []string{".", "b"} {
		b.keys(key)
		b.wait("document.querySelector('#page').dataset.screen === 'class-blank'")
		require.Equal(t, []float64{0}, get[[]float64](b, `[...new Set([...document.querySelectorAll("#page > *")].map((e) => Number(getComputedStyle(e).opacity)))]`))
		b.keys(forward) // shows it, and does nothing else
		b.wait("document.querySelector('#page').dataset.screen === 'class-room'")
		require.Equal(t, asked, b.stage())
	}
	b.run("document.querySelector('h1').focus()")
	b.on(kb.Enter)
	require.Contains(t, b.stage(), "Hands up for")
	b.keys("1")
	b.keys("2")
	b.wait("document.querySelector('#counted').innerText === 'Hands: 12'")
	b.keys("c")
	b.wait("document.querySelector('#counted').innerText === 'or a number, or nothing'")
	b.hold("s", 3) // once
	b.wait("document.querySelector('#counted').innerText === 'Hands: some'")
	b.keys("m", chromedp.ModifierCtrl) // the browser's
	b.rest(100)
	require.Equal(t, "Hands: some", b.text("#counted"))

	// Letters can be left alone: some people speak to their machine.
	b.keys(kb.Escape)
	b.wait("document.querySelector('#class-keys')")
	b.run("document.querySelector('#class-keys').open = true; document.querySelector('#class-letters input').click()")
	b.press("Go on where you were")
	b.wait("document.querySelector('#counted')")
	b.keys("f")
	b.rest(100)
	require.Equal(t, "Hands: some", b.text("#counted"))
	b.reach()
}

// What is asked is nowhere told before it is known.
func TestClassGivesNothingAway(t *testing.T) {
	t.Parallel()
	s := serve(t)
	b := open(t)
	b.warmUp(s, "maqsum.saidi_bare_hands-up_2_5")
	b.on(forward)
	tells := func() string {
		return strings.ToLower(strings.Join(b.tree(), " ") + get[string](b, `document.title + location.hash + document.querySelector("#page").outerHTML`))
	}
	for range 2 {
		for _, name := range []string{"maqsum", "saidi", "sa'idi"} {
			require.NotContains(t, tells(), name)
		}
		b.keys(forward)
		b.sounds()
	}
	b.wait("document.querySelector('h1').innerText.startsWith('Hands up')")
	first := b.stage()
	other := map[bool]string{true: "sa'idi", false: "maqsum"}[strings.Contains(first, "maqsum")]
	require.NotContains(t, tells(), other, "each name is asked by itself")
	b.on(forward)
	require.Contains(t, b.stage(), other)
}
