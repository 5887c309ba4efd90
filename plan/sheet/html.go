package sheet

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"

	"bide/plan"
	"bide/plan/words"
)

//go:embed sheet.html
var markup string

// HTML writes the sheets as one page of HTML that needs nothing else: no scripts, no
// files beside it, its drawings inside it. It is well-formed XML too. It says what the
// text sheet says, cautions first, and each changeover begins on a page of paper of its
// own, A4 or letter.
//
// All text goes through html/template, which escapes it by where it stands; controls and
// marks that turn the direction of writing become question marks (CWE-79, CWE-150).
func HTML(w io.Writer, d *plan.DayPlan, o Options) error {
	t, err := template.New("sheet").Parse(markup)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := t.Execute(&out, newLeaves(newFacts(d, &o))); err != nil {
		return err
	}
	_, err = w.Write(bytes.Map(safe, bytes.ToValidUTF8(out.Bytes(), []byte("?"))))
	return err
}

// safe is words.Clean for one letter of a page whose own lines end.
func safe(r rune) rune {
	if r == '\n' || !words.Harmful(r) {
		return r
	}
	return '?'
}

// leaves is all that the page says.
type leaves struct {
	Beam, Date, Note string
	Day              *dayLeaf
	Knife            *knifeLeaf
	Changeovers      []changeLeaf
}

// sheetTable is a table: the first column's cells head the rows.
type sheetTable struct {
	Caption string
	Heads   []tableHead
	Rows    [][]string
}

// tableHead is a column's head, and the class of its cells: n for numbers, which stand to
// the right, w for names, which may be long; else none.
type tableHead struct{ Text, Class string }

// table is a grid with its heads in full.
func (g grid) table() sheetTable {
	t := sheetTable{Rows: g.rows}
	for c, text := range g.full {
		class := ""
		switch {
		case !g.names[c]:
			class = "n"
		case c == 1 || c == g.wide:
			class = "w"
		}
		t.Heads = append(t.Heads, tableHead{text, class})
	}
	return t
}

func newLeaves(f *facts) *leaves {
	l := &leaves{Beam: f.plan.Beam.Name, Date: f.day.Format(dateOfDay)}
	if f.options.Demo {
		l.Note = demoNote
	}
	if f.tellsDay() {
		l.Day = newDayLeaf(f)
	}
	if k := f.atKnife(); len(k.set) > 0 {
		l.Knife = newKnifeLeaf(k)
	}
	for i, s := range f.steps {
		if f.options.wants(s.Job) {
			l.Changeovers = append(l.Changeovers, newChangeLeaf(f, i))
		}
	}
	return l
}

// dayLeaf is the first page: the jobs in order and what they come to.
type dayLeaf struct {
	Order      string
	BrokenHead string
	Broken     []string
	Whole      bool // the whole day is written, not one job
	Jobs       sheetTable
	InAll      []fact
	Counting   string
	Refused    []refusal
	Notes      []string
}

func newDayLeaf(f *facts) *dayLeaf {
	l := &dayLeaf{Order: f.order(), BrokenHead: brokenHead, Broken: f.options.broken(f.plan), Notes: f.options.Notes}
	if l.Whole = f.options.Only == ""; l.Whole {
		l.Jobs, l.InAll, l.Counting = f.jobs().table(), f.inAll(), f.counting()
	}
	for _, r := range f.options.refused(f.plan) {
		l.Refused = append(l.Refused, refusal{r.Job.ID, reasons(r, f.options.Unit)})
	}
	return l
}

// knifeLeaf says once what holds for many jobs.
type knifeLeaf struct {
	Every, Some []watch
	Starting    string
	Settings    sheetTable
	BendHow     string
	Shared      []string
	SourcesHead string
	Sources     []string
	Band, Worn  string
	Face        *drawing
	BandsHead   string
	Bands       []sheetTable
	DamagedHead string
	Damaged     []string
}

func newKnifeLeaf(f atKnife) *knifeLeaf {
	face := wornFace{f.facts}
	l := &knifeLeaf{Starting: startingValues, Settings: f.settings().table(), BendHow: f.bendHow(), Shared: f.sharedWarnings()}
	l.Every, l.Some = f.cautions()
	l.SourcesHead, l.Sources = "Sources "+sourcesHead, f.sources()
	if text := face.worn(); text != "" && f.options.Only == "" {
		l.Worn, l.Band = "Most: "+text, f.options.Unit.Show(plan.Length(f.options.Knife.Face.Band))
		l.Face = drawFace(f.facts)
		l.BandsHead, l.Bands = face.bandsHead(), face.bandSheets()
	}
	l.DamagedHead, l.Damaged = damagedHead, f.damaged()
	return l
}

// changeLeaf is the sheet of one changeover.
type changeLeaf struct {
	Turn, Of           int
	Between, From, Run string // from which job to which; when its setup and its run begin
	BeforeHead         string
	Before, After      []string
	SignOff            string
	Job                []fact
	Setup              string
	Causes             []words.Cause
	Picture            *drawing
	Bends              string
	Damaged            bool // bands of the anvil, which are drawn
	Power, InOrder     string
	Moves              *moveSheet // nil for none
	NoMoves            string
	Cuts               []sheetTable
	Strips             string
	Idle               []idleSheet
}

func newChangeLeaf(f *facts, i int) changeLeaf {
	s := f.steps[i]
	l := changeLeaf{
		Turn: i + 1, Of: len(f.steps), Between: f.whole(i), From: f.clock(s.SetupStart), Run: f.clock(s.RunStart),
		BeforeHead: beforeHead, Before: before, After: after(s.Setup.Swaps), SignOff: signOff,
		Job: append(f.job(i), f.knife(i)...), Setup: words.Minutes(s.Setup.Total()) + " min in all", Causes: words.Causes(&s.Setup, f.plan.Beam.Drive.Kind),
		Picture: drawBeam(f, i), Bends: f.bends(i), Damaged: len(f.options.damaged()) > 0, NoMoves: noMoves,
		Cuts: f.cutSheets(s), Strips: f.strips(s), Idle: f.idleSheets(s),
	}
	if c := &s.Changeover; len(c.Moves) > 0 {
		l.Power, l.InOrder, l.Moves = power(f.plan.Beam.Drive.Kind), f.inOrder(c), newMoveSheet(f, i)
	}
	return l
}

// whole names the jobs that step i changes from and to, in full.
func (f *facts) whole(i int) string {
	from, to := f.plan.Start.Job, f.steps[i].Job.ID
	if i > 0 {
		from = f.steps[i-1].Job.ID
	}
	if from == "" {
		return "to " + to
	}
	return fmt.Sprintf("%s to %s", from, to)
}
