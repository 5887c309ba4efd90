package shop

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/shop/disk"
	"bide/plan/shop/toml"

	"github.com/google/go-cmp/cmp"
)

// folder is a shop in a folder of its own, read from it.
func folder(t *testing.T, changed map[string]string) *Shop {
	t.Helper()
	dir := t.TempDir()
	for file, in := range files(changed) {
		write(t, filepath.Join(dir, file), string(in.Data), 0o644)
	}
	s, problems := Open(dir)
	if len(problems) > 0 {
		t.Fatalf("problems:\n%v", problems)
	}
	return s
}

func reopen(t *testing.T, s *Shop) *Shop {
	t.Helper()
	again, problems := Open(s.Dir)
	if len(problems) > 0 {
		t.Fatalf("problems:\n%v", problems)
	}
	return again
}

// anyPositions draws positions on the small beam to the nanometre.
func anyPositions(r *rand.Rand, b *plan.Beam) (*plan.Positions, Marks) {
	n := len(b.Holders)
	st := &plan.Positions{At: make([]plan.Length, n), Blades: make([]plan.Blade, n)}
	steps := []plan.Length{1, 10, plan.Inch / 64, plan.Inch / 10000, plan.Millimetre / 10}
	step, at := steps[r.IntN(len(steps))], b.Rail.From+b.Pitch()
	for i := range st.At {
		at = (at/step + 1) * step
		st.At[i] = at
		at += b.Pitch() + plan.Length(r.Int64N(int64(50*plan.Millimetre)))
	}
	for i := range st.Blades {
		if r.IntN(3) > 0 {
			st.Blades[i] = plan.Blade{Bevel: 5 + 90*r.Float64(), Tip: 0.001 + r.Float64()}
		}
	}
	if r.IntN(2) == 0 {
		st.Metres = make([]float64, n)
		for i := range st.Metres {
			st.Metres[i] = []float64{0, 18250, 1e5 * r.Float64()}[r.IntN(3)]
		}
	}
	if r.IntN(2) == 0 {
		st.Job, st.Material, st.Web, st.SetBar = `a "quoted" \ job #1`, "paper tape", plan.Length(1+r.Int64N(3e8)), 0.01+r.Float64()
		st.Recorded = time.Date(2026, 11, 25, r.IntN(24), r.IntN(60), r.IntN(60), r.IntN(3)*5e8, time.UTC)
	}
	if r.IntN(2) == 0 {
		st.Begun = &plan.Begun{Job: `the "next" one`, Shift: plan.Length(r.Int64N(9) - 4)}
		for range 1 + r.IntN(5) {
			st.Begun.Slits = append(st.Begun.Slits, []plan.Length{1, plan.Inch / 64, 25 * plan.Millimetre}[r.IntN(3)])
		}
		for range r.IntN(4) {
			st.Begun.Made = append(st.Begun.Made, plan.Made{Holder: 1 + r.IntN(n), From: plan.Length(r.Int64N(1e9))})
		}
	}
	marks := Marks{}
	for i := range n {
		if r.IntN(3) == 0 {
			marks[i+1] = Mark{plan.Condition(r.IntN(4)), []string{"", "doesn't unlock", `loses air, "hiss"`}[r.IntN(3)]}
		}
	}
	return st, marks
}

// TestStandingSurvives: what is saved reads back the same, in both units, whatever
// stood there before.
func TestStandingSurvives(t *testing.T) {
	for seed := range uint64(plantest.Worlds(40, 100)) {
		r := rand.New(rand.NewPCG(seed, 1))
		s := folder(t, nil)
		if seed%2 == 1 {
			s = folder(t, map[string]string{beamFile: inchBeam})
		}
		want, marks := anyPositions(r, s.Beam)
		if _, err := s.SavePositions(want, marks); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		back := reopen(t, s)
		back.Positions.SiliconeFree = false
		if want.Metres == nil {
			want.Metres = back.Positions.Metres // unknown is nought
		}
		if back.Positions.Metres == nil {
			back.Positions.Metres = want.Metres
		}
		if diff := cmp.Diff(want.At, back.Positions.At); diff != "" {
			t.Errorf("seed %d, places (-want +got):\n%s", seed, diff)
		}
		if diff := cmp.Diff(want, back.Positions); diff != "" {
			t.Errorf("seed %d (-want +got):\n%s", seed, diff)
		}
		if diff := cmp.Diff(marks, back.Marks); diff != "" {
			t.Errorf("seed %d, marks (-want +got):\n%s", seed, diff)
		}
		for i, c := range back.Beam.Holders {
			if m, ok := marks[i+1]; ok && c != m.Condition || !ok && c != back.Conditions[i] {
				t.Errorf("seed %d: holder %d is %s, its mark %v", seed, i+1, c, m)
			}
		}
		if t.Failed() {
			return
		}
	}
}

const inchBeam = `
name  = "Five"
units = "in"
[beam]
holders      = 5
holder_width = 0.5
clearance    = 0.01
rail         = [-4, 16]
web          = [0, 12]
[[holder]]
number    = 2
condition = "no cut"
[[holder]]
number    = 4
condition = "stuck"
`

