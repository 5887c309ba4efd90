package sheet

import (
	"fmt"
	"io"
	"time"

	"bide/plan"
)

// Text writes the sheets that people carry to the beam: a page with the day in
// order, then for each changeover its job, cautions, numbered moves and what
// stands where afterwards, each beginning on a page of its own. Lines have at most
// 80 columns and pages 60 lines, with a form feed between pages.
func Text(w io.Writer, d *plan.DayPlan, o Options) error {
	day := o.begins(d)
	t := &text{
		paper: &paper{left: tidy(d.Beam.Name), right: day.Format("Mon 2006-01-02")},
		plan:  d, options: &o, day: day, swaps: swaps(d),
	}
	if o.Demo {
		t.note = demoNote
	}
	if o.Only == "" || len(o.refused(d)) > 0 || len(o.broken(d)) > 0 {
		t.theDay()
	}
	t.theKnife()
	for i := range d.Steps {
		if o.wants(d.Steps[i].Job) {
			t.changeover(i)
		}
	}
	return t.paper.write(w)
}

// text is a day on its way to paper.
type text struct {
	*paper
	plan    *plan.DayPlan
	options *Options
	day     time.Time // whose hours are shown without a date
	swaps   []swap    // by step
	group   int       // how many moves stand between blank lines
	mark    int       // the line of its page at which the last section began
}

// clock is a time of day on the sheet's day.
func (t *text) clock(at time.Time) string { return clock(at, t.day) }

// para adds a paragraph, after a blank line.
func (t *text) para(lines ...string) {
	t.space()
	t.add(lines...)
}

