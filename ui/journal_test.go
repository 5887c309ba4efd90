package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop/disk"
	"bide/plan/shop/record"
)

// locked protects a file of the folder from being written, until the test calls the
// function that comes back.
func locked(t testing.TB, dir, name string) (unlock func()) {
	t.Helper()
	file := filepath.Join(dir, name)
	if err := os.Chmod(file, 0o444); err != nil { // refused for an administrator too
		t.Fatal(err)
	}
	return func() { os.Chmod(file, 0o644) }
}

// What became of a job is owed to day.toml whichever of the files can't be written, and
// written with the next save that can be: saved again, with the next move, or when it is
// taken back what it was before.
func TestStateOfAJobIsOwedWhenASaveFails(t *testing.T) {
	for _, name := range []string{"positions.toml", "day.toml"} {
		sc, dir := atSmall(t, 80, 24)
		sc.press("w", "enter").confirmsAll()
		unlock := locked(t, dir, name)
		sc.press("r").settle().tells("not saved: D-101 is set up")
		unlock()
		sc.press("w").settle().press("enter", "s").settle().tells("everything is saved now")
		if kept := read(t, dir); kept.Day.Jobs[0].State != plan.Running || kept.Positions.Job != "D-101" || sc.session.Loses() || sc.Changed() {
			t.Errorf("%s: D-101 runs and is in state %d in the file, %s stands", name, kept.Day.Jobs[0].State, kept.Positions.Job)
		}

		sc, dir = atSmall(t, 80, 24)
		sc.press("w", "enter").confirmsAll().press("r").settle()
		unlock = locked(t, dir, name)
		sc.press("w", "enter").confirms(1).press("y").settle().tells("NOT SAVED")
		unlock()
		sc.confirms(1)
		if kept := read(t, dir); kept.Day.Jobs[0].State != plan.Done || len(kept.Positions.Begun.Made) != 2 || sc.session.Loses() {
			t.Errorf("%s: D-101 is done and is in state %d in the file", name, kept.Day.Jobs[0].State)
		}
		unlock = locked(t, dir, name)
		sc.press("u").settle().press("u").settle().tells("NOT SAVED")
		unlock()
		sc.press("s").settle()
		if kept := read(t, dir); kept.Day.Jobs[0].State != plan.Running || kept.Positions.Begun != nil || sc.session.Loses() {
			t.Errorf("%s: taken back, D-101 is in state %d in the file", name, kept.Day.Jobs[0].State)
		}
	}
}

// Where the power went between positions.toml and day.toml, so that a job is being set up
// and the one before it runs in day.toml, the state that follows is written with the next
// thing told, or when the day is saved; leaving asks nothing, since nothing is lost by it.
func TestStateOfAJobIsOwedAfterAPowerCut(t *testing.T) {
	for _, saves := range [][]string{{"ctrl+s"}, {"w", "enter", "enter"}} {
		sc, dir := atSmall(t, 80, 24)
		sc.press("w", "enter").confirmsAll().press("r").settle()
		day := file(t, dir, "day.toml")
		sc.press("w", "enter").confirms(1).press("y").settle()
		sc.session.Journal.Close()
		if err := os.WriteFile(filepath.Join(dir, "day.toml"), []byte(day), 0o644); err != nil {
			t.Fatal(err)
		}
		for _, barred := range []bool{false, true} {
			var other *disk.Lock
			if barred {
				var err error
				if other, err = disk.TakeLock(dir, sc.session.Journal.Now()); err != nil {
					t.Fatal(err)
				}
			}
			sc = goOn(t, dir, 80, 24)
			if sc.press("q"); !sc.ended {
				t.Errorf("leaving asks: %s", sc.Question)
			}
			sc.ended = false
			if barred {
				other.Release()
			}
			for _, key := range saves {
				sc.press(key).settle()
			}
			if state := read(t, dir).Day.Jobs[0].State; state != plan.Done {
				t.Errorf("%v, barred at first: %v: D-101 is in state %d in the file: %s", saves, barred, state, sc.Notice.Text)
			}
			if text := file(t, dir, "day.toml"); strings.Contains(text, `"running"`) {
				t.Error("something runs in day.toml while the beam is set up")
			}
			sc.session.Journal.Close()
			os.WriteFile(filepath.Join(dir, "day.toml"), []byte(day), 0o644)
		}
	}
}

// The undoing of a mark, and doing it again, is refused where the holder has been marked
// otherwise since; changes before it can be undone all the same.
func TestUndoOfAMarkLeavesALaterOne(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("1", "j", "J").settle()
	order := ids(sc.Jobs())
	number := sc.Shared.Moves()[0].Holder
	sc.press("5")
	sc.Holder = number
	sc.press("c", "n").enters("weak").press("w", "enter", "c")
	sc.tells("A holder has a fault")
	sc.press("ctrl+u").enters(fmt.Sprint(number), "", "o", "seized").press("esc").settle()
	events := len(eventsIn(t, dir))
	stays := func(keys ...string) {
		t.Helper()
		sc.press(keys...).settle().tells(fmt.Sprintf("the condition of holder %d has changed since: it stays out", number))
		if m := read(t, dir).Marks[number]; m.Condition != plan.Out || m.Reason != "seized" || len(eventsIn(t, dir)) != events || sc.Beam.Holders[number-1] != plan.Out {
			t.Errorf("%v: it is marked %+v", keys, m)
		}
	}
	stays("1", "u")
	stays("U")
	stays("u")
	if sc.press("u").settle(); strings.Join(ids(sc.Jobs()), " ") == strings.Join(order, " ") {
		t.Error("the change before the mark can't be undone")
	}
}

// A holder that is given another blade begins with a fresh edge; what the others have cut
// stays. The standing is written so when the job runs.
func TestFreshEdgesHaveCutNothing(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	before := read(t, dir).Positions
	sc.press("w", "enter").confirmsAll().press("r").settle()
	after := read(t, dir).Positions
	fresh, kept := 0, 0
	for i, was := range before.Metres {
		switch {
		case was == 0:
		case after.Blades[i] != before.Blades[i]:
			if fresh++; after.Metres[i] != 0 {
				t.Errorf("holder %d has another blade, that has cut %v m", i+1, after.Metres[i])
			}
		default:
			if kept++; after.Metres[i] != was {
				t.Errorf("holder %d has its blade of before, that has cut %v m, and %v m before", i+1, after.Metres[i], was)
			}
		}
	}
	if fresh == 0 || kept == 0 {
		t.Errorf("%d blades are swapped and %d stay: nothing is tested", fresh, kept)
	}
}

// The record has how much was cut in a job that is done, and nothing of one set aside,
// which nobody knows.
func TestRecordHasTheMetresOfAJobDone(t *testing.T) {
	for key, state := range map[string]plan.State{"y": plan.Done, "z": plan.OnHold} {
		sc, dir := atSmall(t, 80, 24)
		sc.press("w", "enter").confirmsAll().press("r").settle()
		sc.press("w", "enter").confirms(1).press(key).settle()
		want := 0.0
		if state == plan.Done {
			want = read(t, dir).Day.Jobs[0].Metres
		}
		told := 0
		for _, e := range eventsIn(t, dir) {
			if e.Kind != record.Job || e.State != state {
				continue
			}
			if told++; e.Job != "D-101" || e.Metres != want {
				t.Errorf("%s: %+v, want D-101 with %v m", key, e, want)
			}
		}
		if told != 1 {
			t.Errorf("%s: told %d times in the record, want once", key, told)
		}
	}
}