// TestLengthText: every length reads back exactly, and common ones look as people
// write them. 1.5 in is 38.1 mm; 3/64 in is 1.190625 mm.
func TestLengthText(t *testing.T) {
	for _, c := range []struct {
		l    plan.Length
		u    plan.Unit
		want string
	}{
		{25_400_000, plan.Millimetres, "25.4"}, {-420_000_000, plan.Millimetres, "-420"}, {0, plan.Inches, "0"},
		{1_190_625, plan.Millimetres, `"3/64 in"`}, {1, plan.Millimetres, `"0.000001 mm"`},
		{38_100_000, plan.Inches, "1.5"}, {1_190_625, plan.Inches, `"3/64 in"`}, {-1_190_625, plan.Inches, `"-3/64 in"`},
		{-39_290_625, plan.Inches, `"-1-35/64 in"`}, {12_000_000, plan.Inches, `"12 mm"`}, {2540, plan.Inches, "0.0001"},
	} {
		if got := toml.Length(c.l, c.u); got != c.want {
			t.Errorf("%d nm in %s: %s, want %s", c.l, c.u, got, c.want)
		}
	}
	const seed = 7
	r := rand.New(rand.NewPCG(seed, 2))
	for range 20000 {
		l := plan.Length(r.Int64N(int64(2*toml.Largest))) - toml.Largest
		if r.IntN(2) == 0 {
			l -= l % (plan.Inch / 64)
		}
		for _, u := range []plan.Unit{plan.Millimetres, plan.Inches} {
			text, _ := toml.LengthText(l, u)
			if back, err := plan.ParseLength(text, u); err != nil || back != l {
				t.Fatalf("seed %d: %d nm in %s is %s, which reads as %d (%v)", seed, l, u, text, back, err)
			}
		}
	}
}

func TestPositionsRefused(t *testing.T) {
	s := folder(t, nil)
	good, _ := anyPositions(rand.New(rand.NewPCG(1, 1)), s.Beam)
	for words, change := range map[string]func(*plan.Positions, Marks){
		"assumed, not measured":          func(st *plan.Positions, _ Marks) { st.Assumed = true },
		"nearer than the pitch":          func(st *plan.Positions, _ Marks) { st.At[1] = st.At[0] + 1 },
		"off the rail":                   func(st *plan.Positions, _ Marks) { st.At[4] = plan.MaxRail },
		"these holders are missing":      func(st *plan.Positions, _ Marks) { st.At = st.At[:4] },
		"both bevel and tip":             func(st *plan.Positions, _ Marks) { st.Blades[0] = plan.Blade{Bevel: 45} },
		"longer than 80 characters":      func(_ *plan.Positions, m Marks) { m[1] = Mark{plan.Stuck, strings.Repeat("x", 81)} },
		"a holder's condition would not": func(_ *plan.Positions, m Marks) { m[9] = Mark{plan.Stuck, ""} },
		"the job or material would ":     func(st *plan.Positions, _ Marks) { st.Job = "\x1b[2J" },
	} {
		st, marks := *good, Marks{}
		st.At, st.Blades = append([]plan.Length{}, good.At...), append([]plan.Blade{}, good.Blades...)
		change(&st, marks)
		if out, err := s.SavePositions(&st, marks); err == nil || !strings.Contains(err.Error(), words) || out != (Outcome{}) {
			t.Errorf("%v, %+v, want %q", err, out, words)
		}
	}
	alone(t, s.Dir, beamFile, dayFile)
	if _, err := (&Shop{}).SavePositions(good, nil); err == nil {
		t.Error("a shop without a folder was saved")
	}
}

// TestStandingChangedMeanwhile: a text that someone else wrote is kept beside.
func TestStandingChangedMeanwhile(t *testing.T) {
	s := folder(t, nil)
	st, marks := anyPositions(rand.New(rand.NewPCG(3, 1)), s.Beam)
	path := filepath.Join(s.Dir, positionsFile)
	for n, kept := range []string{"positions.other.toml", "positions.other-2.toml"} {
		theirs := strings.Repeat("# by hand\n", n+1)
		write(t, path, theirs, 0o644)
		out, err := s.SavePositions(st, marks)
		if err != nil || out.File != positionsFile || !strings.Contains(out.Said, kept) {
			t.Errorf("%+v, %v", out, err)
		}
		holds(t, filepath.Join(s.Dir, kept), theirs)
	}
	if out, err := s.SavePositions(st, marks); err != nil || out.File != "" {
		t.Errorf("the same again: %+v, %v", out, err)
	}
	st.SetBar = 3.5
	if out, err := s.SavePositions(st, marks); err != nil || out.Said != "saved in positions.toml" {
		t.Errorf("our own text of before: %+v, %v", out, err)
	}
	if err := os.RemoveAll(s.Dir); err != nil {
		t.Fatal(err)
	}
	st.SetBar = 4
	var told *disk.SaveError
	if _, err := s.SavePositions(st, marks); !errors.As(err, &told) || !strings.Contains(err.Error(), "is gone") {
		t.Error(err)
	}
}

