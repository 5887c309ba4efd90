package form

import (
	"io"
	"strings"
	"testing"

	"bide/ui/draw"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
)

// press gives a field keys by their names; a name of one character is that letter.
func press(t *testing.T, f *Field, names ...string) {
	t.Helper()
	for _, name := range names {
		if r := []rune(name); len(r) == 1 {
			f.Type(tea.KeyMsg{Type: tea.KeyRunes, Runes: r})
			continue
		}
		plain := strings.TrimPrefix(name, "alt+")
		alt := plain != name
		if len(plain) == 1 {
			f.Type(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(plain), Alt: alt})
			continue
		}
		k := tea.KeyType(-100)
		for ; k.String() != plain; k++ {
			if k > 200 {
				t.Fatalf("there is no key %q", name)
			}
		}
		f.Type(tea.KeyMsg{Type: k, Alt: alt})
	}
}

// paste pastes a text.
func paste(f *Field, text string) (whole bool) {
	_, whole = f.Type(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
	return whole
}

// What is typed can be mended anywhere in it.
func TestFieldIsEditedAtItsCaret(t *testing.T) {
	for _, c := range []struct {
		keys string
		want string // with the caret
	}{
		{"", "12 34.5|"},
		{"7", "12 34.57|"},
		{"home 7", "7|12 34.5"},
		{"home right 7", "17|2 34.5"},
		{"home left delete", "|2 34.5"},
		{"end right delete", "12 34.5|"},
		{"left left backspace", "12 3|.5"},
		{"backspace backspace backspace", "12 3|"},
		{"ctrl+w", "12 |"},
		{"alt+backspace 9", "12 9|"},
		{"ctrl+a ctrl+k", "|"},
		{"home alt+d", "| 34.5"},
		{"ctrl+left 8", "12 8|34.5"},
		{"ctrl+a ctrl+e 1", "12 34.51|"},
		{"left left ctrl+u", "|"},
		{"f1 tab up down enter esc pgdown ctrl+s ctrl+v", "12 34.5|"},
	} {
		f := New("", "12 34.5", 60)
		press(t, &f, strings.Fields(c.keys)...)
		text := []rune(f.Value())
		if got := string(text[:f.line.Position()]) + "|" + string(text[f.line.Position():]); got != c.want {
			t.Errorf("%q makes %q, want %q", c.keys, got, c.want)
		}
	}
}

// Keys that are no text and change none are left to the form.
func TestFieldTakesNoOtherKeys(t *testing.T) {
	f := New("", "x", 60)
	for _, k := range []tea.KeyMsg{{Type: tea.KeyTab}, {Type: tea.KeyEnter}, {Type: tea.KeyEsc}, {Type: tea.KeyUp}, {Type: tea.KeyF1}, {Type: tea.KeyCtrlC}, {Type: tea.KeyCtrlV}, {Type: tea.KeyRunes, Runes: []rune("x"), Alt: true}} {
		if taken, _ := f.Type(k); taken {
			t.Errorf("it takes %s", k)
		}
	}
}

// What is proposed is replaced by what is typed, and kept by any other key.
func TestProposedText(t *testing.T) {
	for keys, want := range map[string]string{"7": "7", "7 8": "78", "backspace 8": "68", "left 8": "689", "ctrl+u 8": "8"} {
		f := New("", "69", 60)
		f.Proposed = true
		if press(t, &f, strings.Fields(keys)...); f.Value() != want {
			t.Errorf("%q makes %q of 69, want %q", keys, f.Value(), want)
		}
	}
	all := Form{Fields: []Field{New("a", "69", 60), New("b", "", 60)}}
	all.Fields[0].Proposed = true
	all.Go(1)
	all.Go(2)
	if press(t, all.Open(), "7"); all.Field("a").Value() != "697" {
		t.Errorf("left and opened again, 7 makes %q of 69", all.Field("a").Value())
	}
}

// What is pasted is one line, safe, and no longer than there is room for.
func TestPasted(t *testing.T) {
	f := New("", "ab", 10)
	f.Breaks = "; "
	f.line.SetCursor(1)
	if !paste(&f, "1\r\n2\t3") || f.Value() != "a1; 2 3b" {
		t.Errorf("pasted: %q", f.Value())
	}
	if paste(&f, "45678") || f.Value() != "a1; 2 345b" {
		t.Errorf("more than there is room for: %q", f.Value())
	}
	hostile := New("", "", 10)
	if paste(&hostile, "\x1b[2J\u202e"); strings.ContainsAny(hostile.Value(), "\x1b\u202e") {
		t.Errorf("a terminal would obey %q", hostile.Value())
	}
	long := New("", strings.Repeat("x", 20), 10)
	if paste(&long, "y") || long.Value() != strings.Repeat("x", 20) {
		t.Errorf("a text that was there is cut or added to: %q", long.Value())
	}
}

// A field of a few words goes round among them.
func TestChoices(t *testing.T) {
	for keys, want := range map[string]string{"right": "free", "left": "any", "right right right": "centred", "a": "any", "F": "free", "z": "", "backspace": "", "right c": "centred"} {
		f := New("", "", 60)
		f.Choices = []string{"centred", "free", "any"}
		if press(t, &f, strings.Fields(keys)...); f.Value() != want {
			t.Errorf("%q chooses %q, want %q", keys, f.Value(), want)
		}
	}
}

// A field fits its cells, with its caret and what is before it, whatever is typed.
func TestFieldFits(t *testing.T) {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(3) // no colours
	for _, ascii := range []bool{false, true} {
		k := draw.NewTheme(r, false, ascii)
		for _, text := range []string{"", "12.5", "24 x 25.4; 12 x 50.8", "東京の紙と布", "e\u0301a\u0301o\u0301u\u0301"} {
			f := New("", text, 100)
			for at := range len([]rune(text)) + 1 {
				f.line.SetCursor(at)
				for w := 3; w < 30; w++ {
					l := k.Line()
					if f.Draw(k, &l, w, true); l.Width > w || !strings.Contains(l.Text(), k.Caret) {
						t.Errorf("%q at %d in %d cells: %q of %d", text, at, w, l.Text(), l.Width)
					}
				}
			}
		}
	}
}
