package sheet_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"bide/material"
	"bide/plan"
	"bide/plan/sheet"

	"github.com/google/go-cmp/cmp"
)

// The settings of the day made by hand: 2.1 and 0.8 bar on two pistons of 260 mm2
// press with 0.29 MPa * 520 = 150.8 N. The four blades stand at 10, 41, 69.5 and 90 mm, where
// two serve their cut from beside it, between bearings at -100 and 200: the drive side
// carries (110 + 141 + 169.5 + 190)/300 = 2.035 forces, the operator side the rest of
// four.
func TestDocumentTellsSettings(t *testing.T) {
	var doc struct {
		Jobs []struct {
			Settings struct {
				SetBar     float64 `json:"set_bar"`
				CutThrough float64 `json:"cut_through_bar"`
				Guessed    bool    `json:"cut_through_guessed"`
				Force      float64 `json:"force_n"`
				Bevel      float64 `json:"bevel_deg"`
				Tip        float64 `json:"tip_mm"`
				Warnings   []string
				Cautions   []struct{ About, Text, Source string }
				Reasons    []struct{ Name, Value, Why, Source string }
				Anvil      struct {
					Operator float64 `json:"operator_bearing_n"`
					Drive    float64 `json:"drive_bearing_n"`
					Bend     float64 `json:"bend_mm"`
				}
			}
		}
	}
	if err := json.Unmarshal(written(t, sheet.JSON, besideDay()), &doc); err != nil {
		t.Fatal(err)
	}
	s := doc.Jobs[0].Settings
	if s.SetBar != 2.9 || s.CutThrough != 2.1 || s.Guessed || s.Bevel != 45 || s.Tip != 0.15 || len(s.Cautions) == 0 || len(s.Reasons) == 0 {
		t.Errorf("%+v", s)
	}
	const force = 150.8
	for what, pair := range map[string][2]float64{
		"force": {s.Force, force}, "drive side": {s.Anvil.Drive, 2.035 * force}, "operator side": {s.Anvil.Operator, 1.965 * force},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9*pair[1] {
			t.Errorf("%s is %v, want %v", what, pair[0], pair[1])
		}
	}
	for _, c := range s.Reasons {
		if c.Value == "" || c.Source == "" {
			t.Errorf("%+v is without value or source", c)
		}
	}
}

// Of a day whose settings nobody gave there are none, on no sheet.
func TestNoSettingsNoKnife(t *testing.T) {
	p := besideDay()
	p.opts.Knife = nil
	for what, write := range map[string]writer{"text": sheet.Text, "json": sheet.JSON, "html": sheet.HTML} {
		text := string(written(t, write, p))
		for _, not := range []string{"THE KNIFE", `"knife"`, "bend ", `"settings"`, `"anvil_face"`} {
			if strings.Contains(text, not) {
				t.Errorf("%s: there is %q", what, not)
			}
		}
	}
}

// A caution stands once on the sheets of a day, however many jobs it is of, and every
// caution of every job is there; a warning stands in its job, or once if all have it.
func TestCautionsAreToldOnce(t *testing.T) {
	p := demoDay(t)
	for i := range p.opts.Knife.Turns {
		s := p.opts.Knife.Turns[i].Settings
		s.Warnings = append(s.Warnings, "Every job has this one.")
	}
	last := p.opts.Knife.Turns[len(p.plan.Steps())-1].Settings
	last.Warnings = append(last.Warnings, "This one is of the last alone.")
	text := strings.Join(strings.Fields(string(written(t, sheet.Text, p))), " ")
	for i, k := range p.opts.Knife.Turns {
		for _, c := range k.Settings.Cautions {
			if n := strings.Count(text, " "+c.Text); n != 1 && len(c.Text) > 20 {
				t.Errorf("job %d: %q stands %d times", i+1, c.Text, n)
			}
		}
	}
	for _, w := range []string{"Every job has this one.", "This one is of the last alone."} {
		if n := strings.Count(text, w); n != 1 {
			t.Errorf("%q stands %d times", w, n)
		}
	}
}

// The sheet of one job has its settings and cautions and no others', and no wear of the
// day.
func TestOneJobsKnife(t *testing.T) {
	p := demoDay(t)
	p.opts.Only = p.plan.Steps()[1].Job.ID
	text := string(written(t, sheet.Text, p))
	if !strings.Contains(text, "THE KNIFE") || strings.Contains(text, "ANVIL'S FACE") || strings.Contains(text, "CAUTIONS of some") {
		t.Errorf("the sheet of one job:\n%.3000s", text)
	}
	for _, c := range p.opts.Knife.Turns[1].Settings.Cautions {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), c.Text) {
			t.Errorf("no %q", c.Text)
		}
	}
}

