package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/sheet"
)

// table reads what CSV wrote, a map of its columns for each row.
func table(t *testing.T, p planned) (rows []map[string]string) {
	t.Helper()
	text := written(t, sheet.CSV, p)
	if bytes.Count(text, []byte("\n")) != bytes.Count(text, []byte("\r\n")) {
		t.Error("lines don't end in CR LF (RFC 4180, 2.1)")
	}
	all, err := csv.NewReader(bytes.NewReader(text)).ReadAll() // refuses rows of another length
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all[1:] {
		row := map[string]string{}
		for c, name := range all[0] {
			row[name] = r[c]
		}
		rows = append(rows, row)
	}
	return rows
}

// There is a row for each move in its order, and one for each job without; above them one
// of the settings where these are known.
func TestCSVHasEveryMove(t *testing.T) {
	for _, p := range days(t) {
		t.Run(p.name, func(t *testing.T) {
			rows := table(t, p)
			next := func() map[string]string {
				if len(rows) == 0 {
					t.Fatal("rows are missing")
				}
				r := rows[0]
				rows = rows[1:]
				return r
			}
			for i, s := range p.plan.Steps() {
				if p.opts.Knife != nil {
					if r := next(); r["kind"] != "settings" || r["number"] != strconv.Itoa(p.plan.Done+i+1) || r["job"] != s.Job.ID || r["holder"] != "" {
						t.Errorf("job %d has no settings above its moves: %v", i+1, r)
					}
				}
				for k, m := range s.Changeover.Moves {
					r := next()
					got := []string{r["kind"], r["number"], r["step"], r["holder"], r["from_mm"], r["to_mm"], r["by_mm"], r["to_in"]}
					want := []string{"move", strconv.Itoa(p.plan.Done + i + 1), strconv.Itoa(k + 1), strconv.Itoa(m.Holder),
						m.From.MM(), m.To.MM(), (m.To - m.From).MM(), plan.Inches.Number(m.To)}
					if strings.Join(got, " ") != strings.Join(want, " ") || r["why"] == "" {
						t.Errorf("job %d has the row %v, want %v", i+1, r, want)
					}
				}
				if len(s.Changeover.Moves) == 0 && next()["kind"] != "none" {
					t.Errorf("job %d without moves has no row of its own", i+1)
				}
			}
			for range p.plan.Refused() {
				if r := next(); r["kind"] != "refused" || r["why"] == "" {
					t.Errorf("a refused job has the row %v", r)
				}
			}
			if len(rows) > 0 {
				t.Errorf("%d rows too many", len(rows))
			}
		})
	}
}

// A job's settings are those of the plan document, number by number.
func TestCSVHasTheDocumentsSettings(t *testing.T) {
	p := demoDay(t)
	var doc struct {
		Jobs []struct {
			ID         string
			Changeover struct{ Swaps float64 }
			Settings   map[string]any
		}
	}
	if err := json.Unmarshal(written(t, sheet.JSON, p), &doc); err != nil {
		t.Fatal(err)
	}
	i := 0
	for _, r := range table(t, p) {
		if r["kind"] != "settings" {
			if r["set_bar"]+r["bevel_deg"]+r["wicking"] != "" {
				t.Errorf("a row of kind %s has settings: %v", r["kind"], r)
			}
			continue
		}
		j := doc.Jobs[i]
		for column, want := range map[string]any{
			"job": j.ID, "bevel_deg": j.Settings["bevel_deg"], "tip_mm": j.Settings["tip_mm"], "swaps": j.Changeover.Swaps, "set_bar": j.Settings["set_bar"],
			"set_guessed": map[bool]string{true: "yes", false: "no"}[j.Settings["cut_through_guessed"].(bool)], "pistons": j.Settings["pistons"], "bore_mm": j.Settings["bore_mm"],
			"blade_n": fmt.Sprintf("%.1f", j.Settings["force_n"]), "wicking": j.Settings["wicking"],
			"silicone_free": map[bool]string{true: "yes", false: "no"}[j.Settings["silicone_free"].(bool)], "speed_m_min": j.Settings["speed_m_min"], "method": j.Settings["method"],
		} {
			if got := r[column]; got != fmt.Sprint(want) {
				t.Errorf("%s: %s is %q, the document has %v", j.ID, column, got, want)
			}
		}
		i++
	}
	if i != len(doc.Jobs) {
		t.Errorf("%d rows of settings for %d jobs", i, len(doc.Jobs))
	}
}

// Text that a spreadsheet would take for a formula has a quote before it; numbers
// never have, whatever their sign (CWE-1236).
func TestCSVHoldsNoFormulas(t *testing.T) {
	negative := false
	for _, p := range days(t) {
		for _, r := range table(t, p) {
			for name, cell := range r {
				if name == "by_mm" && strings.HasPrefix(cell, "-") {
					negative = true
				}
				if _, err := strconv.ParseFloat(cell, 64); err == nil || cell == "" {
					continue
				}
				if strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
					t.Errorf("%s: %s is %q", p.name, name, cell)
				}
				if strings.ContainsAny(cell, "\x1b\n\r\t\f") {
					t.Errorf("%s: %s holds a control: %q", p.name, name, cell)
				}
			}
		}
	}
	if !negative {
		t.Error("no way to the operator side was seen: the test proves nothing of numbers")
	}
	rows := table(t, hostileDay(t))
	if !strings.HasPrefix(rows[0]["job"], "'+D?") || !strings.HasPrefix(rows[0]["material"], "'=cmd|") {
		t.Errorf("hostile names are %q and %q", rows[0]["job"], rows[0]["material"])
	}
}

// The wide forms of the signs that begin a formula get the quote too: some spreadsheets take
// them for the others. Other letters stay as they are.
func TestCSVQuotesWideSigns(t *testing.T) {
	for _, id := range []string{"＝1+1", "＠A", "紙-1"} {
		p := besideDay()
		p.plan.Steps()[0].Job.ID = id
		if got := table(t, p)[0]["job"]; strings.TrimPrefix(got, "'") != id || (got[0] == '\'') != !strings.HasPrefix(id, "紙") {
			t.Errorf("%s is written as %s", id, got)
		}
	}
}
