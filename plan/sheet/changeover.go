package sheet

import (
	"fmt"

	"bide/plan"
	"bide/plan/words"
)

// changeover is the sheet of one changeover, step i of the day: on as few pages as
// its groups of moves allow, in the smallest groups that do.
func (t *text) changeover(i int) {
	before, fewest := len(t.pages), []*page(nil)
	for _, group := range []int{5, 10, 20} {
		t.pages, t.group = t.pages[:before:before], group
		t.changeoverIn(i)
		if now := t.pages[before:]; fewest == nil || len(now) < len(fewest) {
			fewest = now
		}
	}
	t.pages = append(t.pages[:before:before], fewest...)
}

func (t *text) changeoverIn(i int) {
	s := t.steps[i]
	t.begin(fmt.Sprintf("CHANGEOVER %d of %d", i+1, len(t.steps)), t.between(i),
		"setup "+t.clock(s.SetupStart)+", run "+t.clock(s.RunStart))
	t.told(t.job(i))
	t.told(t.knife(i))
	t.setup(s)
	t.picture(s)
	t.bend(i)
	t.para(hang("", beforeHead)...)
	t.toFillIn(before)
	t.moves(s)
	t.result(s)
	t.close(t.mark, append(append([]string{afterHead}, boxes(after(s.Setup.Swaps))...), "", signOff)...)
}

// toFillIn adds cautions, each with a box to fill in.
func (t *text) toFillIn(cautions []string) { t.add(boxes(cautions)...) }

func boxes(cautions []string) (lines []string) {
	for _, c := range cautions {
		lines = append(lines, hang("[ ] ", c)...)
	}
	return lines
}

// setup gives the minutes by cause.
func (t *text) setup(s *plan.Step) {
	t.add(labelled("Setup", words.Minutes(s.Setup.Total())+" min in all")...)
	for _, c := range words.Causes(&s.Setup, t.plan.Beam.Drive.Kind) {
		t.add(hang(fmt.Sprintf("%11s%5s  ", "", c.Minutes), c.Text)...)
	}
}
