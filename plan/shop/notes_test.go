package shop

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/plan/shop/start"
)

// TestNotesOfValuesTaken: what isn't written and changes the numbers is told, with
// the value taken and only where it applies.
func TestNotesOfValuesTaken(t *testing.T) {
	s := read(t, files(nil))
	for _, want := range []string{
		`beam.toml, [beam]: not given, assumed: rest_over_web true`,
		`beam.toml, [guide]: not given, assumed: web_at "centre"`,
		`beam.toml, [drive]: not given, assumed: kind "shuttle", speed 400 mm/s, acceleration 800 mm/s², pick_s 1.2 s, set_s 1 s, home -100 mm`,
		`beam.toml, [setup]: not given, assumed: every_min 6 min, rethread_min 5 min, blade_s 40 s, clean_down_min 15 min, pressure_min 0.5 min, crew 1`,
		`beam.toml, [cylinder]: not given, assumed: piston_area 260 mm2, supply_bar 6.3 bar`,
		`day.toml: jobs without trim have a least edge trim of 3 mm: A`,
		`day.toml: jobs without speed run at their material's speed_max: A 40 m/min`,
	} {
		if !slices.Contains(s.Notes, want) {
			t.Errorf("not noted: %s\nnotes:\n%s", want, strings.Join(s.Notes, "\n"))
		}
	}
	hand := strings.Replace(smallBeam, "[drive]", "[drive]\nkind = \"hand\"", 1)
	hand = strings.Replace(hand, "[drive]", "park_clearance = 4\nrest_over_web = false\n[drive]", 1)
	notes := strings.Join(read(t, files(map[string]string{beamFile: hand})).Notes, "\n")
	if !strings.Contains(notes, "[drive]: not given, assumed: hand_s 25 s\n") || strings.Contains(notes, "[beam]") {
		t.Errorf("by hand:\n%s", notes)
	}
}

// TestNotesOfWrittenValues: a new shop writes all of them, so that only what can't
// be known of its positions is said.
func TestNotesOfWrittenValues(t *testing.T) {
	dir := t.TempDir()
	if err := start.New(dir); err != nil {
		t.Fatal(err)
	}
	s, problems := Open(dir)
	if len(problems) > 0 || len(s.Notes) != 5 {
		t.Errorf("problems %v, notes:\n%s", problems, strings.Join(s.Notes, "\n"))
	}
}

// TestNoTrimTaken: a job slit from edge to edge has no trim to take a value for.
func TestNoTrimTaken(t *testing.T) {
	edge := strings.Replace(smallDay, "250.0", "240", 1)
	if notes := strings.Join(read(t, files(map[string]string{dayFile: edge})).Notes, "\n"); strings.Contains(notes, "trim") {
		t.Errorf("notes:\n%s", notes)
	}
}

// TestNotesOfSpeed: felt runs at 40 m/min at most, which is 131.23 ft/min.
func TestNotesOfSpeed(t *testing.T) {
	const metric = "day.toml: jobs faster than their material's speed_max: A 40.5 m/min (felt: 40 m/min)"
	const inches = "day.toml: jobs faster than their material's speed_max: A 132 ft/min (felt: 131.23 ft/min)"
	inch := strings.NewReplacer(`"mm"`, `"in"`, "250.0", "10", "3 x 80", "3 x 3")
	for _, c := range []struct{ day, want string }{
		{smallDay + "speed = 40.5", metric}, {smallDay + "speed = 40", ""},
		{smallDay + "speed = 40.5\nstate = \"hold\"", ""},
		{inch.Replace(smallDay) + "speed = 132", inches}, {inch.Replace(smallDay) + "speed = 131", ""},
	} {
		notes := read(t, files(map[string]string{dayFile: c.day})).Notes
		faster := func(note string) bool { return strings.Contains(note, "faster") }
		if c.want == "" && slices.ContainsFunc(notes, faster) || c.want != "" && !slices.Contains(notes, c.want) {
			t.Errorf("want %q, notes:\n%s", c.want, strings.Join(notes, "\n"))
		}
	}
}

// TestLastMaterialUnknown: what the beam last ran may have left the table meanwhile; that
// isn't passed over.
func TestLastMaterialUnknown(t *testing.T) {
	standing := "units = 'mm'\njob = 'Z'\nmaterial = %q\nweb = 250\n"
	for i := range 5 {
		standing += fmt.Sprintf("[[holder]]\nnumber = %d\nat = %d\n", i+1, 20*i)
	}
	for material, told := range map[string]bool{"fellt": true, "felt": false} {
		s := read(t, files(map[string]string{positionsFile: fmt.Sprintf(standing, material)}))
		if got := strings.Contains(strings.Join(s.Notes, "\n"), `material "fellt", which the beam last ran, is in no table`); got != told {
			t.Errorf("%s: %v", material, s.Notes)
		}
	}
}

// TestSupplyInPsiIsNoted: bide check asks about a supply that no shop has.
func TestSupplyInPsiIsNoted(t *testing.T) {
	s := read(t, files(map[string]string{beamFile: strings.Replace(smallBeam, "[cylinder]", "[cylinder]\nsupply_bar = 90", 1)}))
	if notes := strings.Join(s.Notes, "\n"); !strings.Contains(notes, "beam.toml, [cylinder], supply_bar: A supply of 90 bar is above") {
		t.Errorf("notes %s", notes)
	}
}

// TestNotesOfFilesBeside: what bide wrote beside the shop's files is told when the shop
// is opened again, the day first, and files of other names are not.
func TestNotesOfFilesBeside(t *testing.T) {
	dir := t.TempDir()
	if err := start.New(dir); err != nil {
		t.Fatal(err)
	}
	if s, _ := Open(dir); len(s.Beside) > 0 {
		t.Errorf("a new shop: %q", s.Beside)
	}
	s, _ := Open(dir)
	day := filepath.Join(dir, dayFile)
	text, _ := os.ReadFile(day)
	if err := os.WriteFile(day, append(text, "# someone else\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	wanted := *s.Day
	wanted.Jobs = wanted.Jobs[:1]
	out, err := s.SaveDay(&wanted, nil)
	if err != nil || !out.Beside {
		t.Fatal(out, err)
	}
	for _, name := range []string{"positions.other-2.toml", "day.bided.toml", "my day.bide.toml", "positions.other-.toml"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	again, problems := Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := again.Beside; len(got) != 2 || !strings.HasPrefix(got[0], out.File+" holds a day") || !strings.Contains(got[0], "compare") || !strings.HasPrefix(got[1], "positions.other-2.toml ") {
		t.Errorf("told: %q", got)
	}
}
