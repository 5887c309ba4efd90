// Package shop reads and writes the folder of one beam's files: beam.toml, day.toml,
// and where they are there positions.toml and materials.toml. All that is wrong in
// them is reported at once, with file, line, place and remedy.
//
// What is written:
//
//   - positions.toml, anew each time (SavePositions); one made by hand whose comments would
//     be lost is kept beside it. A [[holder]] there may carry
//     condition ("good", "no cut", "stuck", "out") and why: a mark made at the
//     machine, which goes before the condition in beam.toml.
//   - day.toml, line by line, so that comments and order of a file made by hand stay
//     (SaveDay); where that can't be done, another file beside it.
//   - record.jsonl, to which one line an event is added (Record).
//   - .bide.lock, which says who may write (TakeLock).
//
// beam.toml and materials.toml are never written. Every text is written whole or not
// at all (SaveFile), and one that someone else wrote meanwhile is never lost.
package shop

import (
	"errors"
	"io/fs"
	"os"
	"slices"
	"sync"

	"bide/plan"
	"bide/plan/shop/disk"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// Shop is one beam with its day, as its files say.
type Shop struct {
	knife.Equipment
	Day       *plan.Day
	Positions *plan.Positions
	Notes     []string // what was assumed or wants a look
	Beside    []string // of files that bide wrote beside the shop's: what to do with each

	// Beam.Holders are the conditions to plan with: those of beam.toml, and over
	// them the marks of positions.toml.
	Conditions []plan.Condition
	Marks      Marks

	// Dir is the folder; empty for a shop that was not read from one, which can't
	// be saved.
	Dir string

	noted    []string  // the notes on the files but positions.toml
	dayUnit  plan.Unit // of day.toml
	dayLines map[string]int

	// What saving goes by, to the byte: the files' texts as read or last saved.
	saving        sync.Mutex
	positionsText string // empty when there is none
	dayFirst      string // as read
	dayText       string
	beamText      string
	materialsText string // empty when there is none
	beside        string // file that the day was saved to instead of day.toml
	besideText    string
}

// Open reads the shop in a folder.
func Open(dir string) (*Shop, toml.Problems) {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, toml.Problems{{File: words.Clean(dir), What: "there is no such folder", Remedy: "name a shop's folder, or make one with bide new"}}
	case err != nil:
		return nil, toml.Problems{{File: words.Clean(dir), What: toml.Unread(err).Error(), Remedy: "name a shop's folder"}}
	case !info.IsDir():
		return nil, toml.Problems{{File: words.Clean(dir), What: "this is no folder", Remedy: "name the folder that the shop's files are in"}}
	}
	s, problems := Read(os.DirFS(dir))
	if s != nil {
		s.Dir = dir
	}
	return s, problems
}

// Read reads a shop from its files. It gives the shop, or every problem of it.
func Read(fsys fs.FS) (*Shop, toml.Problems) {
	r := reader{fsys: fsys}
	s := &Shop{}
	r.beam(s)
	known := r.materials(s)
	r.day(s, known)
	r.positions(s)
	if len(r.problems) > 0 {
		return nil, r.problems.Sorted()
	}
	s.noted, s.Beside = r.notes, disk.BesideNotes(fsys)
	s.Notes = s.notesOn(s.Positions, s.Marks)
	return s, nil
}

// NotesOn are the shop's notes when this stands, so marked, instead of what was read.
func (s *Shop) NotesOn(now *plan.Positions, marks Marks) []string {
	if now == s.Positions {
		return s.Notes
	}
	return s.notesOn(now, marks)
}

func (s *Shop) notesOn(now *plan.Positions, marks Marks) []string {
	return slices.Concat(s.noted, positionsNotes(now, s.Materials), marks.notes(s.Conditions), uncountedNotes(&s.Beam.Line, s.Day.Jobs))
}

// Stands takes over what stands, with its marks, from the same shop read again; all
// else stays as it was read here.
func (s *Shop) Stands(again *Shop) {
	s.saving.Lock()
	defer s.saving.Unlock()
	s.Positions, s.Marks, s.positionsText = again.Positions, again.Marks, again.positionsText
	s.Beam = s.Marked(s.Marks)
	s.Notes = s.notesOn(s.Positions, s.Marks)
}

// reader reads the files one after the other.
type reader struct {
	fsys     fs.FS
	problems toml.Problems
	notes    []string
}

// required opens a file that every shop has; nil when that failed.
func (r *reader) required(file string) (*toml.Document, *toml.Table) {
	d := toml.NewDocument(file, examples, &r.problems)
	root, missing := d.Open(r.fsys)
	if missing {
		d.Problem("", "", "the file is missing", "bide new makes a shop to start from")
	}
	return d, root
}

func (r *reader) beam(s *Shop) {
	d, root := r.required(beamFile)
	if root == nil {
		return
	}
	b, anvil, limits := readBeam(d, root)
	s.Unit, s.Limits, s.Anvil, s.beamText = d.Unit, limits, anvil, d.Text
	if d.Failed == 0 {
		s.Beam, s.Conditions = b, b.Holders
	}
	r.notes = append(r.notes, d.Notes...)
}

// materials says whether the shop's materials are known: read, or none there.
func (r *reader) materials(s *Shop) bool {
	d := toml.NewDocument(materialsFile, examples, &r.problems)
	root, missing := d.Open(r.fsys)
	if root == nil {
		return missing
	}
	s.Materials, s.materialsText = readMaterials(root), d.Text
	r.notes = append(r.notes, d.Notes...)
	return d.Failed == 0
}

func (r *reader) day(s *Shop, known bool) {
	d, root := r.required(dayFile)
	if root == nil {
		return
	}
	s.Day, s.dayLines = readDay(d, root, &s.Equipment, known), d.Lines
	s.dayUnit, s.dayFirst, s.dayText = d.Unit, d.Text, d.Text
	r.notes = append(r.notes, d.Notes...)
}

func (r *reader) positions(s *Shop) {
	d := toml.NewDocument(positionsFile, examples, &r.problems)
	if s.Day != nil {
		d.Zone = s.Day.Start.Location()
	}
	root, missing := d.Open(r.fsys)
	b := s.Beam
	if b == nil {
		b = &plan.Beam{}
	}
	switch {
	case missing:
		s.Positions = spread(b)
	case root != nil:
		var marks Marks
		s.Positions, marks = readStanding(d, root, b, s.Materials)
		s.positionsText = d.Text
		s.Positions.Wick, s.Positions.Pistons = knife.Fitted(s.LastRun(s.Positions))
		if s.Beam != nil {
			s.Marks, s.Beam = marks, s.Marked(marks)
		}
	}
}
