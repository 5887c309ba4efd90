package session_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/record"
)

// A move that is confirmed is in the files before anyone says so; undone, the holder is
// where it was, and the record has both.
func TestConfirmAndUndo(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	before, ahead := slices.Clone(v.Actual.Positions.At), v.Setup.Ahead()
	if len(ahead) < 3 {
		t.Fatalf("%d moves", len(ahead))
	}
	first := ahead[0]
	v.Setup.Confirm()
	if len(v.Setup.Made()) != 0 {
		t.Error("said to be made before it is written")
	}
	v.settle().says("made: it is at")
	if at := kept(t, dir).Positions.At[first.Holder-1]; at != first.To {
		t.Errorf("positions.toml has %d, want %d", at, first.To)
	}
	if len(v.Setup.Made()) != 1 || len(v.Setup.Ahead()) != len(ahead)-1 {
		t.Errorf("made %v, ahead %v", v.Setup.Made(), v.Setup.Ahead())
	}
	v.Setup.TakeBack()
	v.settle().says("undone: ")
	if now := kept(t, dir).Positions.At; !slices.Equal(now, before) || !slices.Equal(v.Actual.Positions.At, before) {
		t.Errorf("after undoing it holders are at %v, were at %v", now, before)
	}
	if move := v.Setup.Move(); len(v.Setup.Ahead()) != len(ahead) || move.Holder != first.Holder {
		t.Errorf("the move to be made next is %+v, want %+v", move, first)
	}
	all := events(t, dir)
	if len(all) != 2 || all[0].Kind != record.Moved || all[0].Back || !all[1].Back || all[1].Holder != first.Holder || all[1].To != first.To {
		t.Errorf("record %+v", all)
	}
	v.Setup.TakeBack()
	if v.settle().says("nothing left to undo"); len(events(t, dir)) != 2 {
		t.Error("nothing is undone, and yet recorded")
	}
}

// A key that bounces makes no move: the next is confirmed half a second later at the least.
func TestConfirmTooQuick(t *testing.T) {
	v := open(t, folder(t, nil)).setUp().confirms(1)
	v.Setup.Confirm()
	if v.settle().says("too quick"); len(v.Setup.Made()) != 1 {
		t.Errorf("made %v", v.Setup.Made())
	}
	v.now = v.now.Add(500 * time.Millisecond)
	v.Setup.Confirm()
	if v.settle(); len(v.Setup.Made()) != 2 {
		t.Errorf("made %v", v.Setup.Made())
	}
}

// A restart in the middle of a setup goes on where it was, and undoes what positions.toml
// has: nothing but the files is needed.
func TestSetupAfterRestart(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	whole := v.Setup.Ahead()
	v.confirms(2).Journal.Close()
	v = open(t, dir).setUp()
	same := func(a, b plan.Move) bool { return a.Holder == b.Holder && a.From == b.From && a.To == b.To }
	if v.Setup.Job.ID != "A" || !slices.EqualFunc(v.Setup.Ahead(), whole[2:], same) {
		t.Errorf("goes on with %s, %v, want %v", v.Setup.Job.ID, v.Setup.Ahead(), whole[2:])
	}
	v.Setup.TakeBack()
	v.settle()
	if at := kept(t, dir).Positions.At[whole[1].Holder-1]; at != whole[1].From || len(v.Setup.Ahead()) != len(whole)-1 {
		t.Errorf("holder %d is at %d, was at %d; %d moves ahead", whole[1].Holder, at, whole[1].From, len(v.Setup.Ahead()))
	}
}

// A holder found elsewhere is written as corrected, the rest is planned from there, and
// undoing it leads back.
func TestCorrect(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	was := v.Setup.Ahead()
	v.Setup.Correct(map[int]plan.Length{8: 365 * mm}, nil, "8 corrected", "holder 8 is at 365 mm")
	v.settle().says("holder 8 is at 365 mm")
	s := kept(t, dir)
	if s.Positions.At[7] != 365*mm || s.Positions.Begun == nil || !s.Positions.Begun.Found {
		t.Errorf("kept %d, begun %+v", s.Positions.At[7], s.Positions.Begun)
	}
	if c := v.Setup.Plan.Step.Changeover; c.From[7] != 365*mm {
		t.Errorf("planned from %d", c.From[7])
	}
	if all := events(t, dir); len(all) != 1 || all[0].Kind != record.Corrected || all[0].From != 350*mm || all[0].To != 365*mm {
		t.Errorf("record %+v", all)
	}
	v.Setup.TakeBack()
	if v.settle().says("8 is at 350 mm again"); kept(t, dir).Positions.At[7] != 350*mm || !slices.Equal(v.Setup.Ahead(), was) {
		t.Errorf("undone: at %d, ahead %v, was %v", kept(t, dir).Positions.At[7], v.Setup.Ahead(), was)
	}
}

