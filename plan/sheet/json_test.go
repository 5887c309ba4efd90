package sheet_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/sheet"

	"github.com/google/go-cmp/cmp"
)

// example is the plan document as the design fixes it, without its comments.
const example = `{
  "format": "bide-plan", "version": 1,
  "shop": "Beam 2", "holders": 84, "pitch": 12.3,
  "sequence": "best", "aim": "minutes", "rounds": 20000, "seed": 1,
  "totals": {"jobs": 14, "repositions": 411, "setup_s": 12345.6, "late_jobs": 0, "late_s": 0},
  "listed": {"jobs": 14, "repositions": 944, "setup_s": 23456.7, "late_jobs": 2, "late_s": 5400},
  "floor": {"repositions": 380, "by": "..."},
  "refused": [{"id": "D-107", "why": "..."}],
  "jobs": [{
    "id": "D-101", "material": "...",
    "web": [25, 75.4], "slits": [25.4], "trim": [12.5, 12.5], "shift": 0,
    "cuts": [37.5, 62.9],
    "setup_start": "2026-11-25T06:00:00", "run_start": "...", "run_end": "...", "due": "...", "late_s": 0,
    "changeover": {
      "repositions": 12, "parked": 30, "resting": 10, "travel": 4123.5,
      "positioner_s": 71.2, "crew_s": 80, "setup_s": 440,
      "moves": [{"step": 1, "holder": 17, "from": 412.5, "to": 430, "why": "..."}]
    },
    "holders": [{"number": 1, "at": -420, "use": "parked"}, {"number": 2, "at": 37.5, "use": "cutting", "cut": 1}]
  }]
}`

// outline lists, in order, the keys of a document with the kind of their values:
// "jobs.changeover.travel number". Lists are taken together.
func outline(t *testing.T, text []byte) []string {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(text))
	var out []string
	var read func(path string)
	read = func(path string) {
		token, err := d.Token()
		if err != nil {
			t.Fatal(err)
		}
		kind := fmt.Sprintf("%T", token)
		switch token {
		case json.Delim('{'):
			for d.More() {
				key, _ := d.Token()
				read(strings.TrimPrefix(path+"."+key.(string), "."))
			}
			d.Token()
		case json.Delim('['):
			kind = "list"
			for d.More() {
				read(path)
			}
			d.Token()
		}
		if entry := path + " " + kind; path != "" && !slices.Contains(out, entry) {
			out = append(out, entry)
		}
	}
	read("")
	return out
}

// Every key of the design is there, of the kind shown and in the order shown.
func TestDocumentHasEveryKeyOfTheDesign(t *testing.T) {
	want := outline(t, []byte(example))
	p := demoDay(t)
	p.plan.Turns = append(p.plan.Turns, hostileDay(t).plan.Refused()...)
	p.plan.Floor = &plan.Floor{Repositions: 1, By: plan.ByKeeping}
	got := outline(t, written(t, sheet.JSON, p))
	at := -1
	for _, key := range want {
		i := slices.Index(got, key)
		if i < 0 {
			t.Errorf("no key %s", key)
			continue
		}
		if i < at {
			t.Errorf("key %s out of order", key)
		}
		at = i
	}
	p.plan.Floor = nil
	if text := string(written(t, sheet.JSON, p)); strings.Contains(text, `"floor"`) {
		t.Error("a floor is written, and none is proven")
	}
	if empty := string(written(t, sheet.JSON, overnightDay(t))); !strings.Contains(empty, `"refused": []`) {
		t.Error("without refused jobs the list isn't there")
	}
}

// writer writes a plan in one of the forms.
type writer func(io.Writer, *plan.DayPlan, sheet.Options) error

// written is a plan as a writer writes it.
func written(t testing.TB, write writer, p planned) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, p.plan, p.opts); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// document is what another program reads, numbers as they are written.
type document struct {
	Holders int
	Pitch   json.Number
	Blades  string
	Totals  struct {
		Jobs, Repositions int
		Setup             json.Number `json:"setup_s"`
		LateJobs          int         `json:"late_jobs"`
		Late              json.Number `json:"late_s"`
	}
	Refused []struct{ ID, Why string }
	Jobs    []struct {
		ID                               string
		Web, Slits, Finished, Trim, Cuts []json.Number
		Shift                            json.Number
		Late                             json.Number `json:"late_s"`
		SetupStart                       string      `json:"setup_start"`
		SetupEnd                         string      `json:"setup_end"`
		RunStart                         string      `json:"run_start"`
		RunEnd                           string      `json:"run_end"`
		Run                              json.Number `json:"run_s"`
		Stops                            json.Number `json:"stops_s"`
		Paused                           json.Number `json:"paused_s"`
		Due                              *string
		Changeover                       struct {
			Repositions, Parked, Resting int
			Travel                       json.Number
			Positioner                   json.Number `json:"positioner_s"`
			Crew                         json.Number `json:"crew_s"`
			Every                        json.Number `json:"every_s"`
			Rethread                     json.Number `json:"rethread_s"`
			CleanDown                    json.Number `json:"clean_down_s"`
			Pressure                     json.Number `json:"pressure_s"`
			Wicks                        json.Number `json:"wicks_s"`
			Pistons                      json.Number `json:"pistons_s"`
			Setup                        json.Number `json:"setup_s"`
			Moves                        []struct {
				Step, Holder int
				From, To     json.Number
				Why          string
			}
		}
		Holders []struct {
			Number, Cut int
			At          json.Number
			Use         string
		}
	}
}

