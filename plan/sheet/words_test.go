package sheet

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"bide/plan"
	"bide/plan/words"
)

func TestCutAndPad(t *testing.T) {
	for _, c := range []struct {
		text string
		n    int
		want string
	}{
		{"", 3, "   "}, {"abc", 3, "abc"}, {"abcd", 3, "a.."}, {"größe", 7, "größe  "}, {"größer noch", 6, "größ.."}, {"a\x1bb", 4, "a?b "},
		{"abc", 2, ".."}, {"abc", 1, "."}, {"abc", 0, ""}, {"abc", -1, ""}, {"", -3, ""}, {"a", 1, "a"},
	} {
		if got := pad(c.text, c.n); got != c.want {
			t.Errorf("pad(%q, %d) = %q, want %q", c.text, c.n, got, c.want)
		}
	}
}

// Wrapping loses no letter, and no line is too long.
func FuzzWrap(f *testing.F) {
	for _, s := range []string{"", " ", "a few words that go on", strings.Repeat("x", 50), "größer \x00 noch\u2028", "\xff"} {
		f.Add(s, 7)
	}
	f.Fuzz(func(t *testing.T, text string, n int) {
		n = 2 + (n%78+78)%78
		lines := wrap(text, n)
		for _, l := range lines {
			if utf8.RuneCountInString(l) > n {
				t.Errorf("%q is longer than %d", l, n)
			}
		}
		letters := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got, want := letters(strings.Join(lines, " ")), letters(words.Clean(text)); got != want {
			t.Errorf("%q became %q", want, got)
		}
	})
}

func TestSaved(t *testing.T) {
	listed := plan.Totals{Repositions: 500, Setup: 300 * time.Minute, Late: 30 * time.Minute}
	for _, c := range []struct {
		moves       int
		setup, late time.Duration
		want        string
	}{
		{500, 300 * time.Minute, 30 * time.Minute, "the same as the listed order"},
		{392, 14016 * time.Second, 7 * time.Minute, "108 moves and 66.4 min of setup less than the listed order; 23 min less late"},
		{501, 299 * time.Minute, 30 * time.Minute, "1 move more and 1.0 min of setup less than the listed order"},
		{510, 301 * time.Minute, 40 * time.Minute, "10 moves and 1.0 min of setup more than the listed order; 10 min more late"},
		{500, 290 * time.Minute, 30 * time.Minute, "10.0 min of setup less than the listed order"},
		{499, 300 * time.Minute, 30 * time.Minute, "1 move less than the listed order"},
		{500, 300 * time.Minute, 0, "moves and setup the same as the listed order; 30 min less late"},
	} {
		if got := saved(plan.Totals{Repositions: c.moves, Setup: c.setup, Late: c.late}, listed); got != c.want {
			t.Errorf("saved: %q, want %q", got, c.want)
		}
	}
}

// Places are printed to 0.01 mm or 0.0001 in; a way is that between printed places.
func TestPrintedPlacesAddUp(t *testing.T) {
	for _, c := range []struct {
		from, to plan.Length
		u        plan.Unit
		want     string
	}{
		{750_138_000, 753_500_400, plan.Millimetres, "750.14 +3.36 753.50"},
		{-4_999, 5_000, plan.Millimetres, "0.00 +0.01 0.01"},
		{1_004_000, 996_000, plan.Millimetres, "1 -0 1"}, // 0.008 mm, which alone would be 0.01
		{0, plan.Inch / 3, plan.Inches, "0.0000 +0.3333 0.3333"},
	} {
		m := newMoveTable([]plan.Move{{From: c.from, To: c.to}}, &Options{Unit: c.u})
		got := strings.Fields(m.from.Number(c.from) + " " + m.by.Way(words.Between(c.from, c.to, c.u)) + " " + m.to.Number(c.to))
		if text := strings.Join(got, " "); text != c.want {
			t.Errorf("from %d to %d nm is printed %s, want %s", c.from, c.to, text, c.want)
		}
	}
}

// The marks of a strip lie where the places lie on the rail.
func TestPictureMarksPlaces(t *testing.T) {
	s := newStrip(plan.Span{From: -100, To: 100})
	s.fill(plan.Span{From: 0, To: 50}, '-')
	s.mark(-100, '|')
	s.mark(100, '|')
	s.mark(1000, '|') // off the rail: at its end
	got := string(s.marks)
	if len(got) != 75 || got[0] != '|' || got[74] != '|' || got[37] != '[' || got[55] != ']' || strings.Count(got, "-") != 17 {
		t.Errorf("the strip is %q", got)
	}
	if same := newStrip(plan.Span{From: 5, To: 5}); same.column(5) != 0 {
		t.Error("a rail without length has no columns")
	}
}

// The last lines take the section before them along to the next page, if both fit.
func TestPaperClosesInCompany(t *testing.T) {
	for mark, want := range map[int]int{0: 9, 40: 14 + 9, 53: 1 + 9, 54: 9, 5: 9} {
		p := &paper{}
		p.begin("TITLE", "a", "b")
		p.add(strings.Split(strings.Repeat("line\n", 52)+"line", "\n")...) // 53 of 56, then one is blank
		p.close(mark, strings.Split(strings.Repeat("last\n", 8)+"last", "\n")...)
		if got := len(p.pages[1].lines); got != want {
			t.Errorf("with the mark at line %d, %d lines are on the next page, want %d", mark, got, want)
		}
	}
}

// A page turns before lines that belong together and repeats a table's head.
func TestPaperTurns(t *testing.T) {
	p := &paper{left: "shop", right: "day"}
	p.begin("TITLE", "a", "b")
	for range 50 {
		p.add("line")
	}
	p.add(strings.Split(strings.Repeat("block\n", 9)+"block", "\n")...)
	if len(p.pages) != 2 || len(p.pages[1].lines) != 10 || p.pages[1].title != "TITLE"+continued {
		t.Fatalf("a block of 10 lines went to %d pages", len(p.pages))
	}
	rows := make([][]string, 200)
	for i := range rows {
		rows[i] = []string{"row"}
	}
	p.table([]string{"head"}, rows, 0)
	n := 0
	for i, pg := range p.pages[1:] {
		if headed := pg.lines[0] == "head"; i > 0 && !headed {
			t.Errorf("page %d of the table has no head", i+1)
		}
		n += strings.Count(strings.Join(pg.lines, "\n"), "row")
	}
	if n != 200 {
		t.Errorf("%d rows of 200 are there", n)
	}
}

// TestGridKeepsTheWideColumn: names give way to the wide column, numbers don't, and
// the line still fits the paper.
func TestGridKeepsTheWideColumn(t *testing.T) {
	name, number := strings.Repeat("x", 30), strings.Repeat("1", 41)
	g := grid{rows: [][]string{{name, name, number, name, name, "1", "2", "3"}},
		names: []bool{0: true, 1: true, 3: true, 4: true, 7: false}, wide: 1}
	_, lines := g.lines()
	if l := lines[0]; runes(l) != 80 || !strings.Contains(l, " xx.. "+number+" ") {
		t.Errorf("%d columns: %q", runes(l), l)
	}
}
