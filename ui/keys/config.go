package keys

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bide/ui/personal"
	_ "bide/ui/quiet" // before Bubble Tea

	tea "github.com/charmbracelet/bubbletea"
)

// ActionNames are the names of the actions in a person's config file. What isn't
// here has keys of its own that stay: leaving at once, suspending, and the answers to
// a question.
var ActionNames = map[string]Action{
	"quit": Quit, "help": Help, "back": Back, "next-pane": NextPane, "last-pane": LastPane,
	"day": Pane1, "beam": Pane2, "moves": Pane3, "day-map": Pane4, "holders": Pane5, "settings": Pane6, "schedule": Pane7,
	"enlarge": Enlarge, "up": Up, "down": Down, "left": Left, "right": Right,
	"page-up": PageUp, "page-down": PageDown, "first": Top, "last": Bottom,
	"earlier": Earlier, "later": Later, "undo": Undo, "redo": Redo, "search": Search, "search-moves": SearchMoves,
	"zoom-in": ZoomIn, "zoom-out": ZoomOut, "whole-beam": WholeBeam, "only-moved": OnlyMoved, "beam-or-schedule": Schedule,
	"holder-before": HolderBefore, "holder-next": HolderNext, "move-to": MoveTo, "cheapest": Cheapest, "choose": Choose,
	"add": AddJob, "edit": EditJob, "copy": CopyJob, "remove": RemoveJob, "fix": Fix, "come-after": OrderJob,
	"shift": ShiftRule, "arrange": ArrangeRule, "replan": Replan, "replan-all": ReplanAll, "running": MarkRunning, "done": MarkDone, "hold": Hold,
	"done-or-hold": LeftOut, "compare": CompareOrders, "discard": Discard, "other-order": OtherOrder, "save": SaveDay, "read-again": Reread,
	"setup": Setup, "proceed": Proceed, "confirm": Confirm, "undo-confirm": TakeBack, "runs": Runs, "correct": Correct,
	"fault": Fault, "save-again": SaveAgain, "accept": Accept, "filter": FilterRows, "mouse": ToggleMouse,
	"sort": Sort, "reverse": Reverse, "changeovers": Pairs, "condition": Marking,
}

// unnamed are the actions whose keys stay.
var unnamed = []Action{None, Abort, Suspend, Yes, MarkGood, MarkNoCut, MarkStuck, MarkOut, MarkFiled, MarkDrop, RunEnded, RunOnHold}

// WithOwn is a table of bindings with a person's keys, and what is wrong with those:
// each problem begins with where it stands. What is wrong is left as it was; the
// table is as free of clashes as before.
func WithOwn(table []Binding, c *personal.Config) (out []Binding, problems []string) {
	wanted := map[Action]personal.Keys{}
	refuse := func(k personal.Keys, format string, args ...any) {
		problems = append(problems, fmt.Sprintf("%s: %s: %s", c.At(k.Line), k.Action, fmt.Sprintf(format, args...)))
	}
	for _, k := range c.Keys {
		a, known := ActionNames[k.Action]
		if !known {
			refuse(k, "there is no such action%s", personal.Meant(k.Action, slices.Sorted(maps.Keys(ActionNames))))
			continue
		}
		keys, why := readKeys(k.Keys)
		if why == "" && a == Quit && slices.ContainsFunc(keys, func(key string) bool { return strings.EqualFold(key, "y") }) {
			why = "y answers the question whether to quit; choose another key"
		}
		if why != "" {
			refuse(k, "%s; its keys stay as they were", why)
			continue
		}
		k.Keys = keys
		wanted[a] = k
	}
	for {
		out = withKeys(table, wanted)
		bad, other, key := clash(out, wanted)
		if key == "" {
			break
		}
		refuse(wanted[bad], "%s is taken by %s; its keys stay as they were", ShownKey(key, true), nameOf(other))
		delete(wanted, bad)
	}
	return out, problems
}

// readKeys are keys as Bubble Tea names them, or why one of them is none.
func readKeys(names []string) (keys []string, why string) {
	for _, name := range names {
		key := name
		if strings.EqualFold(name, "space") {
			key = " "
		}
		switch {
		case !isKey(key):
			return nil, fmt.Sprintf("%q is no key: a character, or one of up, down, left, right, home, end, pgup, pgdown, tab, enter, esc, space, insert, delete, f1 to f12, ctrl+x, alt+x", name)
		case key == "ctrl+c" || key == "ctrl+z":
			return nil, key + " can't have another use"
		case !slices.Contains(keys, key):
			keys = append(keys, key)
		}
	}
	if len(keys) == 0 {
		return nil, "no key is named"
	}
	return keys, ""
}