// The face of the day made by hand, 0 to 100 mm, has bands of 2 mm, the least round width
// of which no more than 72 make it. Blades at 10, 41, 69.5 and 90 mm run 500 m each, in
// the bands from 10, 40, 68 and 90. The damaged band from 42 to 60 mm, its ends part of it,
// lies in those from 42 to 60; of what is cut, 41 alone is within 2 mm of it.
func TestFaceAndDamageAreTold(t *testing.T) {
	p := besideDay()
	text := string(written(t, sheet.Text, p))
	flat := strings.Join(strings.Fields(text), " ")
	const told = "from 42 to 60 mm: no cut is in it; nearest at 41 mm on the operator side, at 69.5 mm on the drive side"
	want := [][]string{{"10", "500"}, {"40", "500"}}
	for at := 42; at <= 60; at += 2 {
		want = append(want, []string{strconv.Itoa(at), "0 x"})
	}
	want = append(want, []string{"68", "500"}, []string{"90", "500"})
	for _, row := range want {
		if !strings.Contains(flat, " "+strings.Join(row, " ")+" ") {
			t.Errorf("the text has no band %v:\n%s", row, text)
		}
	}
	if n := strings.Count(flat, "anvil "+told); n != 1 || !strings.Contains(flat, "- "+told+"; cut within 2 mm of it: 500 m and 0 m") {
		t.Errorf("the text doesn't tell of the damaged band:\n%s", text)
	}
	// 200 mm of rail on 75 columns: 42 mm is 92 from its beginning, 92 * 74 / 200 = 34.04,
	// and 60 mm 110 * 74 / 200 = 40.7.
	if !strings.Contains(text, "\nbad  "+strings.Repeat(" ", 34)+"xxxxxxx\n") {
		t.Errorf("the damaged band isn't drawn where it lies:\n%s", text)
	}
	root := page(t, p)
	var rows [][]string
	for _, table := range root.section("knife").class("table", "side") {
		rows = append(rows, table.rows()...)
	}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Error(diff)
	}
	if !strings.Contains(root.section("knife").words(), told+"; cut within 2 mm of it: 500 m and 0 m") || !strings.Contains(root.section("changeover-1").words(), "anvil "+told) {
		t.Error("the page doesn't tell of the damaged band")
	}
	if n := len(root.class("path", "crossed")); n != 2 {
		t.Errorf("the damaged band is crossed out %d times, want on the face and under the web", n)
	}
}

// The plan document has the damaged band in exact millimetres.
func TestDocumentTellsDamage(t *testing.T) {
	var doc struct {
		Damaged []struct {
			From, To, Reach json.Number
			Metres          float64
			Operator        struct {
				Nearest json.Number
				Metres  float64
			} `json:"operator_side"`
			Drive struct {
				Nearest json.Number
				Metres  float64
			} `json:"drive_side"`
		} `json:"anvil_damaged"`
	}
	if err := json.Unmarshal(written(t, sheet.JSON, besideDay()), &doc); err != nil || len(doc.Damaged) != 1 {
		t.Fatal(err, doc)
	}
	d := doc.Damaged[0]
	if d.From != "42" || d.To != "60" || d.Reach != "2" || d.Metres != 0 || d.Operator.Nearest != "41" || d.Operator.Metres != 500 || d.Drive.Nearest != "69.5" || d.Drive.Metres != 0 {
		t.Errorf("%+v", d)
	}
}

// The pressure is told to the hundredth of a bar, as the gauge and the files have it, and
// what it is worth: 2.53 bar are 36.69 psi, 3.6 bar 52.2 psi (1 psi is 6.894757 kPa, NIST SP
// 811). Short runs and slow ones aren't told as nought, and in inches in both units.
func TestPressureAndRunAreTold(t *testing.T) {
	p := besideDay()
	j, s := p.plan.Steps()[0].Job, p.opts.Knife.Turns[0].Settings
	tell := func(what string, wants ...string) {
		t.Helper()
		for name, write := range map[string]writer{"text": sheet.Text, "html": sheet.HTML} {
			text := strings.Join(strings.Fields(string(written(t, write, p))), " ")
			for _, want := range wants {
				if !strings.Contains(text, want) {
					t.Errorf("%s, %s: no %q", what, name, want)
				}
			}
		}
	}
	j.SetBar, j.Metres, j.Speed = 2.53, 0.4, 0.25
	tell("short and slow", "set 2.53 bar (37 psi), a starting value: prove it on the first-off", "0.4 m at 0.25 m/min")
	s.Guessed = true
	tell("guessed", "set 2.53 bar (37 psi), from a guess: start low, and prove it on the first-off")
	s.Air.Own, j.SetBar, s.Guessed = false, 3.6, false
	tell("other pistons", "set 3.6 bar (52 psi) on 2 pistons of 260 mm2, not fitted on this beam, a starting value")
	p.opts.Unit, j.Metres, j.Speed = plan.Inches, 304.8, 152.4
	tell("in inches", "304.8 m (1000 ft) at 500 ft/min (152.4 m/min)")
}

