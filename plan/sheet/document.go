package sheet

import (
	"time"

	"bide/plan"
	"bide/plan/words"
)

// The plan document. Keys may be added, never renamed or taken away; they are
// written in the order in which they stand here.

type document struct {
	Format   string       `json:"format"`
	Version  int          `json:"version"`
	Shop     string       `json:"shop"`
	Holders  int          `json:"holders"`
	Pitch    millimetres  `json:"pitch"`
	Sequence string       `json:"sequence"`
	Aim      string       `json:"aim"`
	Rounds   int          `json:"rounds"`
	Seed     uint64       `json:"seed"`
	Only     string       `json:"only,omitempty"` // the one job written; totals are of the day
	Begins   moment       `json:"begins"`
	Zone     string       `json:"zone,omitempty"` // of all times; none is that of the machine it was made on
	Without  []string     `json:"uncounted"`      // stops of the runs that no time is counted for
	Blades   string       `json:"blades"`         // swapped after the moves, or beside them
	Totals   totals       `json:"totals"`
	Listed   totals       `json:"listed"`
	Floor    *floor       `json:"floor,omitempty"` // where one is proven
	Refused  []refusal    `json:"refused"`
	Notes    []string     `json:"notes"` // demo, broken rules, what was assumed
	Face     *face        `json:"anvil_face,omitempty"`
	Damaged  []damage     `json:"anvil_damaged,omitempty"`
	Jobs     []plannedJob `json:"jobs"`
}

type totals struct {
	Jobs        int     `json:"jobs"`
	Repositions int     `json:"repositions"`
	Setup       seconds `json:"setup_s"`
	LateJobs    int     `json:"late_jobs"`
	Late        seconds `json:"late_s"`
}

type floor struct {
	Repositions int    `json:"repositions"`
	By          string `json:"by"`
}

type refusal struct {
	ID  string `json:"id"`
	Why string `json:"why"`
}

type plannedJob struct {
	ID         string         `json:"id"`
	Material   string         `json:"material"`
	Customer   string         `json:"customer,omitempty"`
	Note       string         `json:"note,omitempty"`
	Web        [2]millimetres `json:"web"`
	Slits      []millimetres  `json:"slits"`
	Finished   []millimetres  `json:"finished,omitempty"` // where cut widths differ from it
	Trim       [2]millimetres `json:"trim"`
	Shift      millimetres    `json:"shift"`
	Cuts       []millimetres  `json:"cuts"`
	Metres     float64        `json:"length_m"`
	SetupStart moment         `json:"setup_start"`
	SetupEnd   moment         `json:"setup_end"`
	RunStart   moment         `json:"run_start"`
	RunEnd     moment         `json:"run_end"`
	Run        seconds        `json:"run_s"` // the web running
	Sets       int            `json:"set_changes"`
	Parents    int            `json:"parent_changes"`
	Stops      seconds        `json:"stops_s"`
	Paused     seconds        `json:"paused_s"` // from the setup's start to the run's end
	Due        *moment        `json:"due,omitempty"`
	Late       seconds        `json:"late_s"`
	Settings   *settings      `json:"settings,omitempty"` // where the material is known
	Changeover changeover     `json:"changeover"`
	Holders    []holder       `json:"holders"`
}

type changeover struct {
	Repositions int         `json:"repositions"`
	Parked      int         `json:"parked"`
	Resting     int         `json:"resting"`
	Travel      millimetres `json:"travel"`
	Carriage    millimetres `json:"carriage"`
	Positioner  seconds     `json:"positioner_s"`
	Crew        seconds     `json:"crew_s"` // blades
	Swaps       int         `json:"swaps"`  // blades swapped
	Every       seconds     `json:"every_s"`
	Rethread    seconds     `json:"rethread_s"`
	CleanDown   seconds     `json:"clean_down_s"`
	Pressure    seconds     `json:"pressure_s"`
	Wicks       seconds     `json:"wicks_s"`
	Pistons     seconds     `json:"pistons_s"`
	Setup       seconds     `json:"setup_s"`
	Moves       []move      `json:"moves"`
}

type move struct {
	Step   int         `json:"step"`
	Holder int         `json:"holder"`
	From   millimetres `json:"from"`
	To     millimetres `json:"to"`
	Why    string      `json:"why"`
}

type holder struct {
	Number int         `json:"number"`
	At     millimetres `json:"at"`
	Use    string      `json:"use"`
	Cut    int         `json:"cut,omitempty"`
}

