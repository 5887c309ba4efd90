package setup

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// cautions come before the first move. They permit nothing. Behind them stands what is
// to be at hand: blades, and what is set at the knife.
func (w *Page) cautions(d *pane.Shared, s draw.Size) []draw.Line {
	if s.H < 4 || s.W < 24 {
		return texts(d, s.W+2, draw.Span{Style: draw.Late, Text: caution.OnOneLine(s.W)}, draw.Span{Style: draw.Plain, Text: "blades, nips!"}, draw.Span{Style: draw.Strong, Text: notSaved(d)})
	}
	var out []draw.Line
	if s.H < 10 || s.W < 40 {
		out = texts(d, s.W, draw.Span{Style: draw.Late, Text: caution.InShort(100)})
	} else {
		out = append(texts(d, s.W, draw.Span{Style: draw.Strong, Text: "Before the first move"}), warnings(d, s)...)
	}
	if len(out) > 1 && s.H >= len(out)+12 {
		out = append(out, d.Line())
	}
	return append(out, texts(d, s.W, notes(w, d)...)...)
}

// notes are what there is to know of this setup before its first move.
func notes(w *Page, d *pane.Shared) []draw.Span {
	var all []draw.Span
	if d.Actual.Positions.Assumed {
		all = append(all, draw.Span{Style: draw.Strong, Text: "Positions are only assumed: measure. Going on confirms that the holders are where the screen shows them; " + d.KeyFor(keys.Correct) + " corrects those that are not."})
	}
	if half := d.Actual.Positions.Begun; half != nil && half.Job != w.Job.ID {
		all = append(all, draw.Span{Style: draw.Strong, Text: "The setup of " + half.Job + " has begun; the setup of " + w.Job.ID + " starts from there. Blades may already be swapped for " + half.Job + ": check what each holder carries."})
	}
	if n := len(w.Made()); n > 0 {
		all = append(all, draw.Span{Style: draw.Plain, Text: fmt.Sprintf("%s already made: the setup goes on from there.", words.Count(n, "move"))})
	}
	if w.Running != nil {
		all = append(all, draw.Span{Style: draw.Plain, Text: w.Running.ID + " is running: the first confirmed move records that it has ended."})
	}
	if !d.Saving.Writes() {
		all = append(all, draw.Span{Style: draw.Strong, Text: "Confirmed moves are not saved here: " + d.Saving.Why() + "."})
	}
	all = append(all, draw.Span{Style: draw.Plain, Text: "At the knife for " + w.Job.ID + ": " + pane.ToSet(d, w.Job) + "."})
	if text := Blades(w, d); text != "" {
		all = append(all, draw.Span{Style: draw.Strong, Text: text})
	} else if w.Plan == nil {
		all = append(all, draw.Span{Style: draw.Faint, Text: d.Pending + " working out which blades are swapped"})
	}
	return all
}

// Blades tells which blades are swapped in this setup: how many, from which to which, in
// which holders, and about how long that takes; nothing where none is.
func Blades(w *Page, d *pane.Shared) string {
	swaps := w.Swaps()
	if len(swaps) == 0 {
		return ""
	}
	var parts []string
	for len(swaps) > 0 {
		now, alike := d.Actual.Positions.Blade(swaps[0]-1), []int{}
		swaps = slices.DeleteFunc(swaps, func(n int) bool {
			same := d.Actual.Positions.Blade(n-1) == now
			if same {
				alike = append(alike, n)
			}
			return same
		})
		parts = append(parts, fmt.Sprintf("%s (now %s)", words.Ranges(alike), bladeWords(now)))
	}
	text := fmt.Sprintf("%s to swap to %s", words.Count(len(w.Swaps()), "blade"), bladeWords(w.Job.Blade))
	if t := w.Plan.Step.Setup.Crew; t > 0 {
		text += fmt.Sprintf(", %s min", words.Minutes(t))
	}
	return text + ": in holders " + strings.Join(parts, ", ") + "."
}

// bladeWords is a blade in words.
func bladeWords(b plan.Blade) string {
	if !b.Known() {
		return "unknown, look first"
	}
	return fmt.Sprintf("%g degrees, tip %g mm", b.Bevel, b.Tip)
}

// swap tells that the holder of a move changes its blade in this setup, in as many words
// as there is room for; empty where it doesn't.
func swap(w *Page, d *pane.Shared, m *plan.Move, width int) string {
	if !slices.Contains(w.Swaps(), m.Holder) {
		return ""
	}
	to := bladeWords(w.Job.Blade)
	return draw.Fitting(width, "Blade: "+bladeWords(d.Actual.Positions.Blade(m.Holder-1))+" out, "+to+" in", "Blade to "+to, fmt.Sprintf("blade to %g deg", w.Job.Blade.Bevel), "new blade")
}

// notSaved is that nothing is saved here, in few words; empty where it is.
func notSaved(d *pane.Shared) string {
	if d.Saving.Writes() {
		return ""
	}
	return "moves not saved"
}

// warnings are the cautions, each behind what it is about: beside it where there is room.
func warnings(d *pane.Shared, s draw.Size) (out []draw.Line) {
	beside := 14
	if s.W < 70 {
		beside = 3
	}
	for _, c := range caution.All {
		first := d.Line()
		first.Add(draw.Late, " ! ")
		first.Add(draw.Strong, c.Head)
		if beside == 3 {
			out, first = append(out, first), d.Line()
		}
		for _, row := range d.Wrap(c.Text, max(s.W-beside-1, 1)) {
			first.To(beside)
			first.Add(draw.Plain, row)
			out, first = append(out, first), d.Line()
		}
	}
	return out
}
