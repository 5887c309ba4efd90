package toml

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Problem is one thing wrong in a shop's files.
type Problem struct {
	File   string
	Line   int    // from 1; 0 where it is not known or nothing stands there yet
	Place  string // the part of the file, such as "job 3 (D-103), slits"
	What   string
	Remedy string
}

// String is the problem on one line: file, line, place, what is wrong, remedy.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d", p.Line)
	}
	b.WriteString(": ")
	if p.Place != "" {
		b.WriteString(p.Place + ": ")
	}
	b.WriteString(p.What)
	if p.Remedy != "" {
		b.WriteString("; " + p.Remedy)
	}
	return b.String()
}

// Problems are all the problems of a shop, sorted by file and line.
type Problems []Problem

// Error is one line for each problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err is the problems as an error; nil when there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// MostProblems bounds what is reported of one shop: a file that is no shop's file
// at all would fill the screen with one mistake.
const MostProblems = 200

// Sorted puts the problems in the order in which a person mends them.
func (ps Problems) Sorted() Problems {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Place, b.Place))
	})
	if more := len(ps) - MostProblems; more > 0 {
		last := ps[MostProblems]
		ps = append(ps[:MostProblems:MostProblems], Problem{
			File: last.File, What: fmt.Sprintf("and %d problems more", more), Remedy: "correct those above first",
		})
	}
	return ps
}
