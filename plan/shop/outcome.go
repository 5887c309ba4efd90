package shop

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"bide/plan/shop/disk"
	"bide/plan/shop/toml"
)

// Outcome is what a save did.
type Outcome struct {
	File   string // the file written; empty when nothing had to be
	Beside bool   // it is another file than the one meant, which is untouched
	Said   string // what was written where and why, in one sentence
}

// errNoFolder is what saving a shop ends with that was not read from a folder.
var errNoFolder = toml.Problems{{File: "this shop", What: "it was not read from a folder, so nothing can be saved", Remedy: "make a shop with bide new and open that"}}

// onDisk is what a file of the shop holds now; there is false when it is missing.
func (s *Shop) onDisk(file string) (text string, there bool, err error) {
	text, err = toml.ReadText(os.DirFS(s.Dir), file)
	if errors.Is(err, fs.ErrNotExist) {
		return "", false, nil
	}
	if err != nil {
		return "", true, &disk.SaveError{File: file, What: err.Error(), Remedy: "look at the file, then save again", Err: err}
	}
	return text, true, nil
}

// put saves a text in a file and keeps it as known. A save that fails late, when
// the disk doesn't confirm it, may have left the new text all the same: it is not to
// be taken for someone else's.
func (s *Shop) put(file, text string, known *string) error {
	err := disk.SaveFile(filepath.Join(s.Dir, file), []byte(text))
	if err == nil {
		*known = text
	} else if now, there, e := s.onDisk(file); e == nil && there && now == text {
		*known = text
	}
	return err
}

// mostBeside is how many names are tried.
const mostBeside = 1000

// writeBeside writes a text to a file whose name nothing in the shop's folder has
// yet: NAME.toml, NAME-2.toml and so on. One that holds the text already will do.
func (s *Shop) writeBeside(name, text string) (file string, err error) {
	for n := 1; ; n++ {
		file = name + ".toml"
		if n > 1 {
			file = fmt.Sprintf("%s-%d.toml", name, n)
		}
		_, err := os.Lstat(filepath.Join(s.Dir, file))
		now, there, _ := s.onDisk(file)
		switch {
		case there && now == text:
			return file, nil
		case errors.Is(err, fs.ErrNotExist):
			return file, disk.SaveFile(filepath.Join(s.Dir, file), []byte(text))
		case n >= mostBeside:
			return "", &disk.SaveError{File: name + ".toml", What: "there are too many files like it", Remedy: "clear the folder of those that nobody needs, then save again"}
		}
	}
}

// Changed names the shop's files that someone else has changed, made or taken away
// since they were read or saved here; none for a shop that was not read from a folder.
// Open reads them again.
func (s *Shop) Changed() (files []string) {
	s.saving.Lock()
	defer s.saving.Unlock()
	if s.Dir == "" {
		return nil
	}
	for _, f := range []struct{ name, text string }{{dayFile, s.dayText}, {positionsFile, s.positionsText}, {beamFile, s.beamText}, {materialsFile, s.materialsText}} {
		if now, _, err := s.onDisk(f.name); err != nil || now != f.text {
			files = append(files, f.name)
		}
	}
	return files
}

// SameMachine reports whether two readings of a shop have the same beam.toml and
// materials.toml.
func (s *Shop) SameMachine(o *Shop) bool {
	return s.beamText == o.beamText && s.materialsText == o.materialsText
}

// Stamp is what the folder says of the shop's files without their being read: it
// changes when one of them does.
type Stamp [4]struct{ size, modified int64 }

// Stamp looks at the files: their sizes, and when they were last changed.
func (s *Shop) Stamp() (out Stamp) {
	if s.Dir == "" {
		return out
	}
	for i, name := range []string{dayFile, positionsFile, beamFile, materialsFile} {
		if info, err := os.Stat(filepath.Join(s.Dir, name)); err == nil {
			out[i].size, out[i].modified = info.Size(), info.ModTime().UnixNano()
		}
	}
	return out
}
