package dayfile

import "testing"

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
