package list

import (
	"testing"

	"bide/ui/keys"
)

// Every key of a list leads to a row that there is, the picked one is always shown, and a
// page down and up again passes no row by.
func TestStep(t *testing.T) {
	for _, c := range []struct {
		list List
		key  keys.Action
		want int
	}{
		{List{0, 10, 4}, keys.Down, 1},
		{List{9, 10, 4}, keys.Down, 9},
		{List{0, 10, 4}, keys.Up, 0},
		{List{2, 10, 4}, keys.PageDown, 6},
		{List{8, 10, 4}, keys.PageDown, 9},
		{List{2, 10, 4}, keys.PageUp, 0},
		{List{5, 10, 4}, keys.Top, 0},
		{List{5, 10, 4}, keys.Bottom, 9},
		{List{5, 10, 4}, keys.Search, 5},
		{List{5, 3, 4}, keys.Search, 2}, // rows are fewer than before
		{List{0, 0, 4}, keys.Bottom, 0},
		{List{0, 0, 0}, keys.PageDown, 0},
		{List{3, 10, 0}, keys.PageDown, 4},
	} {
		if got := c.list.Step(c.key); got != c.want {
			t.Errorf("%+v: %d leads to %d, want %d", c.list, c.key, got, c.want)
		}
	}
	for rows := 1; rows < 12; rows++ {
		for shown := 1; shown < 14; shown++ {
			for at := range rows {
				l := List{at, rows, shown}
				if at < l.From() || at >= l.To() || l.To()-l.From() != min(rows, shown) || (l.Range() == "") != (shown >= rows) {
					t.Errorf("%+v shows %d to %d (%q)", l, l.From(), l.To(), l.Range())
				}
			}
		}
	}
}

// A text is shown to its last line and no further.
func TestText(t *testing.T) {
	for _, c := range []struct{ from, lines, shown, last int }{{0, 30, 10, 20}, {0, 5, 10, 0}, {0, 10, 10, 0}} {
		if got := Text(c.from, c.lines, c.shown).Step(keys.Bottom); got != c.last {
			t.Errorf("%+v ends at %d", c, got)
		}
	}
}
