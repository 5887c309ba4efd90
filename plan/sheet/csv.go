package sheet

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"bide/plan"
)

// csvHead names the columns. Lengths are exact in millimetres; in inches they are
// rounded to the ten-thousandth.
var csvHead = []string{
	"turn", "job", "material", "setup_start", "kind", "step", "holder",
	"from_mm", "to_mm", "by_mm", "from_in", "to_in", "by_in", "why",
}

// CSV writes a row for each move (RFC 4180, with a header). Its kind is "move"; a
// job for which no holder moves has one row of kind "none", a refused job one of
// kind "refused", so that every job of the plan is there.
func CSV(w io.Writer, d *plan.DayPlan, o Options) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true // RFC 4180, 2.1
	rows := [][]string{csvHead}
	for i := range d.Steps {
		if s := &d.Steps[i]; o.wants(s.Job) {
			rows = append(rows, stepRows(i+1, s, o.Unit)...)
		}
	}
	for _, r := range o.refused(d) {
		rows = append(rows, row("", r.Job, "", "refused", reasons(r, o.Unit)))
	}
	return out.WriteAll(rows)
}

// stepRows are the rows of one changeover.
func stepRows(turn int, s *plan.Step, u plan.Unit) (rows [][]string) {
	number, start := strconv.Itoa(turn), s.SetupStart.Format("2006-01-02T15:04:05")
	for i, m := range s.Changeover.Moves {
		numbers := []string{strconv.Itoa(i + 1), strconv.Itoa(m.Holder)}
		lengths := []plan.Length{m.From, m.To, m.To - m.From}
		for _, l := range lengths {
			numbers = append(numbers, l.MM())
		}
		for _, l := range lengths {
			numbers = append(numbers, plan.Inches.Number(l))
		}
		rows = append(rows, row(number, s.Job, start, "move", m.Why.Text(u), numbers...))
	}
	if len(rows) == 0 {
		rows = append(rows, row(number, s.Job, start, "none", "no holder moves"))
	}
	return rows
}

// row is one row; the numbers are those from step to by_in, or none.
func row(turn string, j *plan.Job, start, kind, why string, numbers ...string) []string {
	if numbers == nil {
		numbers = make([]string, len(csvHead)-6)
	}
	out := append([]string{turn, harmless(j.ID), harmless(j.Material), start, kind}, numbers...)
	return append(out, harmless(why))
}

// harmless keeps a spreadsheet from taking text for a formula (CWE-1236). Numbers
// don't go through it: a minus is theirs.
func harmless(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + tidy(text)
	}
	return tidy(text)
}