// nm is a written length in nanometres, exactly.
func nm(t *testing.T, n json.Number) plan.Length {
	t.Helper()
	r, ok := new(big.Rat).SetString(n.String())
	if !ok || !r.Mul(r, big.NewRat(int64(plan.Millimetre), 1)).IsInt() {
		t.Fatalf("%s mm is no whole number of nanometres", n)
	}
	return plan.Length(r.Num().Int64())
}

// ms is a written time in milliseconds, exactly.
func ms(t *testing.T, n json.Number) int64 {
	t.Helper()
	r, ok := new(big.Rat).SetString(n.String())
	if !ok || !r.Mul(r, big.NewRat(1000, 1)).IsInt() {
		t.Fatalf("%s s is no whole number of milliseconds", n)
	}
	return r.Num().Int64()
}

// What the document says adds up: totals from jobs, setup from its causes, layouts
// from their slits, places from the moves before.
func TestDocumentAddsUp(t *testing.T) {
	for _, p := range days(t) {
		t.Run(p.name, func(t *testing.T) {
			text := written(t, sheet.JSON, p)
			var doc document
			if err := json.Unmarshal(text, &doc); err != nil {
				t.Fatal(err)
			}
			checkTotals(t, &doc)
			at := slices.Clone(p.plan.Start.At)
			for i := range doc.Jobs {
				checkLayout(t, &doc, i)
				checkChangeover(t, &doc, i, at)
			}
		})
	}
}

func checkTotals(t *testing.T, doc *document) {
	t.Helper()
	repositions, lateJobs, setup, late := 0, 0, int64(0), int64(0)
	for i := range doc.Jobs {
		j := &doc.Jobs[i]
		repositions += j.Changeover.Repositions
		setup += ms(t, j.Changeover.Setup)
		late += ms(t, j.Late)
		if ms(t, j.Late) > 0 {
			lateJobs++
		}
		c := &j.Changeover
		want := ms(t, c.Positioner) + ms(t, c.Crew)
		if doc.Blades == "beside" {
			want = max(ms(t, c.Positioner), ms(t, c.Crew))
		}
		for _, cause := range []json.Number{c.Every, c.Rethread, c.CleanDown, c.Pressure, c.Wicks, c.Pistons} {
			want += ms(t, cause)
		}
		moment := func(text string) time.Time {
			at, err := time.Parse("2006-01-02T15:04:05.999", text)
			if err != nil {
				t.Fatal(err)
			}
			return at
		}
		// From the setup's start to the run's end there are the setup, the run with its stops, and
		// what was paused, each rounded by itself.
		spent := moment(j.RunEnd).Sub(moment(j.SetupStart)).Milliseconds() - ms(t, c.Setup) - ms(t, j.Run) - ms(t, j.Stops) - ms(t, j.Paused)
		if max(spent, -spent) > 4 || moment(j.SetupEnd).Before(moment(j.SetupStart)) || moment(j.RunStart).Before(moment(j.SetupEnd)) {
			t.Errorf("%s: %d ms of its time are nowhere", j.ID, spent)
		}
		if ms(t, c.Setup) != want {
			t.Errorf("%s: setup_s is %s, its causes come to %d ms", j.ID, c.Setup, want)
		}
	}
	o := &doc.Totals
	if o.Jobs != len(doc.Jobs) || o.Repositions != repositions || ms(t, o.Setup) != setup || o.LateJobs != lateJobs || ms(t, o.Late) != late {
		t.Errorf("totals are %+v, the jobs come to %d, %d, %d ms, %d, %d ms", *o, len(doc.Jobs), repositions, setup, lateJobs, late)
	}
}

func checkLayout(t *testing.T, doc *document, i int) {
	t.Helper()
	j := &doc.Jobs[i]
	edge := nm(t, j.Web[0]) + nm(t, j.Trim[0])
	edges := []plan.Length{edge}
	for _, s := range j.Slits {
		edge += nm(t, s)
		edges = append(edges, edge)
	}
	if edge+nm(t, j.Trim[1]) != nm(t, j.Web[1]) {
		t.Errorf("%s: trim and slits come to %d nm, not to the web", j.ID, edge+nm(t, j.Trim[1]))
	}
	if nm(t, j.Trim[0]) == 0 {
		edges = edges[1 : len(edges)-1] // the web's own edges are no cuts
	}
	cuts := make([]plan.Length, len(j.Cuts))
	for k, c := range j.Cuts {
		cuts[k] = nm(t, c)
	}
	if !slices.Equal(cuts, edges) {
		t.Errorf("%s: cuts are %v, the slits' edges %v", j.ID, cuts, edges)
	}
}

