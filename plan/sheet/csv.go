package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

// csvHead names the columns. Lengths are exact in millimetres; in inches they are
// rounded to the ten-thousandth.
var csvHead = []string{
	"number", "job", "material", "setup_start", "kind", "step", "holder",
	"from_mm", "to_mm", "by_mm", "from_in", "to_in", "by_in", "why",
	"bevel_deg", "tip_mm", "swaps", "set_bar", "set_guessed", "pistons", "bore_mm", "blade_n",
	"wicking", "fluid", "silicone_free", "speed_m_min", "method", "piston_mm2",
}

// The columns of moves, from step to by_in, and those of settings, the last.
const (
	movesFrom, movesTo = 5, 13
	settingsFrom       = 14
)

// CSV writes a row for each move (RFC 4180, with a header). Its kind is "move"; a
// job for which no holder moves has one row of kind "none", a refused job one of
// kind "refused", so that every job of the plan is there. What is set at the knife
// stands above a job's moves, in a row of kind "settings" that fills the last columns;
// there is none where the material isn't known, and no pressure in it where that isn't.
// Turns count the day's jobs that are done as its first, and none that is refused.
func CSV(w io.Writer, d *plan.DayPlan, o Options) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true // RFC 4180, 2.1
	rows := [][]string{csvHead}
	for i, s := range d.Steps() {
		if o.wants(s.Job) {
			turn := strconv.Itoa(d.Done + i + 1)
			rows = append(rows, settingsRows(turn, o.turn(i), s)...)
			rows = append(rows, stepRows(turn, s, o.Unit)...)
		}
	}
	for _, r := range o.refused(d) {
		rows = append(rows, row("", r.Job, "", "refused", reasons(r, o.Unit)))
	}
	return out.WriteAll(rows)
}

// settingsRows is the row of what is set at the knife, or none where that isn't known.
// Its why is what that changes, and what is wrong with it.
func settingsRows(turn string, k *material.Turn, s *plan.Step) [][]string {
	if k == nil {
		return nil
	}
	var why []string
	if len(k.Changes) > 0 {
		why = append(why, changed(k))
	}
	out := row(turn, s.Job, csvTime(s), "settings", strings.Join(append(why, k.Settings.Warnings...), "; "))
	on := k.Settings
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	bar, force := number(on.Air.SetBar), fmt.Sprintf("%.1f", on.Air.SetN)
	if on.Unfound {
		bar, force = "", "" // nought would be a pressure
	}
	copy(out[settingsFrom:], []string{
		number(on.Blade.Bevel), number(on.Blade.Tip), strconv.Itoa(s.Setup.Swaps), bar, yesOrNo(on.Guessed),
		strconv.Itoa(on.Air.Pistons), number(on.Air.BoreMM), force,
		on.Wicking.Wick.String(), on.Wicking.Fluid, yesOrNo(on.Material.SiliconeFree), number(on.Speed.Speed), on.Method.Method.String(), number(on.Air.AreaMM2),
	})
	return [][]string{out}
}

func yesOrNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// csvTime is when a step's setup begins.
func csvTime(s *plan.Step) string { return s.SetupStart.Format("2006-01-02T15:04:05") }

// stepRows are the rows of one changeover.
func stepRows(turn string, s *plan.Step, u plan.Unit) (rows [][]string) {
	start := csvTime(s)
	for i, m := range s.Changeover.Moves {
		r := row(turn, s.Job, start, "move", m.Why.Text(u))
		cells := []string{strconv.Itoa(i + 1), strconv.Itoa(m.Holder)}
		lengths := []plan.Length{m.From, m.To, m.To - m.From}
		for _, l := range lengths {
			cells = append(cells, l.MM())
		}
		for _, l := range lengths {
			cells = append(cells, plan.Inches.Number(l))
		}
		copy(r[movesFrom:movesTo], cells)
		rows = append(rows, r)
	}
	if len(rows) == 0 {
		rows = append(rows, row(turn, s.Job, start, "none", "no holder moves"))
	}
	return rows
}

// row is one row, without numbers.
func row(turn string, j *plan.Job, start, kind, why string) []string {
	out := make([]string, len(csvHead))
	copy(out, []string{turn, harmless(j.ID), harmless(j.Material), start, kind})
	out[movesTo] = harmless(why)
	return out
}

// harmless keeps a spreadsheet from taking text for a formula (CWE-1236). Numbers
// don't go through it: a minus is theirs.
func harmless(text string) string {
	first, _ := utf8.DecodeRuneInString(text)
	if strings.ContainsRune("=+-@\t\r＝＋－＠", first) { // the wide ones too: some take them for the others
		return "'" + words.Clean(text)
	}
	return words.Clean(text)
}