// theDay is the first page: the jobs in order and what they come to.
func (t *text) theDay() {
	order := "in the order of the file"
	if t.options.Sequence == "best" {
		order = "in the best order found"
	}
	t.begin("THE DAY", order, "")
	t.broken()
	if t.options.Only == "" {
		t.jobs()
		t.inAll()
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
	t.add("BROKEN: this order doesn't keep what the day's file asks for")
	for _, why := range broken {
		t.add(hang("  - ", why)...)
	}
	t.space()
}

// jobs is the table of the day's jobs.
func (t *text) jobs() {
	if len(t.plan.Steps) == 0 {
		t.add("No job is planned.")
		return
	}
	u := t.options.Unit
	g := grid{
		heads: [][]string{
			{"n", "job", "material", "web", "cuts", "moves", "setup", "run", "", "due", "late"},
			{"", "", "", u.String(), "", "", "min", "from", "to", "", "h:min"},
		},
		names: []bool{1: true, 2: true, 7: true, 8: true, 9: true, 10: false},
		wide:  2,
	}
	for i := range t.plan.Steps {
		s := &t.plan.Steps[i]
		late := ""
		if s.Late > 0 {
			late = hours(s.Late)
		}
		g.rows = append(g.rows, []string{fmt.Sprint(i + 1), tidy(s.Job.ID), tidy(s.Job.Material), u.Number(s.Job.Web),
			fmt.Sprint(len(s.Layout.Cuts)), fmt.Sprint(s.Changeover.Repositions), minutes(s.Setup.Total()),
			t.clock(s.RunStart), t.clock(s.RunEnd), t.clock(s.Job.Due), late})
	}
	head, lines := g.lines()
	rows := make([][]string, len(lines))
	for i, l := range lines {
		rows[i] = []string{l}
	}
	t.table(head, rows, 5)
}

// inAll adds the day up, and sets beside it what the file's order takes centred.
func (t *text) inAll() {
	t.space()
	t.add(labelled("In all", sum(t.plan.Totals))...)
	t.add(labelled("Compare", "in the order of the file, layouts centred: "+sum(t.plan.Listed))...)
	if t.plan.Sequence == plan.SequenceBest {
		t.add(labelled("Saved", saved(t.plan.Totals, t.plan.Listed))...)
	}
	if f := t.plan.Floor; f != nil {
		t.add(labelled("Floor", t.floor(f))...)
	}
	if ends := t.ends(); ends != "" {
		t.add(labelled("Ends", ends)...)
	}
	if out := leftOut(t.options.Day); out != "" {
		t.add(labelled("Left out", out)...)
	}
	t.para(hang("", "Holders, slits and cuts are counted from the operator side. A place is the centre line of a holder on the beam's scale; + is to the drive side. The pitch, the least distance of two neighbours, is "+both(t.plan.Beam.Pitch(), t.options.Unit)+".")...)
}

// saved tells what a day takes less than the file's order does: the difference of
// what sum prints of both.
func saved(now, listed plan.Totals) string {
	const tenth = 6 * time.Second // of a minute
	moves := listed.Repositions - now.Repositions
	setup := listed.Setup.Round(tenth) - now.Setup.Round(tenth)
	late := time.Duration(wholeMinutes(listed.Late)-wholeMinutes(now.Late)) * time.Minute
	text := ""
	if moves != 0 {
		text = count(max(moves, -moves), "move")
	}
	if moves != 0 && setup != 0 {
		if (moves < 0) != (setup < 0) {
			text += lessOrMore(moves < 0)
		}
		text += " and "
	}
	if setup != 0 {
		text += minutes(setup.Abs()) + " min of setup"
	}
	switch {
	case text != "":
		text += lessOrMore(setup < 0 || setup == 0 && moves < 0) + " than the listed order"
	case late == 0:
		return "the same as the listed order"
	default:
		text = "moves and setup the same as the listed order"
	}
	if late != 0 {
		text += "; " + span(late.Abs()) + lessOrMore(late < 0) + " late"
	}
	return text
}

func lessOrMore(more bool) string {
	if more {
		return " more"
	}
	return " less"
}

// floor tells how few moves there could be at best.
func (t *text) floor(f *plan.Floor) string {
	which := "in this order"
	if t.options.Sequence == "best" {
		which = "in any order"
	}
	if t.plan.Totals.Repositions == f.Repositions {
		return fmt.Sprintf("these are the fewest moves %s: proven by %s", which, f.By)
	}
	return fmt.Sprintf("no plan %s can need fewer than %s: proven by %s", which, count(f.Repositions, "move"), f.By)
}

// ends tells when the last run ends, and how that lies to the shift's end.
func (t *text) ends() string {
	steps, day := t.plan.Steps, t.options.Day
	if len(steps) == 0 || day == nil || day.End.IsZero() {
		return ""
	}
	last := steps[len(steps)-1].RunEnd
	lies := "before"
	over := day.End.Sub(last)
	if over < 0 {
		lies, over = "after", -over
	}
	return fmt.Sprintf("the last run at %s, %s %s the shift's end at %s", t.clock(last), span(over), lies, t.clock(day.End))
}

// sum says what a day comes to.
func sum(t plan.Totals) string {
	late := "none late"
	if t.LateJobs > 0 {
		late = fmt.Sprintf("%d late by %s in all", t.LateJobs, span(t.Late))
	}
	return fmt.Sprintf("%s, %s, %s min of setup, %s", count(t.Jobs, "job"), count(t.Repositions, "move"), minutes(t.Setup), late)
}

// leftOut names the jobs of the day that aren't planned.
func leftOut(day *plan.Day) string {
	text := ""
	if day != nil {
		for _, j := range day.Jobs {
			if j.State == plan.Done {
				text = and(text, j.ID+" (done)")
			}
			if j.State == plan.Aside {
				text = and(text, j.ID+" (set aside)")
			}
		}
	}
	return text
}

// and adds one more to a list of words.
func and(list, more string) string {
	if list == "" {
		return more
	}
	return list + ", " + more
}

// refusals lists the jobs that the beam can't run, with the reasons.
func (t *text) refusals() {
	refused := t.options.refused(t.plan)
	if len(refused) == 0 {
		return
	}
	t.para(fmt.Sprintf("REFUSED: this beam can't run %s", count(len(refused), "job")))
	longest := 0
	for _, r := range refused {
		longest = max(longest, min(runes(r.Job.ID), 24))
	}
	for _, r := range refused {
		t.add(hang("  "+pad(r.Job.ID, longest)+"  ", reasons(r, t.options.Unit))...)
	}
}

// notes lists what was taken for granted.
func (t *text) notes() {
	if len(t.options.Notes) == 0 {
		return
	}
	t.para("TAKEN FOR GRANTED")
	for _, n := range t.options.Notes {
		t.add(hang("  - ", n)...)
	}
}
