// Package toml reads the TOML files of a shop strictly: each key is asked for by name, with
// its kind and range, and all that is wrong, unknown keys too, is gathered with file, line,
// place and remedy instead of ending at the first fault. It also knows where each statement
// of a text stands, so that a text can be changed without touching its other lines, and
// writes values that read back exactly. It knows no key of any file.
package toml

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"

	"bide/plan"

	parser "github.com/BurntSushi/toml"
)

// Limits of a file, far above what a shop needs. Small hostile files would else
// cost minutes or the stack.
const (
	LargestFile    = 1 << 20 // bytes
	deepestNesting = 16
)

// ByteOrderMark is what some editors put before a text.
const ByteOrderMark = "\ufeff"

// Document is one of the shop's files while it is read. It gathers problems.
type Document struct {
	File     string
	Text     string         // to the byte
	Unit     plan.Unit      // that its lengths are in
	Zone     *time.Location // that its times are in; nil is that of universal time
	Lines    map[string]int
	problems *Problems
	Failed   int // problems of this file so far
	Notes    []string
	examples map[string]string
	typed    func(path, what, remedy string) // gets the problems of what a person typed; nil where a file is read
}

// NewDocument is a document of a file, whose problems go to the list. The examples show how
// a line is written, by key, or by table and key or file and key where those differ.
func NewDocument(file string, examples map[string]string, problems *Problems) *Document {
	return &Document{File: file, examples: examples, problems: problems}
}

// NewTyped is the table of what a person typed into a form, by key, which is read as one of
// a file. Its problems go to the function.
func NewTyped(file, path string, unit plan.Unit, keys map[string]any, examples map[string]string, note func(path, what, remedy string)) *Table {
	d := &Document{File: file, Unit: unit, examples: examples, typed: note}
	return &Table{Doc: d, Path: path, Place: path, Keys: keys, used: map[string]bool{}}
}

// Problem notes something wrong at a path of the file.
func (d *Document) Problem(path, place, what, remedy string) {
	d.Failed++
	if d.typed != nil {
		d.typed(path, what, remedy)
		return
	}
	*d.problems = append(*d.problems, Problem{d.File, d.line(path), place, what, remedy})
}

// line is where a path stands in the document, as LineOf has it.
func (d *Document) line(path string) int { return LineOf(d.Lines, path) }

// LineOf is the line of a path, or else of the nearest that holds it; 0 where none is written.
func LineOf(lines map[string]int, path string) int {
	for {
		if n, ok := lines[path]; ok {
			return n
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			return 0
		}
		path = path[:cut]
	}
}

// Open reads and parses the document's file. It gives nil when the file is missing, or
// when it can't be parsed and the problem is noted.
func (d *Document) Open(fsys fs.FS) (root *Table, missing bool) {
	text, err := ReadText(fsys, d.File)
	switch {
	case errors.Is(err, fs.ErrNotExist) && hangs(fsys, d.File):
		d.Problem("", "", "it is a symbolic link to a file that isn't there", "bring that file back (is its disk mounted?), or delete the link")
		return nil, false
	case errors.Is(err, fs.ErrNotExist):
		return nil, true
	case errors.Is(err, fs.ErrPermission):
		d.Problem("", "", err.Error(), "ask for the right to read it")
		return nil, false
	case err != nil:
		d.Problem("", "", err.Error(), "a shop's files are plain text in UTF-8")
		return nil, false
	}
	return d.Parse(text), false
}

// hangs reports whether a file that isn't there has a name all the same: a link to it.
func hangs(fsys fs.FS, file string) bool {
	_, err := fs.Lstat(fsys, file)
	return err == nil
}

// Parse reads the document's text into its tree. It gives nil when it can't be
// parsed and the problem is noted.
func (d *Document) Parse(text string) *Table {
	d.Text = text
	text = strings.TrimPrefix(text, ByteOrderMark)
	o := outlineOf(text)
	d.Lines = o.lines
	if o.deepest > deepestNesting {
		p := Problem{d.File, o.deepestLine, "", "lists or keys are nested too deeply", "no key of a shop's file needs it"}
		*d.problems = append(*d.problems, p.encoded(text))
		d.Failed++
		return nil
	}
	tree, err := parse(text)
	if err != nil {
		d.syntax(text, err)
		return nil
	}
	return &Table{Doc: d, Keys: tree, used: map[string]bool{}}
}

// ReadText reads a file that is regular and not too large.
func ReadText(fsys fs.FS, file string) (string, error) {
	info, err := fs.Stat(fsys, file)
	if err != nil {
		return "", Unread(err)
	}
	if !info.Mode().IsRegular() {
		return "", errors.New("this is no regular file")
	}
	f, err := fsys.Open(file)
	if err != nil {
		return "", Unread(err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, LargestFile+1))
	if err != nil {
		return "", Unread(err)
	}
	if len(data) > LargestFile {
		return "", fmt.Errorf("the file is larger than %d KiB", LargestFile>>10)
	}
	return string(data), nil
}

// Unread is an error of the file system without its path: problems name the file.
func Unread(err error) error { return fmt.Errorf("it can't be read: %w", Reason(err)) }

// parse parses TOML into its plain tree. A parser that gives up in a panic has
// met a wrong text all the same.
func parse(text string) (tree map[string]any, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the file can't be parsed: %v", r)
		}
	}()
	_, err = parser.Decode(text, &tree)
	return tree, err
}

// Reason takes the path off an error whose message names it already.
func Reason(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
