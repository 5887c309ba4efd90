package disk

import (
	"io/fs"
	"regexp"
	"slices"
)

// besides are the files that bide writes beside those of a shop, with what is in each
// and what to do with it, most urgent first. Nobody would look for them by themselves.
var besides = []struct {
	name *regexp.Regexp
	text string
}{
	{numbered("day.bide"), "holds a day that was not saved in day.toml: compare the two, then rename the one that counts to day.toml, or delete the other"},
	{numbered("positions.other"), "holds what someone else had written into positions.toml when bide wrote it: compare it with the real positions, then delete it"},
	{numbered("positions.hand"), "holds positions.toml as it was made by hand, with its comments: rename or delete it when nobody needs them"},
}

// numbered matches the names that writeBeside gives.
func numbered(name string) *regexp.Regexp {
	return regexp.MustCompile(`^` + regexp.QuoteMeta(name) + `(-[0-9]+)?\.toml$`)
}

// BesideNote says what a file beside the shop's holds and what to do with it; nothing
// of a file that bide doesn't write there.
func BesideNote(file string) string {
	for _, b := range besides {
		if b.name.MatchString(file) {
			return file + " " + b.text
		}
	}
	return ""
}

// BesideNotes says of the files that lie beside the shop's, most urgent first.
func BesideNotes(fsys fs.FS) (notes []string) {
	entries, _ := fs.ReadDir(fsys, ".") // a folder that can't be listed may still be read
	for _, b := range besides {
		for _, e := range entries {
			if b.name.MatchString(e.Name()) {
				notes = append(notes, BesideNote(e.Name()))
			}
		}
	}
	return slices.Clip(notes)
}
