package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"

	tea "github.com/charmbracelet/bubbletea"
)

// chained is the first move ahead that holds up another and isn't the last of its
// chain: its index, and the holder that waits for it; the guided setup looks at it.
func (s *screen) chained() (m plan.Move, waits int) {
	s.t.Helper()
	w, at := s.setup(), s.Actual.Positions.At
	for i, m := range w.Ahead() {
		for _, other := range w.Ahead() {
			if changeover.Blocks(s.Beam, at, other) == m.Holder && changeover.Blocks(s.Beam, at, m) == 0 {
				s.press("home")
				for range i {
					s.press("right")
				}
				return m, other.Holder
			}
		}
	}
	s.t.Fatal("no move holds another up")
	return
}

// jammed tells that the holder of the move looked at is stuck at a position.
func (s *screen) jammed(at plan.Length) {
	s.press("c", "enter").enters(plan.Millimetres.Number(at), "s", "seized")
}

// A holder jams in the middle of a chain, half way: what blocks what is said before it,
// the rest is planned around it, with the neighbours that it then holds up, and nothing
// is lost. Taken back, the plan is the one before.
func TestJamInAChain(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(4)
	left := len(sc.setup().Ahead())
	m, waits := sc.chained()
	sc.tells(fmt.Sprintf("Path clear. Holder %d moves after this one.", waits))
	sc.jammed((m.From + m.To) / 2)
	if sc.setup().Refused() {
		t.Fatalf("the demo's first job is refused:\n%s", sc.View())
	}
	sc.tells(fmt.Sprintf("holder %d is recorded as stuck", m.Holder), "planned again: ", fmt.Sprintf("left, %d before", left))
	for n, j := range sc.Jobs() {
		if refused := sc.Refused(n); refused != strings.Contains(sc.Notice.Text, j.ID) {
			t.Errorf("%s is refused: %v; it is said %q", j.ID, refused, sc.Notice.Text)
		}
	}
	sc.sound(dir)
	kept := read(t, dir)
	if at := kept.Positions.At[m.Holder-1]; at != (m.From+m.To)/2 || kept.Marks[m.Holder].Reason != "seized" || len(kept.Positions.Begun.Made) != 4 {
		t.Errorf("kept: at %s, %+v, %d moves", at.MM(), kept.Marks[m.Holder], len(kept.Positions.Begun.Made))
	}
	for _, a := range sc.setup().Ahead() {
		if a.Holder == m.Holder {
			t.Error("the stuck one is to move")
		}
	}
	sc.confirms(1).sound(dir)
	sc.press("u").settle().press("u").settle().tells(fmt.Sprintf("%d is at", m.Holder), fmt.Sprintf("%d is good again", m.Holder))
	if n := len(sc.setup().Ahead()); n != left {
		t.Errorf("taken back, %d moves are left, before the jam %d", n, left)
	}
	sc.sound(dir)
	for sc.setup().Move() != nil {
		sc.confirms(1).sound(dir)
	}
	sc.press("r").settle().tells("D-101 is set up and runs")
}

// refusing is a position on the way of a move at which its holder, stuck, leaves the job no
// layout.
func (s *screen) refusing(m plan.Move) (plan.Length, bool) {
	b := *s.Beam
	b.Holders = slices.Clone(b.Holders)
	b.Holders[m.Holder-1] = plan.Stuck
	p, err := changeover.NewPlanner(&b)
	if err != nil {
		s.t.Fatal(err)
	}
	for part := plan.Length(1); part < 40; part++ {
		at := m.From + part*(m.To-m.From)/40
		stands := *s.Actual.Positions
		stands.At = slices.Clone(stands.At)
		stands.At[m.Holder-1] = at
		if len(changeover.Misplaced(&b, stands.At)) > 0 {
			continue
		}
		if turn, _ := p.Resume(&stands, s.Start.Clock, s.setup().Job); turn.Refused() {
			return at, true
		}
	}
	return 0, false
}