// Positions at which holders can't be are refused, whoever reports them: nothing is written.
func TestCorrectRefusesWhatCannotBe(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	was := slices.Clone(v.Actual.Positions.At)
	for name, positions := range map[string]map[int]plan.Length{
		"nearer than the pitch": {8: was[6] + 1}, "out of their order": {8: was[6] - 1}, "off the rail": {8: v.Shop.Beam.Rail.To + 1},
	} {
		v.Setup.Correct(positions, nil, "8 corrected", "holder 8 is corrected")
		if v.settle(); !slices.Equal(kept(t, dir).Positions.At, was) || len(events(t, dir)) > 0 || strings.Contains(v.Notice.Text, "is corrected") {
			t.Errorf("%s is taken: %q", name, v.Notice.Text)
		}
	}
}

// What can't be saved is owed and said so, asked about before quitting, and saved with the
// next thing that can be; the record has all of it.
func TestFailedSaveIsOwed(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	path := filepath.Join(dir, "positions.toml")
	first := v.Setup.Ahead()[0]
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(path, "in the way"), 0o755); err != nil { // which stops root too
		t.Fatal(err)
	}
	v.confirms(1).says("not saved: ")
	if v.Journal.Fault() == "" || v.Journal.Owing() != "1 move made" || !v.Loses() || !strings.Contains(v.Shown().Question, "Not saved: 1 move made") {
		t.Errorf("fault %q, owing %q, %q", v.Journal.Fault(), v.Journal.Owing(), v.Shown().Question)
	}
	if at := v.Actual.Positions.At[first.Holder-1]; at != first.To {
		t.Errorf("the holder is at %d, though it was moved to %d", at, first.To)
	}
	v.confirms(1)
	if v.Journal.Owing() != "2 moves made" {
		t.Errorf("owing %q", v.Journal.Owing())
	}
	if err := os.RemoveAll(path); err != nil {
		t.Fatal(err)
	}
	v.Setup.SaveAgain()
	v.settle().says("everything is saved now")
	if v.Journal.Owes() || v.Loses() {
		t.Errorf("still owed: %q", v.Shown().Question)
	}
	if now := kept(t, dir).Positions; !slices.Equal(now.At, v.Actual.Positions.At) || len(now.Begun.Made) != 2 {
		t.Errorf("kept %v, want %v", now.At, v.Actual.Positions.At)
	}
	if all := events(t, dir); len(all) != 2 || all[0].Holder != first.Holder || all[0].To != first.To {
		t.Errorf("record %+v", all)
	}
}

// While one screen has the shop the other writes nothing and says who has it; once it is
// free, all that was entered there is written with the next thing.
func TestSecondScreen(t *testing.T) {
	dir := folder(t, nil)
	first := open(t, dir)
	before := text(t, dir, "positions.toml")
	v := open(t, dir).setUp().confirms(2).says("not saved: ")
	if v.says("open for writing by"); v.Journal.Why() == "" || text(t, dir, "positions.toml") != before || len(events(t, dir)) > 0 {
		t.Fatalf("the second one writes; %q", v.Journal.Why())
	}
	first.Journal.Close()
	v.confirms(1).says("the other screen has closed: this one saves now")
	if now := kept(t, dir).Positions; len(now.Begun.Made) != 3 || len(events(t, dir)) != 3 || v.Loses() {
		t.Errorf("made %v, %d events; %v", now.Begun.Made, len(events(t, dir)), v.Loses())
	}
	if third := open(t, dir); third.Journal.Why() == "" {
		t.Error("a third one may write as well")
	}
}

// Where the first screen changed the shop meanwhile, the second doesn't write over it: it
// reads it again and names what was entered and isn't there.
func TestSecondScreenNamesWhatIsLost(t *testing.T) {
	dir := folder(t, nil)
	first := open(t, dir)
	v := open(t, dir).setUp().confirms(1)
	lost := v.Setup.Made()[0]
	first.setUp()
	first.Setup.Correct(map[int]plan.Length{8: 365 * mm}, nil, "8 corrected", "holder 8 is at 365 mm")
	first.settle()
	told := text(t, dir, "positions.toml")
	if v.confirms(1).says("not saved: "); v.anew != 0 || v.Journal.Owing() != "2 moves made" {
		t.Errorf("read anew %d times, owing %q", v.anew, v.Journal.Owing())
	}
	first.Journal.Close()
	v.confirms(1).says("record it again: holder ")
	if text(t, dir, "positions.toml") != told || v.Actual.Positions.At[7] != 365*mm || v.Actual.Positions.At[lost.Holder-1] != lost.From {
		t.Errorf("written over, or not read: %v", v.Actual.Positions.At)
	}
	if v.anew != 1 || !v.Journal.Writes() {
		t.Errorf("read anew %d times, writes %v", v.anew, v.Journal.Writes())
	}
}

