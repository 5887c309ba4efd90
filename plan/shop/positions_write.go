package shop

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/shop/toml"
)

// positionsHead is what bide writes at the top of positions.toml.
const positionsHead = `# Written by bide: the holders' positions, and what the beam last ran. It may be
# changed by hand while bide is closed; comments are not kept when bide writes.
`

// SavePositions writes positions.toml: where the holders stand, what they carry, what
// the beam last ran, and the marks. Lengths are in the unit of beam.toml and read
// back exactly. It returns when the text is safe on the disk.
//
// The file is written anew each time. If someone else changed it since it was read
// or saved here, their text is kept beside it, and so is one made by hand that has
// comments; the outcome says so. The shop's own Positions, Marks and Beam stay as they
// were read. One call at a time runs; that they come in the right order is the caller's
// affair.
//
// Refused, with nothing written: positions that are only assumed (let a person
// confirm it and take Assumed off), and one that couldn't be read back as it is.
// Errors are Problems or *SaveError.
func (s *Shop) SavePositions(st *plan.Positions, marks Marks) (Outcome, error) {
	s.saving.Lock()
	defer s.saving.Unlock()
	if s.Dir == "" {
		return Outcome{}, errNoFolder
	}
	text := positionsText(st, marks, s.Unit)
	if err := s.checkSaved(st, marks, text).Err(); err != nil {
		return Outcome{}, err
	}
	now, there, err := s.onDisk(positionsFile)
	switch {
	case err != nil:
		return Outcome{}, err
	case there && now == text:
		s.positionsText = text
		return Outcome{Said: positionsFile + " holds it already"}, nil
	}
	out := Outcome{File: positionsFile, Said: "saved in " + positionsFile}
	name, why := "", ""
	switch {
	case there && now != s.positionsText:
		name, why = "positions.other", "someone else had changed it: their file is kept as "
	case there && byHand(now):
		name, why = "positions.hand", "your hand-written file is kept as "
	}
	if name != "" {
		kept, err := s.writeBeside(name, now)
		if err != nil {
			return Outcome{}, err
		}
		out.Said += "; " + why + kept
	}
	if err := s.put(positionsFile, text, &s.positionsText); err != nil {
		return Outcome{}, err
	}
	return out, nil
}

// byHand reports whether a text of positions.toml isn't bide's own and has comments, which
// would be lost.
func byHand(text string) bool {
	return !strings.HasPrefix(text, positionsHead) && strings.Contains(text, "#")
}

// positionsText is the positions with their marks as positions.toml holds it.
func positionsText(st *plan.Positions, marks Marks, u plan.Unit) string {
	var b strings.Builder
	b.WriteString(positionsHead)
	line := func(when bool, format string, value any) {
		if when {
			fmt.Fprintf(&b, format+"\n", value)
		}
	}
	line(true, "units = %s", toml.String(u.String()))
	line(!st.Recorded.IsZero(), "recorded = %s", toml.Time(st.Recorded))
	line(st.Job != "", "job = %s", toml.String(st.Job))
	line(st.Material != "", "material = %s", toml.String(st.Material))
	line(st.Web != 0, "web = %s", toml.Length(st.Web, u))
	line(st.SetBar != 0, "set_bar = %s", toml.Number(st.SetBar))
	if st.Begun != nil {
		b.WriteString(settingText(st.Begun, u))
	}
	for i, at := range st.At {
		blade, metres := bladeOf(st, i)
		line(true, "\n[[holder]]\nnumber = %d", i+1)
		line(true, "at     = %s", toml.Length(at, u))
		line(blade.Bevel != 0, "bevel  = %s", toml.Number(blade.Bevel))
		line(blade.Tip != 0, "tip    = %s", toml.Number(blade.Tip))
		line(metres != 0 || st.Metres != nil && blade.Known(), "metres = %s", toml.Number(metres))
		m, marked := marks[i+1]
		line(marked, "condition = %s", toml.String(m.Condition.String()))
		line(marked && m.Reason != "", "why = %s", toml.String(m.Reason))
	}
	return b.String()
}

// bladeOf is what holder i, from 0, carries, and what its edge has cut; noughts
// where that is not known.
func bladeOf(st *plan.Positions, i int) (b plan.Blade, metres float64) {
	if i < len(st.Blades) {
		b = st.Blades[i]
	}
	if i < len(st.Metres) {
		metres = st.Metres[i]
	}
	return b, metres
}

// checkSaved reads the text of positions back and says what keeps it from being
// saved.
func (s *Shop) checkSaved(st *plan.Positions, marks Marks, text string) toml.Problems {
	if st.Assumed {
		return toml.Problems{{File: positionsFile, What: "the positions are assumed, not measured", Remedy: "measure or confirm it first"}}
	}
	var problems toml.Problems
	d := toml.NewDocument(positionsFile, examples, &problems)
	root := d.Parse(text)
	if root == nil {
		return problems
	}
	back, marked := readStanding(d, root, s.Beam, s.Materials)
	if len(problems) > 0 {
		return problems.Sorted()
	}
	if what := differs(st, back, marks, marked); what != "" {
		return toml.Problems{{File: positionsFile, What: what + " would not be read back as it is", Remedy: "correct it"}}
	}
	return nil
}

// differs names what two sets of positions don't have in common; empty when they are the
// same. What isn't known is nought or missing.
func differs(a, b *plan.Positions, am, bm Marks) string {
	switch {
	case !slices.Equal(a.At, b.At):
		return "a holder's position"
	case !a.Recorded.Equal(b.Recorded):
		return "the time recorded"
	case a.Job != b.Job || a.Material != b.Material:
		return "the job or material"
	case a.Web != b.Web || a.SetBar != b.SetBar:
		return "the web or the pressure"
	case !sameSetting(a.Begun, b.Begun):
		return "the changeover under way"
	case !maps.Equal(am, bm):
		return "a holder's condition"
	}
	for i := range a.At {
		blade, metres := bladeOf(a, i)
		if back, m := bladeOf(b, i); blade != back || metres != m {
			return fmt.Sprintf("the blade of holder %d", i+1)
		}
	}
	return ""
}