// A plan whose positions nobody has measured says so on every changeover, also where that
// alone is written.
func TestAssumedPositionsAreSaid(t *testing.T) {
	p := besideDay()
	const words = "nobody has measured the positions from which the day begins"
	for name, write := range map[string]writer{"text": sheet.Text, "html": sheet.HTML} {
		p.opts.Only, p.plan.Start.Assumed = "B-1", true
		if text := strings.Join(strings.Fields(string(written(t, write, p))), " "); !strings.Contains(text, words) {
			t.Errorf("%s: the sheet of one job takes assumed places for measured ones", name)
		}
		p.plan.Start.Assumed = false
		if text := strings.Join(strings.Fields(string(written(t, write, p))), " "); strings.Contains(text, words) {
			t.Errorf("%s: measured places are told to be assumed", name)
		}
	}
}

// What jobs that are done have cut isn't in the day's metres, and the sheet says so.
func TestMetresOfJobsDoneAreNotCounted(t *testing.T) {
	p := besideDay()
	const words = "Jobs that are done aren't counted."
	for _, state := range []plan.State{plan.OnHold, plan.Done} {
		p.opts.Day.Jobs = append(p.opts.Day.Jobs, plan.Job{ID: "B-9", State: state})
		if text := strings.Join(strings.Fields(string(written(t, sheet.Text, p))), " "); strings.Contains(text, words) != (state == plan.Done) {
			t.Errorf("%v: %s", state, text)
		}
	}
}

// Moves of a job that is said to run already are no order to make them: one of the two is
// wrong. besideDay has one move.
func TestMovesUnderARunningJobAreQuestioned(t *testing.T) {
	p := besideDay()
	for state, want := range map[plan.State]bool{plan.Waiting: false, plan.Running: true} {
		p.plan.Steps()[0].Job.State = state
		text := strings.Join(strings.Fields(string(written(t, sheet.Text, p))), " ")
		if strings.Contains(text, "RUNNING this job is said to run already, and 1 holder isn't right for it") != want {
			t.Errorf("%v: %s", state, text)
		}
	}
}

// Every setting's source stands once on the knife's page, with the jobs that it is of where
// they differ.
func TestSourcesAreTold(t *testing.T) {
	p := demoDay(t)
	for i := range p.opts.Knife.Turns {
		lines := p.opts.Knife.Turns[i].Settings.Lines
		for n := range lines {
			if lines[n].Source = "one book"; lines[n].ID == material.IDBevel && i == 1 {
				lines[n].Source = "another"
			}
		}
	}
	for name, write := range map[string]writer{"text": sheet.Text, "html": sheet.HTML} {
		text := strings.Join(strings.Fields(string(written(t, write, p))), " ")
		for _, want := range []string{"method, edge, tip radius, ", "bevel: one book (1, 3-" + strconv.Itoa(len(p.plan.Steps())) + "); another (2)"} {
			if n := strings.Count(text, want); n != 1 {
				t.Errorf("%s: %q stands %d times", name, want, n)
			}
		}
	}
}

// Pistons that the beam hasn't are marked in the table of what is set, as a guess is; where
// no pressure is known none is told.
func TestSettingsAreMarked(t *testing.T) {
	for _, c := range []struct {
		guessed, unfound, own bool
		want                  string
	}{
		{true, false, true, " 2.90 g 151 "}, {false, false, false, " 2.90 x 151 "}, {true, false, false, " 2.90 gx 151 "},
		{false, false, true, " 2.90 151 "}, {true, true, true, " - - "},
	} {
		p := besideDay()
		s := p.opts.Knife.Turns[0].Settings
		s.Guessed, s.Unfound, s.Air.Own = c.guessed, c.unfound, c.own
		text := strings.Join(strings.Fields(string(written(t, sheet.Text, p))), " ")
		if !strings.Contains(text, c.want) || strings.Contains(text, "Force 151 N") == c.unfound {
			t.Errorf("%+v isn't told as %q", c, c.want)
		}
		row := strings.Split(strings.Split(string(written(t, sheet.CSV, p)), "\r\n")[1], ",")
		if n := len(row); (row[n-12] == "") != c.unfound || (row[n-8] == "") != c.unfound { // set_bar and blade_n; the fluid has a comma
			t.Errorf("%+v in the table: %q", c, row)
		}
	}
}

// A short anvil is said to bend more than calculated, on every form.
func TestShortAnvilIsDoubted(t *testing.T) {
	p := besideDay() // 300 mm between its bearings
	const words = "the real deflection is larger: shear isn't counted"
	for name, write := range map[string]writer{"text": sheet.Text, "html": sheet.HTML, "json": sheet.JSON} {
		if text := strings.Join(strings.Fields(string(written(t, write, p))), " "); !strings.Contains(strings.ReplaceAll(text, "&#39;", "'"), words) {
			t.Errorf("%s: no %q", name, words)
		}
	}
}