// isKey reports whether Bubble Tea has a key of that name.
func isKey(name string) bool {
	name = strings.TrimPrefix(name, "alt+")
	if r := []rune(name); len(r) == 1 {
		return r[0] >= ' '
	}
	const first, last = -100, 128 // of the types of keys
	for t := tea.KeyType(first); t < last; t++ {
		if t != tea.KeyRunes && name != "" && t.String() == name {
			return true
		}
	}
	return false
}

// withKeys is the table with other keys for some actions.
func withKeys(table []Binding, wanted map[Action]personal.Keys) []Binding {
	out := slices.Clone(table)
	for i := range out {
		b := &out[i]
		if k, ok := wanted[b.Act]; ok && b.Act != None {
			b.Keys, b.show, b.ascii = k.Keys, shownKeys(k.Keys, false), shownKeys(k.Keys, true)
			b.Does, _, _ = strings.Cut(b.Does, " (also ")
		}
	}
	for i := range out {
		if out[i].Act == None {
			out[i].show, out[i].ascii = shownFor(table, out, i)
		}
	}
	return out
}

// shownFor is how a line of the footer that stands for other bindings shows their
// keys, once they are others.
func shownFor(was, is []Binding, at int) (show, ascii string) {
	b := was[at]
	for _, text := range strings.Fields(strings.NewReplacer("Shift-↑↓", " Shift-up Shift-down ", "↑", " up ", "↓", " down ", "←", " left ", "→", " right ").Replace(b.show)) {
		i := slices.IndexFunc(was, func(o Binding) bool {
			return o.Where&b.Where != 0 && slices.ContainsFunc(o.Keys, func(key string) bool { return key == text || ShownKey(key, true) == text })
		})
		if i < 0 {
			return b.show, b.ascii
		}
		show += " " + ShownKey(is[i].Keys[0], false)
		ascii += " " + ShownKey(is[i].Keys[0], true)
	}
	show, ascii = strings.ReplaceAll(show, "Shift-↑ Shift-↓", "Shift-↑↓"), strings.ReplaceAll(ascii, "Shift-up Shift-down", "Shift-up/down")
	if strings.ReplaceAll(show, " ", "") == strings.ReplaceAll(b.show, " ", "") {
		return b.show, b.ascii
	}
	return strings.TrimSpace(show), strings.TrimSpace(ascii)
}

// clash finds a key that does two things in one place: the action whose wish is to be
// dropped, the other one, and the key; no key when there is none.
func clash(table []Binding, wanted map[Action]personal.Keys) (bad, other Action, key string) {
	for in := Scope(1); in < Scopes; in <<= 1 {
		does := map[string]Action{}
		for _, b := range table {
			for _, k := range b.Keys {
				a, twice := does[k]
				_, wish := wanted[a]
				_, late := wanted[b.Act]
				switch {
				case b.Where&in == 0:
				case !twice || a == b.Act:
					does[k] = b.Act
				case late && (!wish || wanted[b.Act].Line >= wanted[a].Line):
					return b.Act, a, k
				case wish:
					return a, b.Act, k
				}
			}
		}
	}
	return None, None, ""
}

// nameOf is the name of an action.
func nameOf(a Action) string {
	for _, name := range slices.Sorted(maps.Keys(ActionNames)) {
		if ActionNames[name] == a {
			return name
		}
	}
	return "a key that stays"
}

// shownKeys are keys as people read them.
func shownKeys(keys []string, ascii bool) string {
	var out []string
	for _, key := range keys {
		out = append(out, ShownKey(key, ascii))
	}
	return strings.Join(out, " ")
}

// keyWords are keys that people read otherwise than Bubble Tea names them.
var keyWords = map[string]string{
	" ": "Space", "up": "↑", "down": "↓", "left": "←", "right": "→", "pgup": "PgUp", "pgdown": "PgDn",
	"tab": "Tab", "enter": "Enter", "esc": "Esc", "home": "Home", "end": "End", "insert": "Ins", "delete": "Del", "backspace": "Backspace",
}

// ShownKey is a key as people read it; in ASCII alone where that is asked for.
func ShownKey(key string, ascii bool) string {
	word, ok := keyWords[key]
	switch {
	case ok && !(ascii && word > "~"):
		return word
	case ok:
		return key
	}
	for _, with := range []string{"ctrl", "alt", "shift"} {
		if rest, ok := strings.CutPrefix(key, with+"+"); ok {
			if rest = ShownKey(rest, ascii); len(rest) == 1 {
				rest = strings.ToUpper(rest)
			}
			return strings.ToUpper(with[:1]) + with[1:] + "-" + rest
		}
	}
	return key
}
