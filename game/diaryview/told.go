package diaryview

import (
	"slices"
	"strings"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// told is what the rounds tell: for each matter a sentence, its pictures, and the
// same as a table; nothing of a matter that there were no rounds of.
func (d *Diary) told(w say.Words, is sentences) []view.Item {
	f := &d.Figures
	return once(view.Present([]view.Item{
		d.matter(w, "named", w.Say("right-named"), is.named.text, d.rightPictures(w, false), d.rightFew(w, false), d.rightTable(w, "named-table", false)),
		d.matter(w, "tapped", w.Say("right-tapped"), is.tapped.text, d.rightPictures(w, true), d.rightFew(w, true), d.rightTable(w, "tapped-table", true)),
		d.matter(w, "fingers", w.Say("fingers"), is.fingers.text, d.fingerPictures(w), d.fingersFew(w), d.fingersTable(w)),
		d.matter(w, "round", w.Say("round"), is.round.text, d.roundPictures(w), "", d.roundTable(w)),
		d.matter(w, "mixed", w.Say("mixed"), is.mixed.text, d.one("mixed", w.Say("mixed"), d.mixedKnown(), func() *picture.Picture { return d.mixed(w) }), d.mixedFew(w), d.mixedTable(w)),
		d.matter(w, "reach", w.Say("reach"), is.reach.text, d.reachPictures(w), d.reachFew(w), d.reachTable(w)),
		d.matter(w, "days", w.Say("days"), d.findPractised(w), d.one("days", w.Say("days"), len(f.Practised) > 0, func() *picture.Picture { return d.practised(w) }), "", d.practisedTable(w)),
	}))
}

// firstPictures is how many pictures of rhythms are shown at once, of those practised
// most; the others when opened.
const firstPictures = 3

// matter is one of what the rounds tell: nothing, where there were no such rounds;
// only what is too few yet, where there are no pictures.
func (d *Diary) matter(w say.Words, id, name, finding string, pictures []view.Item, few string, table view.Item) view.Item {
	if len(table.Rows) == 0 || finding == "" && few == "" {
		return view.Item{}
	}
	items := []view.Item{view.Subheading(id, name)}
	if finding != "" {
		items = append(items, view.Item{ID: id + "-finding", Role: view.RoleText, Text: finding, Look: view.LookFinding})
	}
	if id == "fingers" && d.unmeasured() {
		items = append(items, roundview.ToSetUp(w))
	}
	if len(pictures) > 0 {
		items = append(append(items, grids(w, id, pictures)...), marks(w, id))
	}
	if few != "" {
		items = append(items, view.Item{ID: id + "-few", Role: view.RoleText, Text: few, Look: view.LookNote})
	}
	if len(pictures) > 0 {
		items = append(items, view.Item{ID: id + "-figures", Role: view.RoleDetails, Name: w.Say("in-figures"), Children: []view.Item{table}})
	}
	return view.Item{ID: id + "-told", Role: view.RoleGroup, Look: view.LookMatter, Name: name, Children: view.Present(items)}
}

// grids are the pictures of a matter: all of the kinds of round, the first of the
// rhythms.
func grids(w say.Words, id string, pictures []view.Item) []view.Item {
	n := min(len(pictures), firstPictures)
	if id == "reach" {
		n = len(pictures)
	}
	items := []view.Item{{ID: id + "-pictures", Role: view.RoleGroup, Look: view.LookGrid, Children: pictures[:n]}}
	if n < len(pictures) {
		items = append(items, view.Item{ID: id + "-more", Role: view.RoleDetails, Name: w.Say("more-rhythms"), Children: []view.Item{
			{ID: id + "-more-pictures", Role: view.RoleGroup, Look: view.LookGrid, Children: pictures[n:]}}})
	}
	return items
}

// marks says what the marks of a matter's pictures are, where they do not say it.
func marks(w say.Words, id string) view.Item {
	it := view.Item{ID: id + "-marks", Role: view.RoleText, Look: view.LookNote}
	switch id {
	case "named", "reach":
		it.Text = w.Say("trend-marks")
	case "tapped":
		it.Text = w.Say("tapped-means", "wide", say.WholeMs(scoring.Wide), "close", say.WholeMs(scoring.Close)) + " " + w.Say("trend-marks")
	case "fingers":
		it.Text = w.Say("fingers-marks")
	case "round":
		it.Text = w.Say("round-marks", "ms", RoundReach)
	case "mixed":
		it.Text = w.Say("mixed-marks")
	default:
		return view.Item{}
	}
	return it
}

// once leaves out what marks mean where a matter before has said it.
func once(matters []view.Item) []view.Item {
	said := map[string]bool{}
	for i := range matters {
		it := &matters[i]
		it.Children = slices.DeleteFunc(it.Children, func(c view.Item) bool {
			seen := c.ID == it.Children[0].ID+"-marks" && said[c.Text]
			said[c.Text] = true
			return seen
		})
	}
	return matters
}

// picture is a still picture of the diary.
func Picture(id, name string, p *picture.Picture) view.Item {
	return view.Item{ID: id, Role: view.RolePicture, Name: name, Text: p.Twin, Picture: p, Aspect: p.Aspect()}
}

// one is a matter's only picture, if there is enough to draw.
func (d *Diary) one(id, name string, enough bool, draw func() *picture.Picture) []view.Item {
	if !enough {
		return nil
	}
	it := Picture(id+"-picture", name, draw())
	it.Look = view.LookBoard
	return []view.Item{it}
}

func (d *Diary) rightPictures(w say.Words, tapped bool) []view.Item {
	all := known(d.rights(tapped), func(a diary.Accuracy) bool { return a.All.Share.Known })
	var days timeline
	for _, a := range all {
		for _, at := range points(a) {
			days.span(at.from, at.to)
		}
	}
	id := "named-"
	if tapped {
		id = "tapped-"
	}
	var items []view.Item
	for _, a := range all {
		items = append(items, Picture(id+a.Rhythm, d.name(a.Rhythm), d.right(w, a, days)))
	}
	return items
}

func (d *Diary) fingerPictures(w say.Words) []view.Item {
	var items []view.Item
	for _, f := range d.Figures.Fingers {
		if f.Bias.Known {
			items = append(items, Picture("fingers-"+f.Rhythm, d.name(f.Rhythm), d.fingers(w, f)))
		}
	}
	return items
}

func (d *Diary) roundPictures(w say.Words) []view.Item {
	var items []view.Item
	for _, f := range d.Figures.Fingers {
		if c := d.rhythm(f.Rhythm); c != nil && roundKnown(f) {
			items = append(items, Picture("round-"+f.Rhythm, d.name(f.Rhythm), d.round(w, c, f)))
		}
	}
	return items
}

func (d *Diary) reachPictures(w say.Words) []view.Item {
	all := known(d.Figures.Reach, func(r diary.Reach) bool { return r.Now.Known })
	var days timeline
	for _, r := range all {
		for _, at := range heards(r, d.Today) {
			days.span(at.from, at.to)
		}
	}
	var items []view.Item
	for _, r := range all {
		items = append(items, Picture("reach-"+r.Kind, sayKind(w, r.Kind), d.reached(w, r, days)))
	}
	return items
}

// few says of what there is too little yet, and how much more would do.
func few(w say.Words, all []string) string {
	if len(all) == 0 {
		return ""
	}
	return w.Say("too-few", "list", strings.Join(all, "; "))
}

// missing is how many more are needed; at least one, of what cannot be told from as
// many as there are.
func missing(e scoring.Estimate) int { return max(1, e.Missing()) }

func (d *Diary) rightFew(w say.Words, tapped bool) string {
	var all []string
	for _, a := range d.rights(tapped) {
		if e := a.All.Share; !e.Known {
			all = append(all, w.Say("few-rounds", "what", d.name(a.Rhythm), "n", missing(e)))
		}
	}
	return few(w, all)
}

func (d *Diary) fingersFew(w say.Words) string {
	var all []string
	for _, f := range d.Figures.Fingers {
		if !f.Bias.Known {
			all = append(all, w.Say("few-rounds", "what", d.name(f.Rhythm), "n", missing(f.Bias)))
		}
	}
	return few(w, all)
}

func (d *Diary) reachFew(w say.Words) string {
	var all []string
	for _, r := range d.Figures.Reach {
		if !r.Now.Known {
			all = append(all, w.Say("few-rounds", "what", sayKind(w, r.Kind), "n", missing(r.Now)))
		}
	}
	return few(w, all)
}

// mixedFew says how many more rounds of one rhythm would do, if there is no row yet.
func (d *Diary) mixedFew(w say.Words) string {
	most := 0
	for _, said := range d.Figures.Mixed.Said {
		most = max(most, sum(said))
	}
	if most >= diary.LeastMixed {
		return ""
	}
	return few(w, []string{w.Say("few-mixed", "n", diary.LeastMixed-most)})
}