// TestMarks: a mark of the positions goes before the beam's condition, both ways,
// and what is wrong with one is told at its line.
func TestMarks(t *testing.T) {
	five := func(extra ...string) string {
		text := "units = 'in'\n"
		for i := range 5 {
			text += "[[holder]]\nnumber = " + string(rune('1'+i)) + "\nat = " + string(rune('1'+i)) + "\n"
			if i < len(extra) {
				text += extra[i]
			}
		}
		return text
	}
	s := read(t, files(map[string]string{beamFile: inchBeam, positionsFile: five(
		"condition = 'stuck'\nwhy = 'rack bent'\n", "condition = 'good'\n", "condition = 'good'\n")}))
	conditions := []plan.Condition{plan.Stuck, plan.Good, plan.Good, plan.Stuck, plan.Good}
	if diff := cmp.Diff(conditions, s.Beam.Holders); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if notes := strings.Join(s.Notes, "\n"); !strings.Contains(notes, "1 stuck (rack bent), 2 good") {
		t.Errorf("notes %s", notes)
	}
	_, problems := Read(files(map[string]string{beamFile: inchBeam, positionsFile: five(
		"condition = 'jammed'\n", "why = 'x'\n", "condition = 'out'\nwhy = 3\n", "whi = 'x'\n")}))
	compare(t, []want{
		{"positions.toml:5", "holder 1 (number 1), condition", []string{"jammed", `"stuck"`}},
		{"positions.toml:9", "holder 2 (number 2), why", []string{"without a condition", `condition = "no cut"`}},
		{"positions.toml:14", "holder 3 (number 3), why", []string{"3 is no text"}},
		{"positions.toml:18", "holder 4 (number 4)", []string{"unknown key", "did you mean why"}},
	}, problems)
}

// TestPositionsMadeByHand: comments of a file made by hand are kept beside it when bide
// writes the first time, and never again; without comments nothing would be lost.
func TestPositionsMadeByHand(t *testing.T) {
	bare := positionsText(&plan.Positions{At: []plan.Length{0, 20 * plan.Millimetre, 40 * plan.Millimetre, 60 * plan.Millimetre, 80 * plan.Millimetre}}, nil, plan.Millimetres)[len(positionsHead):]
	for _, c := range []struct {
		text string
		kept bool
	}{{"# 4 leaks\n" + bare, true}, {bare, false}, {positionsHead + bare, false}} {
		s := folder(t, map[string]string{positionsFile: c.text})
		st, marks := anyPositions(rand.New(rand.NewPCG(4, 1)), s.Beam)
		out, err := s.SavePositions(st, marks)
		if err != nil || strings.Contains(out.Said, "kept as positions.hand.toml") != c.kept {
			t.Errorf("%+v, %v", out, err)
		}
		want := []string{beamFile, dayFile, positionsFile}
		if c.kept {
			want = []string{beamFile, dayFile, "positions.hand.toml", positionsFile}
			holds(t, filepath.Join(s.Dir, "positions.hand.toml"), c.text)
		}
		st.SetBar = 3.5
		if out, err := s.SavePositions(st, marks); err != nil || out.Said != "saved in positions.toml" {
			t.Errorf("again: %+v, %v", out, err)
		}
		alone(t, s.Dir, want...)
	}
}

// TestBesideNeverOverwrites: when every name that is tried is taken, nothing is written.
func TestBesideNeverOverwrites(t *testing.T) {
	s := folder(t, nil)
	write(t, filepath.Join(s.Dir, "day.bide.toml"), "theirs", 0o644)
	for n := 2; n <= mostBeside+1; n++ {
		write(t, filepath.Join(s.Dir, fmt.Sprintf("day.bide-%d.toml", n)), "theirs", 0o644)
	}
	if file, err := s.writeBeside("day.bide", "ours"); err == nil {
		t.Errorf("%s is written", file)
	}
	holds(t, filepath.Join(s.Dir, fmt.Sprintf("day.bide-%d.toml", mostBeside+1)), "theirs")
}

// Of two sets of positions the first thing in which they differ is named.
func TestDifferencesAreNamed(t *testing.T) {
	one := func() *plan.Positions {
		return &plan.Positions{At: []plan.Length{1, 20}, Job: "A", Web: 100, Blades: []plan.Blade{{Bevel: 45, Tip: 0.1}, {Bevel: 60, Tip: 0.1}}, Metres: []float64{10, 20}}
	}
	if what := differs(one(), one(), nil, nil); what != "" {
		t.Errorf("the same, and %q", what)
	}
	for want, change := range map[string]func(*plan.Positions){
		"a holder's position":     func(p *plan.Positions) { p.At[1]++ },
		"the job or material":     func(p *plan.Positions) { p.Material = "felt" },
		"the web or the pressure": func(p *plan.Positions) { p.SetBar = 2 },
		"the blade of holder 1":   func(p *plan.Positions) { p.Metres[0]++ },
		"the blade of holder 2":   func(p *plan.Positions) { p.Blades[1].Tip = 0.2 },
	} {
		other := one()
		if change(other); differs(one(), other, nil, nil) != want {
			t.Errorf("%q, want %q", differs(one(), other, nil, nil), want)
		}
	}
}