// The report at the end: the job runs, what ran before is done with its metres, and undo
// leads back to the end of its setup.
func TestFinishAndUndo(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	if v.Setup.Finish(); v.says("still to be made").Setup == nil {
		t.Fatal("set up without its moves")
	}
	v.confirms(len(v.Setup.Ahead()))
	v.Setup.Finish()
	if v.settle().says("A is set up and runs"); v.Setup != nil || v.Began != "A" {
		t.Errorf("setup %v, began %q", v.Setup, v.Began)
	}
	s := kept(t, dir)
	if s.Day.Jobs[0].State != plan.Running || s.Positions.Job != "A" || s.Positions.Begun != nil || s.Positions.Web != 260*mm {
		t.Errorf("state %v, beam %+v", s.Day.Jobs[0].State, s.Positions)
	}
	v.Undo()
	if v.settle().says("undone: "); v.Setup == nil || v.Setup.Job.ID != "A" || len(v.Setup.Ahead()) != 0 {
		t.Fatalf("setup %+v", v.Setup)
	}
	if s := kept(t, dir); s.Day.Jobs[0].State != plan.Waiting || s.Positions.Job != "" || s.Positions.Begun == nil {
		t.Errorf("undone: state %v, beam %+v", s.Day.Jobs[0].State, s.Positions)
	}
	v.now = v.now.Add(time.Minute)
	v.Setup.Finish()
	v.settle().now = v.now.Add(3 * time.Hour) // by the clock its run is over
	v.setUp().confirms(1)
	if s := kept(t, dir); s.Day.Jobs[0].State != plan.Done || s.Positions.Begun.Job != "B" {
		t.Errorf("A is %v while the beam is set up for %+v", s.Day.Jobs[0].State, s.Positions.Begun)
	}
	var ran float64
	for _, e := range events(t, dir) {
		if e.Kind == record.Job && e.State == plan.Done {
			ran += e.Metres
		}
	}
	if ran != 1000 {
		t.Errorf("ran %v m", ran)
	}
}

// Before a run's end by the clock it is asked what became of it; put on hold it is to run
// again, and running on records nothing.
func TestEndingIsAsked(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir).setUp()
	v.confirms(len(v.Setup.Ahead()))
	v.Setup.Finish()
	v.settle().setUp()
	told := text(t, dir, "positions.toml")
	v.confirms(1)
	if v.Setup.Ending == nil || v.Setup.Ending.Job.ID != "A" || text(t, dir, "positions.toml") != told {
		t.Fatalf("%+v", v.Setup.Ending)
	}
	v.Setup.RunsOn()
	if v.settle().says("nothing is recorded: A still runs"); text(t, dir, "positions.toml") != told || len(v.Setup.Made()) != 0 || v.Setup.Ending != nil {
		t.Error("recorded or asked all the same")
	}
	v.confirms(1)
	v.Setup.Ended(plan.OnHold)
	if v.settle().says("A is on hold"); kept(t, dir).Day.Jobs[0].State != plan.OnHold || len(v.Setup.Made()) != 1 {
		t.Errorf("A is %v, made %v", kept(t, dir).Day.Jobs[0].State, v.Setup.Made())
	}
	v.Setup.TakeBack()
	if v.settle(); kept(t, dir).Day.Jobs[0].State != plan.Running || kept(t, dir).Positions.Begun != nil {
		t.Errorf("undone A is %v", kept(t, dir).Day.Jobs[0].State)
	}
}

// A condition is kept with the positions, planned with, undone and done again; one that is
// as beam.toml has it is no mark.
func TestConditions(t *testing.T) {
	dir := folder(t, nil)
	v := open(t, dir)
	stuck := shop.Mark{Condition: plan.Stuck, Reason: "bent rail"}
	v.Conditions.Set(8, stuck)
	v.settle().says("holder 8 is recorded as stuck")
	if s := kept(t, dir); s.Marks[8] != stuck || v.Forecast.Beam.Holders[7] != plan.Stuck {
		t.Errorf("marks %v, planned with %v", s.Marks, v.Forecast.Beam.Holders[7])
	}
	for _, o := range v.Forecast.Present.Known {
		if !o.Refused() && o.Step.Changeover.Holders[7].At != 350*mm {
			t.Errorf("%s moves a stuck holder", o.Job.ID)
		}
	}
	v.Conditions.Set(8, stuck)
	v.says("stays as it was")
	v.Undo()
	if v.settle().says("undone: holder 8 is good again"); len(kept(t, dir).Marks) != 0 || v.Forecast.Beam.Holders[7] != plan.Good {
		t.Errorf("marks %v", kept(t, dir).Marks)
	}
	v.Redo()
	if v.settle().says("redone: "); kept(t, dir).Marks[8] != stuck {
		t.Errorf("marks %v", kept(t, dir).Marks)
	}
	v.setUp()
	v.Setup.Correct(nil, map[int]shop.Mark{8: {Condition: plan.Good}}, "8 good", "holder 8 is good")
	v.settle().Setup.Leave()
	if v.Undo(); len(kept(t, dir).Marks) != 0 {
		t.Errorf("undone though it has changed since: %v", kept(t, dir).Marks)
	}
	v.says("not undone: the condition of holder 8 has changed since: it stays good")
}
