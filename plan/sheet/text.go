package sheet

import (
	"fmt"
	"io"

	"bide/plan"
	"bide/plan/words"
)

// Text writes the sheets that people carry to the beam: a page with the day in
// order, then for each changeover its job, cautions, numbered moves and what
// stands where afterwards, each beginning on a page of its own. Lines have at most
// 80 columns and pages 60 lines, with a form feed between pages.
func Text(w io.Writer, d *plan.DayPlan, o Options) error {
	f := newFacts(d, &o)
	t := &text{paper: &paper{left: words.Clean(d.Beam.Name), right: f.day.Format(dateOfDay)}, facts: f}
	if o.Demo {
		t.note = demoNote
	}
	if t.tellsDay() {
		t.theDay()
	}
	t.theKnife()
	for i, s := range d.Steps() {
		if o.wants(s.Job) {
			t.changeover(i)
		}
	}
	return t.paper.write(w)
}

// text is a day on its way to paper.
type text struct {
	*paper
	*facts
	group int // how many moves stand between blank lines
	mark  int // the line of its page at which the last section began
}

// dateOfDay is how a day is dated.
const dateOfDay = "Mon 2006-01-02"

// told adds facts, each behind its name.
func (t *text) told(all []fact) {
	for _, f := range all {
		t.add(labelled(f.Name, f.Text)...)
		for _, r := range f.Runs {
			t.add(hang(fmt.Sprintf("%11s%-8s %4d x ", "", r.Which, r.N), r.Width)...)
		}
	}
}

// para adds a paragraph, after a blank line.
func (t *text) para(lines ...string) {
	t.space()
	t.add(lines...)
}

// theDay is the first page: the jobs in order and what they come to.
func (t *text) theDay() {
	t.begin("THE DAY", t.order(), "")
	t.broken()
	if t.options.Only == "" {
		t.theJobs()
		t.space()
		t.told(t.inAll())
		t.para(hang("", t.counting())...)
	}
	t.refusals()
	t.notes()
}

// broken warns of an order that breaks rules of the day's file.
func (t *text) broken() {
	broken := t.options.broken(t.plan)
	if len(broken) == 0 {
		return
	}
	t.add(brokenHead)
	for _, why := range broken {
		t.add(hang("  - ", why)...)
	}
	t.space()
}

// theJobs is the table of the day's jobs.
func (t *text) theJobs() {
	if len(t.steps) == 0 {
		t.add("No job is planned.")
		return
	}
	t.grid(t.jobs())
}

// grid adds a table whose rows take a line each.
func (t *text) grid(g grid) {
	head, lines := g.lines()
	rows := make([][]string, len(lines))
	for i, l := range lines {
		rows[i] = []string{l}
	}
	t.table(head, rows, 5)
}

// refusals lists the jobs that the beam can't run, with the reasons.
func (t *text) refusals() {
	refused := t.options.refused(t.plan)
	if len(refused) == 0 {
		return
	}
	t.para(fmt.Sprintf("REFUSED: this beam can't run %s", words.Count(len(refused), "job")))
	longest := 0
	for _, r := range refused {
		longest = max(longest, min(runes(r.Job.ID), 24))
	}
	for _, r := range refused {
		t.add(hang("  "+pad(r.Job.ID, longest)+"  ", reasons(r, t.options.Unit))...)
	}
}

// notes lists what was assumed.
func (t *text) notes() {
	if len(t.options.Notes) == 0 {
		return
	}
	t.para("ASSUMED")
	for _, n := range t.options.Notes {
		t.add(hang("  - ", n)...)
	}
}
