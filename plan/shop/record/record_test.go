package record

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"bide/plan"
	"bide/plan/shop/disk"
	"bide/plan/shop/toml"
	"bide/plan/words"

	"github.com/google/go-cmp/cmp"
)

// someEvents are one of each kind.
var someEvents = []Event{
	{Time: midday, Kind: Moved, Holder: 17, From: -420_000_000, To: 396_875, Job: "D-101"},
	{Time: midday, Kind: Moved, Holder: 1, To: -1}, // from nought
	{Time: midday, Back: true, Kind: Moved, Holder: 1, To: -1, Job: "D-101"},
	{Time: midday.Add(1500 * time.Millisecond), Kind: Corrected, Holder: 3, From: 1, To: 0},
	{Time: midday, Kind: Condition, Holder: 3, Condition: plan.Stuck, Reason: `rack "bent"`},
	{Time: midday, Kind: Condition, Holder: 3, Condition: plan.Good},
	{Time: midday, Kind: Job, Job: "D-101", State: plan.Done, Metres: 3200.5},
	{Time: midday, Kind: Job, Job: "D-102"},
	Event{Kind: Corrected, Holder: 3, From: 1, To: 0}.TakenBack(midday),
	Event{Kind: Condition, Holder: 3, Condition: plan.NoCut, Reason: "hiss"}.TakenBack(midday),
	Event{Kind: Job, Job: "D-102", State: plan.Running}.TakenBack(midday),
	{Time: midday, Kind: Sequence, Order: []string{"D-102", "D-101"}},
	{Time: midday, Kind: "oiled", Holder: 2, Reason: "monthly"},
}

func events(t *testing.T, dir string) (out []Event, problems toml.Problems) {
	t.Helper()
	problems, err := Read(os.DirFS(dir), func(e Event) { out = append(out, e) })
	if err != nil {
		t.Fatal(err)
	}
	return out, problems
}

func put(t *testing.T, dir string, all ...Event) {
	t.Helper()
	r, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		if err := r.Append(e); err != nil {
			t.Error(err)
		}
	}
	if err := r.Close(); err != nil {
		t.Error(err)
	}
}

// TestTakenBack: what takes an event back is the same event the other way.
func TestTakenBack(t *testing.T) {
	e := Event{Kind: Moved, Holder: 7, To: 5}
	want := Event{Kind: Moved, Back: true, Holder: 7, To: 5, Time: midday}
	if got := e.TakenBack(midday); !cmp.Equal(got, want) {
		t.Errorf("%+v is taken back by %+v", e, got)
	}
}

// TestRecordSurvives: what is recorded reads back the same, a line an event, over
// several openings.
func TestRecordSurvives(t *testing.T) {
	dir := t.TempDir()
	if got, problems := events(t, dir); got != nil || problems != nil {
		t.Errorf("without a record: %v, %v", got, problems)
	}
	put(t, dir, someEvents[:4]...)
	put(t, dir, someEvents[4:]...)
	got, problems := events(t, dir)
	if diff := cmp.Diff(someEvents, got); diff != "" || problems != nil {
		t.Errorf("%v (-want +got):\n%s", problems, diff)
	}
	text, err := os.ReadFile(filepath.Join(dir, File))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(text), "\n")
	if want := `{"time":"2026-11-25T12:00:00","kind":"moved","holder":17,"from":-420,"to":0.396875,"job":"D-101"}`; lines[0] != want || len(lines) != len(someEvents)+1 {
		t.Errorf("%d lines, the first %s, want %s", len(lines), lines[0], want)
	}
}

// TestRecordTorn: a last line cut short at any byte is told, and costs no other
// event, before and after more is added.
func TestRecordTorn(t *testing.T) {
	whole, err := someEvents[0].MarshalJSON()
	if err != nil {
		t.Fatal(err)
	}
	for cut := 1; cut < len(whole); cut++ {
		dir := t.TempDir()
		put(t, dir, someEvents[3])
		f, err := os.OpenFile(filepath.Join(dir, File), os.O_WRONLY|os.O_APPEND, 0)
		if err == nil {
			_, err = f.Write(whole[:cut])
		}
		if err = errors.Join(err, f.Close()); err != nil {
			t.Fatal(err)
		}
		got, problems := events(t, dir)
		if len(got) != 1 || len(problems) != 1 || !strings.Contains(problems[0].String(), "record.jsonl:2: the last line was cut short") {
			t.Fatalf("cut at %d: %v, %v", cut, got, problems)
		}
		put(t, dir, someEvents[4], someEvents[5])
		got, problems = events(t, dir)
		if diff := cmp.Diff(someEvents[3:6], got); diff != "" || len(problems) != 1 || problems[0].Line != 2 {
			t.Fatalf("cut at %d: %v (-want +got):\n%s", cut, problems, diff)
		}
	}
}