// checkChangeover makes the moves from where the holders stand and leaves them
// where they then stand.
func checkChangeover(t *testing.T, doc *document, i int, at []plan.Length) {
	t.Helper()
	j := &doc.Jobs[i]
	travel, uses := plan.Length(0), map[string]int{}
	for k, m := range j.Changeover.Moves {
		if m.Step != k+1 || m.Why == "" || nm(t, m.From) != at[m.Holder-1] {
			t.Errorf("%s: move %d is %+v, holder at %d nm", j.ID, k+1, m, at[m.Holder-1])
		}
		way := nm(t, m.To) - nm(t, m.From)
		travel += max(way, -way)
		at[m.Holder-1] = nm(t, m.To)
	}
	for k, h := range j.Holders {
		uses[h.Use]++
		if h.Number != k+1 || nm(t, h.At) != at[k] || (h.Use == "cutting") != (h.Cut > 0) {
			t.Errorf("%s: holder %d is %+v, the moves leave it at %d nm", j.ID, k+1, h, at[k])
		}
	}
	c := &j.Changeover
	if uses["cutting"] != len(j.Cuts) || uses["parked"] != c.Parked || uses["resting"] != c.Resting || len(j.Holders) != doc.Holders {
		t.Errorf("%s: uses are %v for %d cuts, %d parked, %d resting", j.ID, uses, len(j.Cuts), c.Parked, c.Resting)
	}
	if len(c.Moves) != c.Repositions || nm(t, c.Travel) != travel {
		t.Errorf("%s: %d moves over %d nm, said to be %d over %s mm", j.ID, len(c.Moves), travel, c.Repositions, c.Travel)
	}
}

// A day that is the listed one comes to the same in both totals, each job rounded
// by itself: two setups of 0.6 ms are 2 ms in the jobs, and so in both sums.
func TestTheListedDayComesToTheSame(t *testing.T) {
	p := besideDay()
	extra := 600 * time.Microsecond
	first := p.plan.Steps()[0]
	first.Setup.Every += extra
	p.plan.Turns = plan.Planned([]*plan.Step{first, first})
	p.plan.Totals = plan.Totals{Jobs: 2, Repositions: 2, Setup: 2 * (492*time.Second + extra)}
	p.plan.Listed = p.plan.Totals
	var doc struct{ Totals, Listed map[string]any }
	if err := json.Unmarshal(written(t, sheet.JSON, p), &doc); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(doc.Totals, doc.Listed); diff != "" || doc.Listed["setup_s"] != 984.002 {
		t.Errorf("setup is %v, and listed differs: %s", doc.Listed["setup_s"], diff)
	}
}

// The one job wanted stands in the document as it stands in that of the day.
func TestDocumentOfOneJob(t *testing.T) {
	p := demoDay(t)
	var day, one map[string]any
	if err := json.Unmarshal(written(t, sheet.JSON, p), &day); err != nil {
		t.Fatal(err)
	}
	p.opts.Only = p.plan.Steps()[4].Job.ID
	if err := json.Unmarshal(written(t, sheet.JSON, p), &one); err != nil {
		t.Fatal(err)
	}
	if one["only"] != p.opts.Only {
		t.Errorf("only is %v", one["only"])
	}
	jobs := day["jobs"].([]any)
	delete(one, "only")
	day["jobs"] = jobs[4:5]
	if diff := cmp.Diff(day, one); diff != "" {
		t.Error(diff)
	}
}

// Finished widths are there where the cut widths differ from them, slit by slit.
func TestDocumentNamesFinishedWidths(t *testing.T) {
	b, s := evenBeam(20, plan.Span{From: -300 * plan.Millimetre, To: 1900 * plan.Millimetre})
	j := plan.Job{ID: "A", Web: 1000 * plan.Millimetre, Trim: plan.Millimetre, Metres: 1, Speed: 1, Entries: []plan.Entry{
		{Count: 2, Finished: 100 * plan.Millimetre, Width: 100_500_000},
		{Count: 1, Finished: 50 * plan.Millimetre, Width: 50_250_000},
	}}
	p := must(t, "finished", plan.Millimetres, b, s, &plan.Day{Start: sixOClock, Jobs: []plan.Job{j}})
	text := string(written(t, sheet.JSON, p))
	for _, want := range []string{`"slits": [100.5, 100.5, 50.25]`, `"finished": [100, 100, 50]`} {
		if !strings.Contains(text, want) {
			t.Errorf("%s isn't in the document", want)
		}
	}
	if text := string(written(t, sheet.JSON, demoDay(t))); strings.Contains(text, `"finished"`) != demoHasAllowances(t) {
		t.Error("finished widths are told of slits that are cut at them, or not told")
	}
}

func demoHasAllowances(t *testing.T) bool {
	for _, s := range demoDay(t).plan.Steps() {
		for _, e := range s.Job.Entries {
			if e.Finished != e.Width {
				return true
			}
		}
	}
	return false
}
