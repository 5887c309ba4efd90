package sheet

import (
	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

// What is set at the knife, in the plan document. Units stand in the keys; forces,
// pressures and bends are floating-point numbers as calculated.

type settings struct {
	Group    string `json:"group"`
	Method   string `json:"method"`    // best for the material
	ScoreFit string `json:"score_fit"` // how well a score cut suits it: good, fair, poor
	Edge     string `json:"edge"`      // that a score cut leaves

	Bevel    float64 `json:"bevel_deg"` // included
	Tip      float64 `json:"tip_mm"`
	BladeHRC float64 `json:"blade_hrc"`
	AnvilHRC float64 `json:"anvil_hrc"` // the usual where the shop's isn't known

	CutThrough float64 `json:"cut_through_bar"`     // 0, as what follows of it, where it isn't known
	Guessed    bool    `json:"cut_through_guessed"` // no trial
	Set        float64 `json:"set_bar"`
	Bore       float64 `json:"bore_mm"`         // of a round piston; 0 is another shape
	Area       float64 `json:"piston_area_mm2"` // of one piston
	Pistons    int     `json:"pistons"`
	Own        bool    `json:"own_pistons"` // the shop's reach it
	Force      float64 `json:"force_n"`     // of one blade at set_bar
	WearIndex  float64 `json:"tip_wear_index,omitempty"`

	Wicking      string  `json:"wicking"`
	Fluid        string  `json:"fluid,omitempty"`
	SiliconeFree bool    `json:"silicone_free"`
	Speed        float64 `json:"speed_m_min"`
	SpeedMax     float64 `json:"speed_max_m_min"` // of the material and of standard holders

	Ramped    float64 `json:"run_with_ramps_s,omitempty"` // where the line's ramps are known: the clock counts it
	Turns     float64 `json:"anvil_turns,omitempty"`
	Roll      *roll   `json:"finished_roll,omitempty"` // where length and thickness are known
	Allowance float64 `json:"width_allowance_pct"`     // cut width over finished width
	NeckIn    *neckIn `json:"neck_in,omitempty"`       // where the material's elastic data are known

	Before   string    `json:"before,omitempty"` // what the changes are against
	Changes  []change  `json:"changes"`
	Warnings []string  `json:"warnings"`
	Cautions []caution `json:"cautions"`
	Reasons  []reason  `json:"reasons"` // each setting in words, with why and its source
	Anvil    *bending  `json:"anvil,omitempty"`
}

// roll is material.Wound with its keys.
type roll struct {
	Metres      float64 `json:"metres"`
	DiameterMM  float64 `json:"diameter_mm"`
	CoreMM      float64 `json:"core_mm"`    // outside
	CoreAssumed bool    `json:"core_taken"` // usual, since no file has it
	Whole       bool    `json:"whole_run"`  // no file says how much is on a roll: all
	Wraps       float64 `json:"wraps"`
	Sets        int     `json:"sets"` // such rolls of each slit in the run
}

// neckIn is what tension does to the web, elastically.
type neckIn struct {
	Tension   float64 `json:"tension_n_m"`
	Modulus   float64 `json:"modulus_mpa"`
	Poisson   float64 `json:"poisson"`
	Stretch   float64 `json:"stretch_pct"`   // along
	Narrowing float64 `json:"narrowing_pct"` // across, of the relaxed width
	Narrower  float64 `json:"narrower_pct"`  // the same
	Asks      float64 `json:"allowance_pct"` // that neck-in alone asks for
	Edges     *edges  `json:"at_the_knife,omitempty"`
}

// edges is the layout on the web as tension makes it; below 0 a cut lies off the web.
type edges struct {
	Web  float64    `json:"web_mm"`
	Trim [2]float64 `json:"trim_mm"` // left on either side
}

type change struct {
	What string `json:"what"`
	From string `json:"from"`
	To   string `json:"to"`
	Do   string `json:"do"`
}

type caution struct {
	About  string `json:"about"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

type reason struct {
	Name   string `json:"name"`
	Value  string `json:"value"`
	Why    string `json:"why"`
	Source string `json:"source"`
}

// bending is the anvil under the job's blades; places are on the beam's scale.
type bending struct {
	From     float64 `json:"bearing_mm"` // operator side
	Span     float64 `json:"span_mm"`
	Most     float64 `json:"bend_mm"`               // largest
	Limit    float64 `json:"max_bend_mm,omitempty"` // the shop's own
	MostAt   float64 `json:"bend_at_mm"`
	Operator float64 `json:"operator_bearing_n"`
	Drive    float64 `json:"drive_bearing_n"`
	Moment   float64 `json:"moment_nmm"` // largest
	MomentAt float64 `json:"moment_at_mm"`
	Rests    string  `json:"rests"`           // how the bearings' places come about
	Doubt    string  `json:"doubt,omitempty"` // why the real bend is larger
}

// face is the metres that the day cuts on each band of the anvil's face.
type face struct {
	From   millimetres `json:"from"`
	To     millimetres `json:"to"`
	Band   millimetres `json:"band"` // the last may be narrower
	Metres []float64   `json:"metres"`
	Worst  int         `json:"worst"`           // band with most, from 0; -1 where nothing is cut
	Taken  string      `json:"taken,omitempty"` // how its place was taken, where no file has it
}

// damage is a damaged band of the anvil, both ends part of it, in which no cut is laid,
// and how the day's cuts lie about it.
type damage struct {
	From     millimetres `json:"from"`
	To       millimetres `json:"to"`
	Metres   float64     `json:"metres"` // cut in it: none
	Reach    millimetres `json:"reach"`  // how far from it on each side metres are counted
	Operator damagedSide `json:"operator_side"`
	Drive    damagedSide `json:"drive_side"`
}

type damagedSide struct {
	Nearest *millimetres `json:"nearest,omitempty"` // cut; none where nothing is cut on this side
	Metres  float64      `json:"metres"`
}

func newSettings(k *material.Turn, rests string) *settings {
	if k == nil {
		return nil
	}
	s := k.Settings
	out := &settings{
		Group: s.Material.Group, Method: s.Method.Method.String(), ScoreFit: s.Method.Score.String(), Edge: s.Method.Edge,
		Bevel: s.Blade.Bevel, Tip: s.Blade.Tip, BladeHRC: s.Blade.HRC, AnvilHRC: s.Blade.AnvilHRC,
		CutThrough: s.Air.CutThroughBar, Guessed: s.Guessed, Set: s.Air.SetBar, Bore: s.Air.BoreMM, Area: s.Air.AreaMM2, Pistons: s.Air.Pistons, Own: s.Air.Own,
		Force: s.Air.SetN, WearIndex: s.WearIndex, Wicking: s.Wicking.Wick.String(), Fluid: s.Wicking.Fluid, SiliconeFree: s.Material.SiliconeFree,
		Speed: s.Speed.Speed, SpeedMax: s.Speed.Max, Before: words.Clean(k.Before),
		Changes: []change{}, Warnings: []string{}, Cautions: []caution{}, Reasons: []reason{}, Anvil: newBending(k.Bending, rests),
		Ramped: s.Times.RampedS, Turns: s.Times.Turns, Roll: (*roll)(s.Wound), Allowance: material.PctOf(s.Material.AllowancePct), NeckIn: newNeckIn(s),
	}
	for _, c := range k.Changes {
		out.Changes = append(out.Changes, change{string(c.ID), words.Clean(c.From), words.Clean(c.To), c.Do})
	}
	for _, w := range s.Warnings {
		out.Warnings = append(out.Warnings, words.Clean(w))
	}
	for _, c := range s.Cautions {
		out.Cautions = append(out.Cautions, caution(c))
	}
	for _, l := range s.Lines {
		out.Reasons = append(out.Reasons, reason{string(l.ID), words.Clean(l.Value), words.Clean(l.Why), words.Clean(l.Source)})
	}
	return out
}

func newNeckIn(s *material.Settings) *neckIn {
	n, m := s.NeckIn, s.Material
	if n == nil {
		return nil
	}
	out := &neckIn{m.TensionNM, m.ModulusMPa, m.Poisson, 100 * n.Stretch, n.NarrowerPct(), n.NarrowerPct(), material.PctOf(n.Allowance()), nil}
	if e := s.Edges; e != nil {
		out.Edges = &edges{e.WebMM, [2]float64{e.OperatorMM, e.DriveMM}}
	}
	return out
}

func newBending(b *material.Bending, rests string) *bending {
	if b == nil {
		return nil
	}
	return &bending{b.Anvil.FromMM, b.Anvil.SpanMM, b.MostMM, b.Anvil.LimitMM, b.MostAt, b.OperatorN, b.DriveN, b.MomentNmm, b.MomentAt, rests, b.Doubt()}
}

func newFace(f *material.Face, taken string) *face {
	if f == nil {
		return nil
	}
	return &face{millimetres(plan.Length(f.From)), millimetres(plan.Length(f.To)), millimetres(plan.Length(f.Band)), f.Metres, f.Worst, taken}
}

func newDamaged(all []material.Damage) (out []damage) {
	for _, d := range all {
		out = append(out, damage{millimetres(plan.Length(d.From)), millimetres(plan.Length(d.To)), d.Metres, millimetres(plan.Length(d.Reach)), newBeside(d.Operator), newBeside(d.Drive)})
	}
	return out
}

func newBeside(b material.Beside) damagedSide {
	out := damagedSide{Metres: b.Metres}
	if b.Cuts {
		at := millimetres(plan.Length(b.Nearest))
		out.Nearest = &at
	}
	return out
}