// TestRecordOfManyWriters: events of several at once don't mix.
func TestRecordOfManyWriters(t *testing.T) {
	const writers, each = 4, 25
	dir := t.TempDir()
	var all sync.WaitGroup
	for i := range writers {
		all.Go(func() {
			r, err := Open(dir)
			if err != nil {
				t.Error(err)
				return
			}
			defer r.Close()
			for k := range each {
				if err := r.Append(Event{Time: midday, Kind: Moved, Holder: i + 1, To: plan.Length(k)}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	got, problems := events(t, dir)
	next := map[int]plan.Length{}
	for _, e := range got {
		if e.To != next[e.Holder] {
			t.Fatalf("holder %d: event %d came before %d", e.Holder, e.To, next[e.Holder])
		}
		next[e.Holder]++
	}
	if len(got) != writers*each || problems != nil {
		t.Errorf("%d events, %v", len(got), problems)
	}
}

func TestRecordWrongLines(t *testing.T) {
	lines := []string{
		"no event", `{"time":"midday","kind":"moved"}`, `{"time":"2026-11-25T12:00:00","kind":"condition","condition":"tired"}`,
		`{"time":"2026-11-25T12:00:00","kind":"job","state":"lost"}`, `{"time":"2026-11-25T12:00:00","kind":"moved","from":1e999}`,
		strings.Repeat("x", longestLine+5), "", "[1]",
		`{"time":"2026-11-25T12:00:00","kind":"later","of":{"another":"version"},"why":"\u001b[2J"}`,
	}
	text := strings.Join(lines, "\r\n") + "\n"
	var got []Event
	problems, err := Read(fstest.MapFS{File: {Data: []byte(text)}}, func(e Event) { got = append(got, e) })
	if err != nil {
		t.Fatal(err)
	}
	want := []Event{{Time: midday, Kind: "later", Reason: "?[2J"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	told := ""
	for _, p := range problems {
		safe(t, p)
		told += fmt.Sprint(p.Line, " ")
	}
	if told != "1 2 3 4 5 6 8 " {
		t.Errorf("told of lines %s:\n%v", told, problems)
	}
}

func TestRecordCantBeOpened(t *testing.T) {
	dir := t.TempDir()
	if _, err := Open(filepath.Join(dir, "gone")); err == nil || !strings.Contains(err.Error(), "is gone") {
		t.Error(err)
	}
	r, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	var told *disk.SaveError
	if err := r.Append(someEvents[0]); !errors.As(err, &told) {
		t.Errorf("after closing: %v", err)
	}
}

func TestSummary(t *testing.T) {
	s := NewSummary(3, midday)
	for _, e := range []Event{
		{Time: midday.Add(-time.Second), Kind: Moved, Holder: 1, From: 5, To: 2},
		{Time: midday, Kind: Moved, Holder: 1, From: 2, To: 12},
		{Time: midday, Kind: Moved, Holder: 1, From: 12, To: 9},
		{Time: midday, Back: true, Kind: Moved, Holder: 1, From: 12, To: 9},
		{Time: midday, Back: true, Kind: Moved, Holder: 3, From: 12, To: 9},
		{Time: midday, Kind: Condition, Holder: 2, Condition: plan.Stuck},
		{Time: midday, Kind: Condition, Holder: 2, Condition: plan.Good},
		{Time: midday, Kind: Condition, Holder: 2, Condition: plan.Out},
		{Time: midday, Kind: Condition, Holder: 2, Condition: plan.NoCut},
		{Time: midday, Back: true, Kind: Condition, Holder: 2, Condition: plan.NoCut},
		{Time: midday, Back: true, Kind: Condition, Holder: 3, Condition: plan.Stuck},
		{Time: midday, Kind: Corrected, Holder: 3}, {Time: midday, Kind: Corrected, Holder: 3},
		{Time: midday, Back: true, Kind: Corrected, Holder: 3}, {Time: midday, Kind: "oiled", Holder: 3},
		{Time: midday, Kind: Moved, Holder: 4}, {Time: midday, Kind: Moved},
	} {
		s.Add(e)
	}
	want := []Wear{{Moves: 2, Recent: 1, Travel: 13, Last: midday}, {Jams: 1, Faults: 1}, {Corrected: 1}}
	if diff := cmp.Diff(want, s.Holders); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// FuzzRecord: whatever stands in a record, reading ends with events that are safe
// to print, and what is added is read back after it.
func FuzzRecord(f *testing.F) {
	for _, e := range someEvents {
		line, _ := e.MarshalJSON()
		f.Add(string(line) + "\n" + string(line[:len(line)/2]))
	}
	f.Fuzz(func(t *testing.T, text string) {
		var last Event
		problems, err := Read(fstest.MapFS{File: {Data: []byte(text + "\n" + `{"time":"2026-11-25T12:00:00","kind":"oiled"}`)}}, func(e Event) {
			if strings.ContainsFunc(string(e.Kind)+e.Reason+e.Job+strings.Join(e.Order, ""), words.Harmful) {
				t.Errorf("not fit to print: %+v", e)
			}
			last = e
		})
		if err != nil || last.Kind != "oiled" {
			t.Fatalf("%v, the last event is %+v", err, last)
		}
		for _, p := range problems {
			safe(t, p)
		}
	})
}

// TestRecordIsAFile: a record that is none, but a folder, or a way to nowhere, is neither read
// nor written.
func TestRecordIsAFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, File)
	for _, put := range []func() error{
		func() error { return os.Mkdir(path, 0o755) },
		func() error { return os.Symlink(os.DevNull, path) },
	} {
		if err := put(); err != nil {
			t.Skip(err)
		}
		if r, err := Open(dir); err == nil {
			t.Errorf("%v is written to", r)
			r.Close()
		}
		if _, err := Read(os.DirFS(dir), func(Event) {}); err == nil || !strings.Contains(err.Error(), "no regular file") {
			t.Errorf("it is read: %v", err)
		}
		os.Remove(path)
	}
}

var midday = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// safe fails for a problem that isn't fit to print.
func safe(t *testing.T, p toml.Problem) {
	t.Helper()
	if strings.ContainsFunc(p.String(), words.Harmful) || p.File == "" || p.What == "" || p.Remedy == "" || len(p.String()) > 2000 {
		t.Errorf("not fit to print: %+v", p)
	}
}