func newDocument(d *plan.DayPlan, o *Options) *document {
	doc := &document{
		Format: "bide-plan", Version: 1,
		Shop: words.Clean(d.Beam.Name), Holders: len(d.Beam.Holders), Pitch: millimetres(d.Beam.Pitch()),
		Begins: moment(d.Begins.At), Without: append([]string{}, words.Uncounted(d.Uncounted())...),
		Blades:   map[bool]string{true: "beside", false: "after"}[d.Beam.Setup.Beside],
		Sequence: o.Sequence, Aim: o.Aim, Rounds: o.Rounds, Seed: o.Seed, Only: words.Clean(o.Only),
		Totals: newTotals(d.Totals), Listed: newTotals(d.Listed),
		Refused: []refusal{}, Notes: []string{}, Jobs: []plannedJob{},
	}
	if o.Day != nil {
		doc.Zone = o.Day.Zone
	}
	doc.Totals.Setup, doc.Totals.Late = 0, 0 // summed as written, so that the parts add up
	for i, s := range d.Steps() {
		j := newPlannedJob(s)
		doc.Totals.Setup += j.Changeover.Setup
		doc.Totals.Late += j.Late
		if o.wants(s.Job) {
			j.Settings = newSettings(o.turn(i), o.rests())
			doc.Jobs = append(doc.Jobs, j)
		}
	}
	if d.Listed == d.Totals {
		doc.Listed = doc.Totals // the same day comes to the same, to the millisecond
	}
	if o.Knife != nil {
		doc.Face, doc.Damaged = newFace(o.Knife.Face, o.Knife.Faced), newDamaged(o.Knife.Damaged)
	}
	if f := d.Floor; f != nil {
		doc.Floor = &floor{f.Repositions, f.By}
	}
	for _, r := range o.refused(d) {
		doc.Refused = append(doc.Refused, refusal{words.Clean(r.Job.ID), words.Clean(reasons(r, plan.Millimetres))})
	}
	if o.Demo {
		doc.Notes = append(doc.Notes, demoNote)
	}
	for _, why := range o.broken(d) {
		doc.Notes = append(doc.Notes, words.Clean("rule broken: "+why))
	}
	for _, n := range o.Notes {
		doc.Notes = append(doc.Notes, words.Clean(n))
	}
	return doc
}

func newTotals(t plan.Totals) totals {
	return totals{t.Jobs, t.Repositions, inSeconds(t.Setup), t.LateJobs, inSeconds(t.Late)}
}

func newPlannedJob(s *plan.Step) plannedJob {
	run := s.Job.Runs()
	j := plannedJob{
		Metres: s.Job.Metres, Run: inSeconds(run.Web), Sets: run.SetChanges, Parents: run.ParentChanges, Stops: inSeconds(run.Stops),
		ID: words.Clean(s.Job.ID), Material: words.Clean(s.Job.Material),
		Customer: words.Clean(s.Job.Customer), Note: words.Clean(s.Job.Note),
		Web:   [2]millimetres{millimetres(s.Layout.Web.From), millimetres(s.Layout.Web.To)},
		Slits: inMillimetres(s.Layout.Slits), Finished: inMillimetres(finished(s)),
		Trim:  [2]millimetres{millimetres(s.Layout.Trim[0]), millimetres(s.Layout.Trim[1])},
		Shift: millimetres(s.Layout.Shift), Cuts: inMillimetres(s.Layout.Cuts),
		SetupStart: moment(s.SetupStart), SetupEnd: moment(s.SetupEnd), RunStart: moment(s.RunStart), RunEnd: moment(s.RunEnd), Paused: inSeconds(s.Paused),
		Late: inSeconds(s.Late), Changeover: newChangeover(s), Holders: []holder{},
	}
	if !s.Job.Due.IsZero() {
		due := moment(s.Job.Due)
		j.Due = &due
	}
	for i, h := range s.Changeover.Holders {
		j.Holders = append(j.Holders, holder{i + 1, millimetres(h.At), h.Use.String(), h.Cut})
	}
	return j
}

func newChangeover(s *plan.Step) changeover {
	c, t := &s.Changeover, &s.Setup
	out := changeover{
		Repositions: c.Repositions, Parked: c.Parked, Resting: c.Resting,
		Travel: millimetres(c.Travel), Carriage: millimetres(t.Carriage),
		Positioner: inSeconds(t.Positioner), Crew: inSeconds(t.Crew), Swaps: t.Swaps,
		Every: inSeconds(t.Every), Rethread: inSeconds(t.Rethread),
		CleanDown: inSeconds(t.CleanDown), Pressure: inSeconds(t.Pressure),
		Wicks: inSeconds(t.Wicks), Pistons: inSeconds(t.Pistons),
		Moves: []move{},
	}
	out.Setup = out.Positioner + out.Crew
	if t.Beside {
		out.Setup = max(out.Positioner, out.Crew)
	}
	out.Setup += out.Every + out.Rethread + out.CleanDown + out.Pressure + out.Wicks + out.Pistons
	for i, m := range c.Moves {
		out.Moves = append(out.Moves, move{i + 1, m.Holder, millimetres(m.From), millimetres(m.To), words.Clean(m.Why.Text(plan.Millimetres))})
	}
	return out
}

// finished lists the finished widths of the slits as they are laid, operator side
// first; nil where every slit is cut at its finished width. The layout may have
// put the job's slits in another order: equal cut widths come of equal finished
// ones, so the width decides.
func finished(s *plan.Step) []plan.Length {
	of, differ := map[plan.Length]plan.Length{}, false
	for _, e := range s.Job.Entries {
		if _, ok := of[e.Width]; !ok {
			of[e.Width] = e.Finished
		}
		differ = differ || e.Width != e.Finished
	}
	if !differ {
		return nil
	}
	out := make([]plan.Length, len(s.Layout.Slits))
	for i, w := range s.Layout.Slits {
		out[i] = of[w]
	}
	return out
}

func inSeconds(d time.Duration) seconds { return seconds(d.Round(time.Millisecond)) }

func inMillimetres(ls []plan.Length) []millimetres {
	if ls == nil {
		return nil
	}
	out := make([]millimetres, len(ls))
	for i, l := range ls {
		out[i] = millimetres(l)
	}
	return out
}
