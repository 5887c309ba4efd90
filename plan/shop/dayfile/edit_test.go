package dayfile

import (
	"strings"
	"testing"
)

// The entry meant is changed, whether its list is above the jobs or goes on behind them, and every
// other line stays as it is; an entry that isn't there changes nothing.
func TestEntriesAreChanged(t *testing.T) {
	const text = "[[pause]]\nfrom = 1 # first\n\n# the shift\n[[shift]]\nfrom = 3\n[[pause]]\nfrom = 5\n\n[[job]]\nid = \"A\"\n\n[[pause]]\nfrom = 7"
	for i, was := range []string{"1", "5", "7", ""} {
		d, ok := Split(text)
		if !ok {
			t.Fatal("not cut")
		}
		d.ChangeEntry("pause", i, Edit{"from", "9"}, []string{"from", "to"})
		if want := strings.Replace(text, "from = "+was, "from = 9", min(len(was), 1)); d.String() != want {
			t.Errorf("pause %d:\n%s\nwant\n%s", i, d.String(), want)
		}
	}
}

// A key is taken out, given another value or added in line with the others, and every other line stays as it is.
func TestKeysAreChanged(t *testing.T) {
	const head = "start = 2026-11-25T06:00:00 # early\nunits = \"mm\"\n\n"
	order := []string{"units", "start", "end", "aim"}
	for _, c := range []struct {
		edit Edit
		want string
	}{
		{Edit{"start", ""}, "units = \"mm\"\n\n"},
		{Edit{"units", ""}, "start = 2026-11-25T06:00:00 # early\n\n"},
		{Edit{"end", ""}, head},
		{Edit{"start", "2026-11-25T07:00:00"}, "start = 2026-11-25T07:00:00 # early\nunits = \"mm\"\n\n"},
		{Edit{"units", "\"in\""}, "start = 2026-11-25T06:00:00 # early\nunits = \"in\"\n\n"},
		{Edit{"end", "2026-11-25T14:00:00"}, "start = 2026-11-25T06:00:00 # early\nend   = 2026-11-25T14:00:00\nunits = \"mm\"\n\n"},
	} {
		if got := c.edit.apply(head, "\n", order); got != c.want {
			t.Errorf("%+v gives\n%swant\n%s", c.edit, got, c.want)
		}
	}
}
