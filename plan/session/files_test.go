package session_test

import (
	"strings"
	"testing"
)

// glance looks at the files as a screen does every few seconds.
func (v *viewer) glance() *viewer {
	v.Files.Peek()
	return v.settle()
}

// The screen that may write keeps its day when a file changes under it, and says so until a
// person has it read.
func TestDayChangedOnDisk(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).glance()
	if now := v.Shown(); now.Outdated != "" || now.OutdatedBrief != "" {
		t.Fatalf("%q, %q", now.Outdated, now.OutdatedBrief)
	}
	put(t, dir, "day.toml", strings.Replace(dayFile, `"5 x 50"`, `"5 x 48"`, 1))
	v.glance()
	if text := v.Shown().Outdated; !strings.Contains(text, "day.toml has changed since") || !strings.Contains(text, "<reread> reads it again") {
		t.Errorf("%q", text)
	}
	if v.Jobs()[0].Entries[0].Width != 50*mm || v.anew != 0 {
		t.Error("read though nobody asked")
	}
	v.Files.ReadAgain()
	if v.settle().says("day.toml changed meanwhile: read again"); v.Jobs()[0].Entries[0].Width != 48*mm || v.anew != 1 || !v.Forecast.Present.Whole() {
		t.Errorf("width %d, read anew %d times", v.Jobs()[0].Entries[0].Width, v.anew)
	}
	v.Files.ReadAgain()
	v.settle().says("the files have not changed")
}

// One that only looks reads by itself, unless something is open there or entered.
func TestOneThatLooksReadsByItself(t *testing.T) {
	dir := folder(t, nil)
	first, v := open(t, dir), open(t, dir).glance()
	first.setUp().confirms(1)
	v.busy = true
	if v.glance(); v.anew != 0 {
		t.Error("read while something is open")
	}
	v.busy = false
	if v.glance(); v.anew != 1 || v.Actual.Positions.At[first.Setup.Made()[0].Holder-1] == first.Setup.Made()[0].From {
		t.Errorf("read anew %d times, %v", v.anew, v.Actual.Positions.At)
	}
}

// A faulty file is told with file and line and nothing of the day is lost; mended it is read.
func TestFaultyFileOnDisk(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).glance()
	put(t, dir, "day.toml", dayFile+"nonsense = 1\n")
	v.Files.ReadAgain()
	v.settle().says("not read again: day.toml:")
	if text := v.Shown().Outdated; !strings.Contains(text, "nonsense") || v.order() != "ABCD" || v.anew != 0 {
		t.Errorf("%q, %s", text, v.order())
	}
	put(t, dir, "day.toml", strings.Replace(dayFile, `id       = "A"`, `id       = "E"`, 1))
	v.Files.ReadAgain()
	if v.settle(); v.order() != "EBCD" {
		t.Errorf("%s", v.order())
	}
}

// Positions changed by hand are read, and edits of the day stay; a changed machine isn't
// taken under them.
func TestPositionsChangedUnderEdits(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).glance()
	v.MoveBy(0, 1)
	v.settle()
	put(t, dir, "positions.toml", strings.Replace(positionsFile, "at = 350.0", "at = 371.0", 1))
	v.Files.ReadAgain()
	v.settle().says("the positions are read again")
	if v.says("unsaved changes here are kept"); v.Actual.Positions.At[7] != 371*mm || v.order() != "BACD" || !v.Changed() {
		t.Errorf("at %d, %s", v.Actual.Positions.At[7], v.order())
	}
	put(t, dir, "beam.toml", strings.Replace(beamFile, "clearance    = 1.0", "clearance    = 2.0", 1))
	v.Files.ReadAgain()
	if v.settle().says("not read again: beam.toml or materials.toml has changed"); v.order() != "BACD" || v.Forecast.Beam.Clearance != 1*mm {
		t.Errorf("%s, clearance %d", v.order(), v.Forecast.Beam.Clearance)
	}
}

// The day is saved as it is here; where another wrote it meanwhile, beside it, and neither
// is lost.
func TestSaveDay(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir)
	v.Files.SaveDay()
	v.settle().says("there is nothing to save")
	v.MoveBy(0, 1)
	v.settle()
	v.Fix(v.Jobs()[1])
	v.settle().Files.SaveDay()
	if v.settle().says("saved"); v.Changed() || v.Loses() {
		t.Errorf("%q", v.Shown().Question)
	}
	s := kept(t, dir)
	if s.Day.Jobs[0].ID != "B" || s.Day.Jobs[1].Fixed != 2 {
		t.Errorf("kept %s, fixed %d", s.Day.Jobs[0].ID, s.Day.Jobs[1].Fixed)
	}
	if all := events(t, dir); len(all) != 1 || strings.Join(all[0].Order, "") != "BACD" {
		t.Errorf("record %+v", all)
	}
	theirs := strings.Replace(text(t, dir, "day.toml"), `"5 x 50"`, `"5 x 47"`, 1)
	put(t, dir, "day.toml", theirs)
	v.Hold(v.Jobs()[2])
	v.settle().Files.SaveDay()
	v.settle()
	if v.Files.SavedTo == "" || text(t, dir, "day.toml") != theirs || !strings.Contains(text(t, dir, v.Files.SavedTo), `"hold"`) {
		t.Errorf("%q: saved to %q", v.Notice.Text, v.Files.SavedTo)
	}
	if v.order() != "BAD" || v.Changed() {
		t.Errorf("%s", v.order())
	}
}
