//go:build browser && !js

package main

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"groundbeat/game/warmup"
)

// legible measures what a room sees: how high the smallest capitals are, in parts of
// the picture's height, as the typeface really draws them; the least contrast of any
// text (WCAG 2.2, 1.4.3); and what lies in the outer 5 %. What is for the teacher alone, at
// the foot, is measured apart. How much of the width the line fills, and how much of its
// place the drum, is told in parts of what there is.
const legible = `(() => {
	const pen = document.createElement("canvas").getContext("2d");
	const rgb = (text) => { pen.clearRect(0, 0, 1, 1); pen.fillStyle = text; pen.fillRect(0, 0, 1, 1); return [...pen.getImageData(0, 0, 1, 1).data]; };
	const light = (c) => { const v = c.slice(0, 3).map((x) => x / 255).map((x) => x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4);
		return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2]; };
	const ratio = (a, b) => { const [x, y] = [light(a), light(b)].sort((x, y) => y - x); return (x + 0.05) / (y + 0.05); };
	const ground = (el) => { for (; el; el = el.parentElement) { const c = rgb(getComputedStyle(el).backgroundColor); if (c[3] === 255) return c; } return rgb("white"); };
	const capital = (style, size) => { pen.font = style.fontWeight + " " + size + "px " + style.fontFamily; return pen.measureText("H").actualBoundingBoxAscent; };
	const out = { smallest: 1, what: "", teacher: 1, line: 1, drum: 1, contrast: 99, dim: "", outside: [] };
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
		if (el.closest("#foot")) out.teacher = Math.min(out.teacher, height);
		else if (height < out.smallest) [out.smallest, out.what] = [height, node.data];
		const contrast = ratio(rgb(drawn ? style.fill : style.color), drawn ? disc(el) : ground(el));
		if (contrast < out.contrast) [out.contrast, out.dim] = [contrast, node.data];
	}
	for (const el of document.querySelectorAll("#page > *, #say > *, #foot > *, #ways > *")) {
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
	const line = document.querySelector("#line"), drum = document.querySelector("#drum"), head = document.querySelector("#head");
	if (line) out.line = line.getBoundingClientRect().width / (innerWidth * 0.896);
	// The rim's outer edge is at 0.411 of the head's width from its middle: see drum.go.
	if (drum) out.drum = 2 * 0.411 * head.getBoundingClientRect().width / Math.min(drum.clientWidth, drum.clientHeight);
	if (document.documentElement.scrollHeight > innerHeight) out.outside.push("scrolls");
	return out;
})()`

type measured struct {
	Smallest, Contrast float64
	Teacher            float64 // the smallest capitals at the foot
	Line, Drum         float64 // how much of their place they fill
	What, Dim          string
	Outside            []string
}

// readable checks that a room can read what is shown, and takes a picture of it.
func (b *tab) readable(name string, worst *measured) {
	b.t.Helper()
	b.settle(get[int64](b, "innerWidth"))
	b.shoot("class-" + name)
	m := get[measured](b, legible)
	if m.Smallest < worst.Smallest {
		worst.Smallest, worst.What = m.Smallest, name+": "+m.What
	}
	if m.Contrast < worst.Contrast {
		worst.Contrast, worst.Dim = m.Contrast, name+": "+m.Dim
	}
	worst.Teacher, worst.Line, worst.Drum = min(worst.Teacher, m.Teacher), min(worst.Line, m.Line), min(worst.Drum, m.Drum)
	for _, o := range m.Outside {
		worst.Outside = append(worst.Outside, name+": "+o)
	}
}

// Every stage of every kind, at the two sizes that projectors have, one dark and one
// light: a room can read it from the back, and the picture fills the wall.
func TestClassIsLegible(t *testing.T) {
	t.Parallel()
	s := serve(t)
	for _, window := range []struct {
		name          string
		width, height int64
		dark          bool
	}{{"1920x1080", 1920, 1080, true}, {"1024x768", 1024, 768, false}} {
		t.Run(window.name, func(t *testing.T) {
			t.Parallel()
			b := Page(t)
			b.size(window.width, window.height, 1)
			b.dark(window.dark)
			worst := measured{Smallest: 1, Contrast: 99, Teacher: 1, Line: 1, Drum: 1}
			b.visit(s.URL + "/?screen=class")
			b.wait("document.fonts.status === 'loaded'")
			b.shoot("class-prepare-" + window.name)
			var kinds []string
			for _, k := range warmup.Kinds() {
				kinds = append(kinds, string(k))
			}
			for i, set := range []string{"even_solo_" + strings.Join(kinds, ".") + "_20_7", "masmudi-kabir.ciftetelli_solo_hands-up.what-changed_8_7"} {
				b.warmUp(s, set)
				b.sounds()
				b.readable("walk-in-"+window.name, &worst)
				b.on(kb.PageDown)
				for range []int{len(kinds), 2}[i] {
					k := warmup.Kind(strings.TrimPrefix(get[string](b, "document.querySelector('h1').id"), "heading-"))
					require.Contains(t, warmup.Kinds(), k)
					b.readableTask(k, []string{"", "long-"}[i]+string(k)+"-"+window.name, &worst)
				}
				b.keys(kb.Escape)
				b.wait("document.querySelector('#class-resume')")
			}
			t.Logf("smallest capitals %.2f %% of the height (%s), at the foot %.2f %%, least contrast %.2f (%s); the line fills %.3f of the width, the drum %.3f of its place",
				100*worst.Smallest, worst.What, 100*worst.Teacher, worst.Contrast, worst.Dim, worst.Line, worst.Drum)
			require.Empty(t, worst.Outside)
			require.GreaterOrEqual(t, worst.Smallest, 0.035, worst.What)
			require.GreaterOrEqual(t, worst.Teacher, 0.0175, "what is for the teacher at the machine")
			require.GreaterOrEqual(t, worst.Contrast, 7.0, worst.Dim)
			require.GreaterOrEqual(t, worst.Line, 0.9)
			require.GreaterOrEqual(t, worst.Drum, 0.95)
		})
	}
}

// readableTask goes through all stages of a task, and on to the next.
func (b *tab) readableTask(k warmup.Kind, name string, worst *measured) {
	b.t.Helper()
	b.readable("asking-"+name, worst)
	b.keys(kb.PageDown)
	b.wait("document.querySelector('#go').innerText === 'Go on'")
	b.sounds()
	require.Equal(b.t, "It plays. Listen.", b.text("#plays"))
	b.readable("sounding-"+name, worst)
	b.on(kb.PageDown)
	for n := 0; strings.HasPrefix(b.stage(), "Hands up"); n++ {
		if n == 0 {
			b.keys("f")
			b.wait("document.querySelector('#hands-few').getAttribute('aria-pressed')")
			b.readable("counting-"+name, worst)
		} else {
			b.keys("s")
		}
		b.on(kb.PageDown)
	}
	b.readable("told-"+name, worst)
	if k.Counted() {
		b.wait("groundbeat.heard()")
		b.on(kb.PageDown)
		b.click("#once") // Stop: so that the line stands still
		b.wait("document.querySelector('#line svg')")
		b.readable("hearing-"+name, worst)
	}
	b.on(kb.PageDown)
}
