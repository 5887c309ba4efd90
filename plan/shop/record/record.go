package record

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"bide/plan/shop/disk"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// File is the record in a shop's folder.
const File = "record.jsonl"

// Record is record.jsonl open for writing: what was done at the beam, one event a
// line, only ever added to.
type Record struct {
	mu   sync.Mutex
	file *os.File
	path string
	torn bool // the last line isn't ended
}

// Open opens the record of the shop in a folder, which it makes if need be.
// Errors are *SaveError.
func Open(dir string) (*Record, error) {
	path := filepath.Join(dir, File)
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o644)
	if err != nil {
		return nil, disk.NewSaveError(path, err)
	}
	torn, err := isTorn(f)
	if err != nil {
		f.Close()
		return nil, disk.NewSaveError(path, err)
	}
	return &Record{file: f, path: path, torn: torn}, nil
}

// isTorn reports whether a file's last line isn't ended: a write was cut short.
func isTorn(f *os.File) (bool, error) {
	info, err := f.Stat()
	switch {
	case err != nil:
		return false, err
	case !info.Mode().IsRegular():
		return false, disk.ErrIrregular
	case info.Size() == 0:
		return false, nil
	}
	last := []byte{0}
	_, err = f.ReadAt(last, info.Size()-1)
	return last[0] != '\n', err
}

// Append adds an event in one write and returns when it is safe on the disk. An
// event of one's own making may have any kind. Errors are *SaveError; after one the
// record may hold a part of the event's line, which readers report and skip.
func (r *Record) Append(e Event) error {
	line, err := e.MarshalJSON()
	if err != nil {
		return disk.NewSaveError(r.path, err)
	}
	line = append(line, '\n')
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.torn { // leave the part as it is, and begin a line of our own
		line = append([]byte{'\n'}, line...)
	}
	n, err := r.file.Write(line)
	if n > 0 {
		r.torn = n < len(line)
	}
	if err = errors.Join(err, r.file.Sync()); err != nil {
		return disk.NewSaveError(r.path, err)
	}
	return nil
}

// Close ends the writing.
func (r *Record) Close() error { return r.file.Close() }

// longestLine bounds an event; a sequence of the most jobs is far below.
const longestLine = 256 << 10

// Read reads the events of a record in the order in which they came and gives
// each to a function. A shop without a record has no events. Lines that can't be
// read, such as a last one that was cut short by a power cut, are skipped and reported;
// events of unknown kinds are given too. The error is one of the file system.
//
// It holds one line at a time: a record grows by some megabytes a year.
func Read(fsys fs.FS, each func(Event)) (toml.Problems, error) {
	info, err := fs.Stat(fsys, File)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, fmt.Errorf("%s: %w", File, toml.Unread(err))
	case !info.Mode().IsRegular(): // reading a pipe would wait for ever
		return nil, fmt.Errorf("%s: %w", File, disk.ErrIrregular)
	}
	f, err := fsys.Open(File)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", File, toml.Unread(err))
	}
	defer f.Close()
	var problems toml.Problems
	lines := bufio.NewReaderSize(f, longestLine)
	for n := 1; ; n++ {
		line, err := lines.ReadSlice('\n')
		long := errors.Is(err, bufio.ErrBufferFull)
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = lines.ReadSlice('\n')
		}
		if p := readEvent(line, long, err == nil, each); p != nil && len(problems) < toml.MostProblems {
			p.Line = n
			problems = append(problems, *p)
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return problems, fmt.Errorf("%s: %w", File, toml.Unread(err))
		}
		if err != nil {
			return problems, nil
		}
	}
}

// readEvent gives the event of a line, or what is wrong with the line.
func readEvent(line []byte, long, ended bool, each func(Event)) *toml.Problem {
	p := &toml.Problem{File: File, Remedy: "it is skipped; nothing else is lost"}
	text := bytes.TrimSpace(line)
	var e Event
	switch {
	case len(text) == 0:
		return nil
	case long:
		p.What = "the line is longer than any event"
	default:
		err := e.UnmarshalJSON(text)
		switch {
		case err == nil:
			each(e)
			return nil
		case !ended:
			p.What = "the last line was cut short"
		default:
			p.What = "the line is no event: " + words.Clean(err.Error())
		}
	}
	return p
}
