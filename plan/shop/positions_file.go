package shop

import (
	"fmt"
	"strconv"
	"strings"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/toml"
)

// readStanding reads positions.toml: where the holders stand, and the conditions
// that they are marked with.
func readStanding(d *toml.Document, root *toml.Table, b *plan.Beam, materials material.Table) (*plan.Positions, Marks) {
	readUnits(d, root)
	n := len(b.Holders)
	s := &plan.Positions{
		At: make([]plan.Length, n), Blades: make([]plan.Blade, n),
		Recorded: root.Clock("recorded"),
		Job:      root.Text("job", ""),
		Material: root.Text("material", ""),
		Web:      root.Length("web", 0, toml.AboveZero),
		SetBar:   root.Number("set_bar", 0, 0.01, 200),
	}
	if m, ok := materials.Lookup(s.Material); ok {
		s.SiliconeFree = m.SiliconeFree
	}
	before := d.Failed
	marks := Marks{}
	paths := readHolders(root, s, marks)
	s.Begun = readSetting(root, n)
	root.Done()
	if n > 0 && d.Failed == before {
		checkStanding(d, s, b, paths)
	}
	return s, marks
}

// readHolders reads the [[holder]] entries into the positions and the marks, and
// gives the path of each holder's entry.
func readHolders(root *toml.Table, s *plan.Positions, marks Marks) (paths []string) {
	paths = make([]string, len(s.At))
	seen := map[int]bool{}
	for _, t := range root.List("holder") {
		n := readNumber(t, len(s.At), seen)
		readMark(t, n, marks)
		if n > 0 {
			paths[n-1] = t.Path
			readHolder(t, s, n-1)
		} else { // read it for its problems alone
			readHolder(t, &plan.Positions{At: make([]plan.Length, 1), Blades: make([]plan.Blade, 1)}, 0)
		}
	}
	if missing := without(paths); missing != "" {
		root.Doc.Problem("", "holder", "these holders are missing: "+missing,
			"add [[holder]] with number and at for each, or delete the file to have them evenly spaced")
	}
	return paths
}

// readHolder reads what one entry says of holder i, counted from 0.
func readHolder(t *toml.Table, s *plan.Positions, i int) {
	t.Need("at")
	s.At[i] = t.Length("at", 0, toml.AnyPlace)
	s.Blades[i] = plan.Blade{Bevel: t.Number("bevel", 0, 5, 150), Tip: t.Number("tip", 0, 0.001, 5)}
	if t.Has("bevel") != t.Has("tip") {
		t.Doc.Problem(t.Path, t.Place, "a blade needs both bevel and tip", "add the missing one, or delete both")
	}
	if t.Has("metres") && s.Metres == nil { // without any, none is known
		s.Metres = make([]float64, len(s.At))
	}
	if t.Has("metres") {
		s.Metres[i] = t.Number("metres", 0, 0, 1e9)
	}
	t.Done()
}

// without lists the holders that have no entry, not too many of them.
func without(paths []string) string {
	const most = 12
	var missing []string
	for i, path := range paths {
		if path == "" {
			missing = append(missing, strconv.Itoa(i+1))
		}
	}
	if more := len(missing) - most; more > 0 {
		missing = append(missing[:most], fmt.Sprintf("and %d more", more))
	}
	return strings.Join(missing, ", ")
}

// checkStanding checks that the holders can stand so: on the rail, in the order of
// their numbers, a pitch apart.
func checkStanding(d *toml.Document, s *plan.Positions, b *plan.Beam, paths []string) {
	u, pitch := d.Unit, b.Pitch()
	note := func(i int, remedy, format string, args ...any) {
		d.Problem(toml.Join(paths[i], "at"), fmt.Sprintf("holder (number %d), at", i+1), fmt.Sprintf(format, args...), remedy)
	}
	for i, x := range s.At {
		if x < b.Rail.From || x > b.Rail.To {
			note(i, "measure again", "%s is off the rail, which runs from %s to %s", u.Show(x), u.Show(b.Rail.From), u.Show(b.Rail.To))
		}
		if i == 0 {
			continue
		}
		switch gap := x - s.At[i-1]; {
		case gap < 0:
			note(i, "holders can't pass each other: measure again", "%s is on the operator side of holder %d at %s", u.Show(x), i, u.Show(s.At[i-1]))
		case gap < pitch:
			note(i, "measure again", "it overlaps holder %d: %s is %s from it, nearer than the pitch of %s", i, u.Show(x), u.Show(gap), u.Show(pitch))
		}
	}
}
