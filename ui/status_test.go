package ui

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/words"
	"bide/ui/draw"

	tea "github.com/charmbracelet/bubbletea"
)

// flat is a text with its blanks and line breaks made one blank each.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// whole reports whether the text is on the screen, broken to lines or not.
func (s *screen) whole(text string) bool { return strings.Contains(flat(s.View()), flat(text)) }

// said are the formats of all that the sources say on the status line, by where that is.
func said(t *testing.T) map[string]string {
	t.Helper()
	var names []string
	for _, root := range []string{".", "../plan/session"} {
		if err := filepath.WalkDir(root, func(name string, _ fs.DirEntry, err error) error {
			if strings.HasSuffix(name, ".go") {
				names = append(names, name)
			}
			return err
		}); err != nil {
			t.Fatal(err)
		}
	}
	files, out := token.NewFileSet(), map[string]string{}
	for _, name := range names {
		f, err := parser.ParseFile(files, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) == 0 {
				return true
			}
			does, ok := call.Fun.(*ast.SelectorExpr)
			if !ok || does.Sel.Name != "Say" {
				return true
			}
			if _, passed := call.Args[0].(*ast.Ident); passed { // on from another Say
				return true
			}
			format, ok := call.Args[0].(*ast.BasicLit)
			if !ok {
				t.Errorf("%v: what is said isn't written there", files.Position(call.Pos()))
				return true
			}
			text, err := strconv.Unquote(format.Value)
			if err != nil {
				t.Error(err)
			}
			if at := files.Position(call.Pos()); !strings.HasSuffix(at.Filename, "_test.go") {
				out[fmt.Sprintf("%s:%d", at.Filename, at.Line)] = text
			}
			return true
		})
	}
	return out
}

var verb = regexp.MustCompile(`%[a-z]`)

// with is a format filled: numbers as large as they get, texts by what there is.
func with(format, text string) string {
	return verb.ReplaceAllStringFunc(format, func(v string) string {
		if v == "%d" {
			return "140"
		}
		return text
	})
}

// A long reason, as those of the file system and of another's lock.
const reason = "the shop is open for writing by someone-with-a-long-name on a-machine-with-a-long-name (process 1234567), since 25 Nov 06:12; here it can only be looked at: nothing is saved here"

// Nothing that is said is cut on a screen that has all panes, wherever it is said and
// however long its reason; and with ids and numbers alone it takes two lines at most.
func TestNoMessageIsCut(t *testing.T) {
	formats := said(t)
	if len(formats) < 50 {
		t.Fatalf("only %d places that say something were found", len(formats))
	}
	for name, keys := range map[string][]string{"panes": nil, "large": {"enter"}, "holders": {"5"}, "move to": {"j", "g"}, "compare": {"J", "v"}, "cautions": {"w"}, "setup": {"w", "enter"}} {
		sc := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
		sc.session.Journal.Take(sc.Shop.Dir, true)
		sc.settle().press(keys...).settle()
		for at, format := range formats {
			for _, text := range []string{with(format, reason+"; "+reason), with(format, "D-1042/B-12"), with(format, reason)}[:fewer(3, 2)] {
				if sc.saying(text).fits(); !sc.whole(text) {
					t.Errorf("%s, on %s, is cut: %q", at, name, text)
				}
			}
			if rows := sc.Wrap(with(format, "D-1042/B-12"), 78); len(rows) > 2 {
				t.Errorf("%s takes %d lines: %q", at, len(rows), rows)
			}
		}
	}
}

// On smaller screens too, down to 40x12, what is said with ids and numbers is whole; at
// 20x5 what is said after each move is, and the next move with it.
func TestMessagesOnSmallScreens(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	sc.session.Journal.Take(sc.Shop.Dir, true)
	sc.session.Journal.Now = seconds()
	sc.settle()
	for _, guided := range []bool{false, true} {
		if guided {
			sc.press("w", "enter")
		}
		sc.send(tea.WindowSizeMsg{Width: 40, Height: 12})
		for at, format := range said(t) {
			text := with(format, "D-1042/B-12")
			if sc.saying(text).fits(); !sc.whole(text) {
				t.Errorf("%s is cut: %q", at, text)
			}
		}
	}
	sc.session.Notice = workday.Notice{}
	sc.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	for range 58 {
		before := sc.setup().Move()
		sc.confirms(1)
		if !sc.whole(fmt.Sprintf("%d made", before.Holder)) {
			t.Fatalf("it isn't said that %d is made:\n%s", before.Holder, sc.View())
		}
		if m := sc.setup().Move(); m != nil {
			sc.tells(fmt.Sprint(m.Holder), plan.Millimetres.Number(m.To), strings.Fields(words.Towards(m.To - m.From))[0])
		}
	}
}

// A text on too few lines ends with a sign that there is more, and never in a number.
func TestRows(t *testing.T) {
	k := testLook(noColours, false, true)
	for _, c := range []struct {
		text string
		w, n int
		want string
	}{
		{"", 10, 3, ""},
		{"one two", 10, 3, "one two"},
		{"one two three", 10, 3, "one two|three"},
		{"one two three four", 10, 2, "one two|three .."},
		{"one two three four", 10, 1, "one tw.."},
		{"it is at 1234.5 mm", 14, 2, "it is at|1234.5 mm"},
		{"is at 12345678 mm", 10, 1, "is at .."},
	} {
		var rows []string
		for _, l := range k.Rows(draw.Plain, c.text, c.w, c.n) {
			rows = append(rows, strings.TrimSpace(l.Text()))
			if l.Width != c.w {
				t.Errorf("%q: a line of %d, want %d", c.text, l.Width, c.w)
			}
		}
		if got := strings.Join(rows, "|"); got != c.want {
			t.Errorf("%q in %d x %d: %q, want %q", c.text, c.w, c.n, got, c.want)
		}
	}
}

// The question whether to leave names all that would be lost, and why it would.
func TestLeavingNamesWhatIsLost(t *testing.T) {
	first, sc, _ := second(t)
	sc.press("j", "J").settle().press("e").types("x").press("esc")
	sc.press("w").settle().press("enter").confirms(2)
	at := sc.Actual.Positions.At
	sc.press("f").enters("20", plan.Millimetres.Number(at[19]+plan.Millimetre), "")
	sc.press("c").enters("", "", "n", "hiss")
	sc.press("q")
	for _, text := range []string{"Not saved: 2 moves made, 1 position corrected, 1 condition", "the changes to the day", "a form closed unfinished", "open for writing by", "Quit anyway?"} {
		if !sc.whole(text) {
			t.Errorf("no %q in\n%s", text, sc.View())
		}
	}
	sc.press("n")
	for range 4 {
		sc.press("u").settle()
	}
	if sc.press("q"); sc.whole("moves made") || sc.whole("holder found") || !sc.whole("the changes to the day") {
		t.Errorf("what is taken back is said to be lost:\n%s", sc.View())
	}
	first.session.Journal.Close()
}