// A second holder that jams where the job then has no layout (a first leaves it one: its
// cuts can shift by half a slit): the reason is told with its
// numbers and what can be done; confirmed moves are kept, and what was told can be taken back, put
// right, or left for the next job.
func TestJamThatRefusesTheJob(t *testing.T) {
	begin := func() (*screen, string, plan.Move) {
		sc, dir := atWork(t, 80, 24)
		sc.press("w", "enter").confirms(4)
		first, _ := sc.chained()
		sc.jammed((first.From + first.To) / 2)
		for i, m := range sc.setup().Ahead() {
			if at, found := sc.refusing(m); found && changeover.Blocks(sc.Beam, sc.Actual.Positions.At, m) == 0 {
				sc.press("home")
				for range i {
					sc.press("right")
				}
				sc.jammed(at)
				return sc, dir, m
			}
		}
		t.Fatal("no jam refuses the job")
		return nil, "", plan.Move{}
	}
	sc, dir, m := begin()
	at := read(t, dir).Positions.At[m.Holder-1]
	for _, text := range []string{"D-101 can't be set up from the current positions", fmt.Sprintf("holder %d (stuck at", m.Holder), " mm", "u undoes the last entry", "sets a holder's condition",
		"corrects a position", "D-101 can be put on hold", "All confirmed moves are kept"} {
		if !sc.whole(text) {
			t.Errorf("no %q in\n%s", text, sc.View())
		}
	}
	if kept := read(t, dir); len(kept.Positions.Begun.Made) != 4 || kept.Marks[m.Holder].Condition != plan.Stuck {
		t.Errorf("kept: %+v, %+v", kept.Positions.Begun, kept.Marks)
	}
	sc.press("enter").tells("can't be set up")
	sc.press("r").tells("still planning: wait")
	for _, size := range [][2]int{{40, 12}, {20, 5}} {
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		sc.press("home")
		var read []string
		for range 60 {
			read = append(read, strings.Split(sc.View(), "\n")[1])
			sc.press("right").fits()
		}
		for _, text := range []string{"can't be set up", fmt.Sprintf("holder %d (stuck at", m.Holder), "u undoes"} {
			if size[1] == 5 && !strings.Contains(flat(strings.Join(read, "\n")), text) || size[1] > 5 && !sc.press("home").whole(text) {
				t.Errorf("%dx%d: no %q", size[0], size[1], text)
			}
		}
	}
	sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})

	sc.press("u").settle().tells("undone: ", "move 5 of ") // it was told by mistake
	sc.sound(dir)
	for i, a := range sc.setup().Ahead() {
		if a.Holder == m.Holder {
			sc.press("home")
			for range i {
				sc.press("right")
			}
		}
	}

	sc.jammed(at)
	sc.press("c").enters(fmt.Sprint(m.Holder), "", "g", "") // it is mended
	if sc.setup().Refused() || len(read(t, dir).Positions.Begun.Made) != 4 {
		t.Errorf("mended, it is refused still, or confirmed moves are lost:\n%s", sc.View())
	}
	sc.sound(dir)

	sc, dir, _ = begin() // it stays so: the next job that can be is set up from there
	sc.press("esc").settle().tells("the setup of D-101 has begun")
	sc.press("z").settle().press("w").tells("The setup of D-101 has begun")
	next := sc.setup().Job.ID
	if sc.press("enter"); next == "D-101" || sc.setup().Refused() {
		t.Fatalf("the guided setup is to %s:\n%s", next, sc.View())
	}
	sc.confirms(1).sound(dir)
	if s := read(t, dir).Positions.Begun; s.Job != next || len(s.Made) != 1 {
		t.Errorf("kept: %+v, the guided setup is to %s", s, next)
	}
	sc.press("u").settle()
	if s := read(t, dir).Positions.Begun; s.Job != "D-101" || len(s.Made) != 4 {
		t.Errorf("undone: %+v", s)
	}
}

// A holder that cuts loses its air: another takes its cut over, the one without air is
// led out of the way, and the work goes on where it was after a restart.
func TestAirLostOnACut(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(10)
	made := sc.setup().Made()
	number := made[2].Holder // stands on its cut already
	use := sc.setup().Plan.Step.Changeover.Holders[number-1]
	if use.Use != plan.Cutting {
		t.Fatalf("holder %d is to be %v", number, use.Use)
	}
	sc.press("c")
	sc.press("ctrl+u").enters(fmt.Sprint(number), "", "n", "hose off")
	sc.tells(fmt.Sprintf("holder %d is recorded as no cut", number))
	sc.sound(dir)
	o := sc.setup().Plan
	if o.Step.Changeover.Holders[number-1].Use == plan.Cutting {
		t.Error("it cuts without air")
	}
	sc.confirms(2).sound(dir)
	sc.session.Journal.Close()
	sc = goOn(t, dir, 80, 24)
	sc.press("w").tells("12 moves already made")
	sc.press("enter").sound(dir)
	for sc.setup().Move() != nil {
		sc.confirms(1)
	}
	sc.sound(dir)
	if got := len(sc.setup().Plan.Step.Layout.Cuts); got != 60 {
		t.Errorf("%d cuts are set up, want 60", got)
	}
	if text := sc.View(); !strings.Contains(text, "All moves done") || !strings.Contains(text, "Air back on: knives may drop") {
		t.Errorf("the end doesn't say what stands where, with its caution:\n%s", text)
	}
	sc.press("r").settle().tells("D-101 is set up and runs")
}

// An idle holder that stands elsewhere than thought, and can rest there, costs no move;
// what is left goes on so after a restart too.
func TestAnIdleHolderFoundElsewhereMayStay(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(3)
	left := len(sc.setup().Ahead())
	number, at := 0, plan.Length(0)
	for i, h := range sc.setup().Plan.Step.Changeover.Holders {
		positions := slices.Clone(sc.Actual.Positions.At)
		positions[i] -= plan.Millimetre / 2
		if h.Use == plan.Parked && h.At == sc.Actual.Positions.At[i] && len(changeover.Misplaced(sc.Beam, positions)) == 0 {
			number, at = i+1, positions[i]
			break
		}
	}
	sc.press("f").enters(fmt.Sprint(number), plan.Millimetres.Number(at), "")
	sc.tells(fmt.Sprintf("planned again: %d moves left, %d before", left, left))
	sc.sound(dir)
	if s := read(t, dir).Positions.Begun; !s.Found {
		t.Error("the file doesn't have that a holder was found elsewhere")
	}
	sc.session.Journal.Close()
	sc = goOn(t, dir, 80, 24)
	sc.press("w", "enter")
	sc.sound(dir)
	if n := len(sc.setup().Ahead()); n != left {
		t.Errorf("after a restart %d moves are left, want %d", n, left)
	}
	sc.confirms(left).sound(dir)
	if sc.Actual.Positions.At[number-1] != at {
		t.Errorf("holder %d was moved", number)
	}
}
