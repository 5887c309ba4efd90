package shop

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"bide/plan"

	"github.com/BurntSushi/toml"
)

// Limits of a file, far above what a shop needs. Small hostile files would else
// cost minutes or the stack.
const (
	largestFile    = 1 << 20 // bytes
	deepestNesting = 16
)

// byteOrderMark is what some editors put before a text.
const byteOrderMark = "\ufeff"

// document is one of the shop's files while it is read. It gathers problems.
type document struct {
	file     string
	text     string    // to the byte
	unit     plan.Unit // that its lengths are in
	lines    map[string]int
	problems *Problems
	failed   int // problems of this file so far
	notes    []string
	examples map[string]string
	typed    func(path, what, remedy string) // gets the problems of what a person typed; nil where a file is read
}

// newDocument is a document of a file, whose problems go to the list. The examples show how
// a line is written, by key, or by table and key or file and key where those differ.
func newDocument(file string, examples map[string]string, problems *Problems) *document {
	return &document{file: file, examples: examples, problems: problems}
}

// newTyped is the table of what a person typed into a form, by key, which is read as one of
// a file. Its problems go to the function.
func newTyped(file, path string, unit plan.Unit, keys map[string]any, examples map[string]string, note func(path, what, remedy string)) *table {
	d := &document{file: file, unit: unit, examples: examples, typed: note}
	return &table{doc: d, path: path, place: path, keys: keys, used: map[string]bool{}}
}

// problem notes something wrong at a path of the file.
func (d *document) problem(path, place, what, remedy string) {
	d.failed++
	if d.typed != nil {
		d.typed(path, what, remedy)
		return
	}
	*d.problems = append(*d.problems, Problem{d.file, d.line(path), place, what, remedy})
}

// line is where a path stands; for one that isn't written by itself, where what
// holds it does.
func (d *document) line(path string) int { return lineOf(d.lines, path) }

func lineOf(lines map[string]int, path string) int {
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

// open reads and parses the document's file. It gives nil when the file is missing, or
// when it can't be parsed and the problem is noted.
func (d *document) open(fsys fs.FS) (root *table, missing bool) {
	text, err := readText(fsys, d.file)
	switch {
	case errors.Is(err, fs.ErrNotExist) && hangs(fsys, d.file):
		d.problem("", "", "it is a symbolic link to a file that isn't there", "bring that file back (is its disk mounted?), or take the link away")
		return nil, false
	case errors.Is(err, fs.ErrNotExist):
		return nil, true
	case errors.Is(err, fs.ErrPermission):
		d.problem("", "", err.Error(), "ask for the right to read it")
		return nil, false
	case err != nil:
		d.problem("", "", err.Error(), "a shop's files are plain text in UTF-8")
		return nil, false
	}
	return d.parse(text), false
}

// hangs reports whether a file that isn't there has a name all the same: a link to it.
func hangs(fsys fs.FS, file string) bool {
	_, err := fs.Lstat(fsys, file)
	return err == nil
}

// parse reads the document's text into its tree. It gives nil when it can't be
// parsed and the problem is noted.
func (d *document) parse(text string) *table {
	d.text = text
	text = strings.TrimPrefix(text, byteOrderMark)
	o := outlineOf(text)
	d.lines = o.lines
	if o.deepest > deepestNesting {
		p := Problem{d.file, o.deepestLine, "", "lists or keys are nested too deeply", "no key of a shop's file needs it"}
		*d.problems = append(*d.problems, p.encoded(text))
		d.failed++
		return nil
	}
	tree, err := parse(text)
	if err != nil {
		d.syntax(text, err)
		return nil
	}
	return &table{doc: d, keys: tree, used: map[string]bool{}}
}

// readText reads a file that is regular and not too large.
func readText(fsys fs.FS, file string) (string, error) {
	info, err := fs.Stat(fsys, file)
	if err != nil {
		return "", unread(err)
	}
	if !info.Mode().IsRegular() {
		return "", errors.New("this is no regular file")
	}
	f, err := fsys.Open(file)
	if err != nil {
		return "", unread(err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, largestFile+1))
	if err != nil {
		return "", unread(err)
	}
	if len(data) > largestFile {
		return "", fmt.Errorf("the file is larger than %d KiB", largestFile>>10)
	}
	return string(data), nil
}

// unread is an error of the file system without its path: problems name the file.
func unread(err error) error { return fmt.Errorf("it can't be read: %w", reason(err)) }

// parse parses TOML into its plain tree. A parser that gives up in a panic has
// met a wrong text all the same.
func parse(text string) (tree map[string]any, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the file can't be parsed: %v", r)
		}
	}()
	_, err = toml.Decode(text, &tree)
	return tree, err
}

// reason takes the path off an error whose message names it already.
func reason(err error) error {
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
