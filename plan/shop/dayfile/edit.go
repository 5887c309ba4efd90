package dayfile

import (
	"slices"
	"strings"

	"bide/plan/shop/toml"
)

// Edit is a change of one key: its new value as TOML, or none to take it out.
type Edit struct{ Key, Value string }

// apply makes one edit in a piece of the day and leaves every other line as it is.
// The order of keys says where a new one goes.
func (e Edit) apply(piece, eol string, order []string) string {
	pairs := toml.StatementsOf(piece)
	if h := slices.IndexFunc(pairs, func(st toml.Statement) bool { return st.Header }); h > 0 { // above its tables
		rest := piece[pairs[h].Line:]
		return e.apply(piece[:pairs[h].Line], eol, order) + rest
	}
	i := slices.IndexFunc(pairs, func(st toml.Statement) bool { return !st.Header && st.Key == e.Key })
	switch {
	case i >= 0 && e.Value == "":
		return piece[:pairs[i].Line] + piece[pairs[i].End:]
	case i >= 0:
		return e.replace(piece, eol, pairs[i])
	case e.Value == "":
		return piece
	}
	return e.insert(piece, eol, pairs, order)
}

// replace puts a value in the old one's place. Comments inside the old one, of a
// list on many lines, go above the key.
func (e Edit) replace(piece, eol string, st toml.Statement) string {
	indent := piece[st.Line:st.Start]
	_, inside := toml.ReadBare(piece[st.Value:st.ValueEnd])
	above := ""
	for _, comment := range inside {
		above += indent + comment + eol
	}
	return piece[:st.Line] + above + piece[st.Line:st.Value] + e.Value + piece[st.ValueEnd:]
}

// insert adds a line behind the nearest key that comes before it, in the way the
// piece is written: with its indent, and its = in line.
func (e Edit) insert(piece, eol string, pairs []toml.Statement, order []string) string {
	at, indent := len(piece), ""
	for _, st := range pairs {
		if st.Header {
			at = st.End
		}
	}
	for _, key := range order[:max(slices.Index(order, e.Key), 0)] {
		for _, st := range pairs {
			if !st.Header && st.Key == key {
				at, indent = st.End, piece[st.Line:st.Start]
			}
		}
	}
	before := piece[:at]
	if before != "" && !strings.HasSuffix(before, "\n") {
		before += eol
	}
	key := e.Key + strings.Repeat(" ", max(column(pairs)-len(e.Key), 0))
	return before + indent + key + " = " + e.Value + eol + piece[at:]
}

// column is how wide the keys of a piece are written, when all are alike.
func column(pairs []toml.Statement) int {
	const usual = 8 // of material and length_m
	wide := -1
	for _, st := range pairs {
		w := st.Equals - st.Start - 1
		switch {
		case st.Header || len(st.Key) > usual: // a longer key stands out anyway
		case wide >= 0 && w != wide:
			return 0
		default:
			wide = w
		}
	}
	if wide < 0 {
		return usual
	}
	return wide
}

// copied is a job's block without the comments above and below it: they are about the
// job that it is a copy of.
func copied(block string) string {
	pairs := toml.StatementsOf(block)
	if len(pairs) == 0 {
		return block
	}
	return block[pairs[0].Line:pairs[len(pairs)-1].End]
}
