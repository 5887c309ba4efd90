package ui

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bide/ui/personal"

	tea "github.com/charmbracelet/bubbletea"
)

// actionNames are the names of the actions in a person's config file. What isn't
// here has keys of its own that stay: leaving at once, suspending, and the answers to
// a question.
var actionNames = map[string]action{
	"quit": quit, "help": help, "back": back, "next-pane": nextPane, "last-pane": lastPane,
	"day": pane1, "beam": pane2, "moves": pane3, "tracks": pane4, "holders": pane5, "settings": pane6,
	"enlarge": enlarge, "up": up, "down": down, "left": left, "right": right,
	"page-up": pageUp, "page-down": pageDown, "first": top, "last": bottom,
	"earlier": earlier, "later": later, "undo": undo, "redo": redo, "search": seek, "search-moves": seekMoves,
	"nearer": nearer, "farther": farther, "whole-beam": wholeBeam, "only-moved": onlyMoved, "clock": overTime,
	"holder-before": holderBefore, "holder-next": holderNext, "lift": liftJob, "cheapest": cheapest, "choose": choose,
	"add": addJob, "edit": editJob, "copy": copyJob, "remove": removeJob, "lock-turn": lockTurn, "after": orderJob,
	"shift": shiftRule, "arrange": arrangeRule, "afresh": afresh, "all-afresh": allAfresh, "running": markRunning, "done": markDone, "aside": setAside,
	"left-out": leftOut, "compare": compareOrders, "discard": discard, "other-order": otherOrder, "save": saveDay, "read-again": readAgain,
	"walk": walkOn, "proceed": proceed, "tick": tickMove, "untick": untickMove, "set-up": setUp, "as-found": asFound,
	"trouble": trouble, "save-again": saveAgain, "accept": accept, "filter": filterRows, "mouse": toggleMouse,
	"sort": orderBy, "turn-round": turnRound, "pairs": otherView, "mark": marking,
}

// unnamed are the actions whose keys stay.
var unnamed = []action{nothing, abort, suspend, yes, markGood, markNoCut, markStuck, markOut, markFiled, markDrop, runEnded, runWaits}

// rekeyed is a table of bindings with a person's keys, and what is wrong with those:
// each problem begins with where it stands. What is wrong is left as it was; the
// table is as free of clashes as before.
func rekeyed(table []binding, c *personal.Config) (out []binding, problems []string) {
	wanted := map[action]personal.Keys{}
	refuse := func(k personal.Keys, format string, args ...any) {
		problems = append(problems, fmt.Sprintf("%s: %s: %s", c.At(k.Line), k.Action, fmt.Sprintf(format, args...)))
	}
	for _, k := range c.Keys {
		a, known := actionNames[k.Action]
		if !known {
			refuse(k, "there is no such action%s", personal.Meant(k.Action, slices.Sorted(maps.Keys(actionNames))))
			continue
		}
		keys, why := readKeys(k.Keys)
		if why == "" && a == quit && slices.ContainsFunc(keys, func(key string) bool { return strings.EqualFold(key, "y") }) {
			why = "y answers the question whether to leave, and must be another key"
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
		refuse(wanted[bad], "%s is taken by %s; its keys stay as they were", shownKey(key, true), nameOf(other))
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
func withKeys(table []binding, wanted map[action]personal.Keys) []binding {
	out := slices.Clone(table)
	for i := range out {
		b := &out[i]
		if k, ok := wanted[b.act]; ok && b.act != nothing {
			b.keys, b.show, b.ascii = k.Keys, shownKeys(k.Keys, false), shownKeys(k.Keys, true)
			b.does, _, _ = strings.Cut(b.does, " (also ")
		}
	}
	for i := range out {
		if out[i].act == nothing {
			out[i].show, out[i].ascii = shownFor(table, out, i)
		}
	}
	return out
}

// shownFor is how a line of the footer that stands for other bindings shows their
// keys, once they are others.
func shownFor(was, is []binding, at int) (show, ascii string) {
	b := was[at]
	for _, text := range strings.Fields(strings.NewReplacer("↑", " up ", "↓", " down ", "←", " left ", "→", " right ").Replace(b.show)) {
		i := slices.IndexFunc(was, func(o binding) bool {
			return o.where&b.where != 0 && slices.ContainsFunc(o.keys, func(key string) bool { return key == text || shownKey(key, true) == text })
		})
		if i < 0 {
			return b.show, b.ascii
		}
		show += " " + shownKey(is[i].keys[0], false)
		ascii += " " + shownKey(is[i].keys[0], true)
	}
	if strings.ReplaceAll(show, " ", "") == strings.ReplaceAll(b.show, " ", "") {
		return b.show, b.ascii
	}
	return strings.TrimSpace(show), strings.TrimSpace(ascii)
}

// clash finds a key that does two things in one place: the action whose wish is to be
// dropped, the other one, and the key; no key when there is none.
func clash(table []binding, wanted map[action]personal.Keys) (bad, other action, key string) {
	for in := scope(1); in < scopes; in <<= 1 {
		does := map[string]action{}
		for _, b := range table {
			for _, k := range b.keys {
				a, twice := does[k]
				_, wish := wanted[a]
				_, late := wanted[b.act]
				switch {
				case b.where&in == 0:
				case !twice || a == b.act:
					does[k] = b.act
				case late && (!wish || wanted[b.act].Line >= wanted[a].Line):
					return b.act, a, k
				case wish:
					return a, b.act, k
				}
			}
		}
	}
	return nothing, nothing, ""
}

// nameOf is the name of an action.
func nameOf(a action) string {
	for _, name := range slices.Sorted(maps.Keys(actionNames)) {
		if actionNames[name] == a {
			return name
		}
	}
	return "a key that stays"
}

// shownKeys are keys as people read them.
func shownKeys(keys []string, ascii bool) string {
	var out []string
	for _, key := range keys {
		out = append(out, shownKey(key, ascii))
	}
	return strings.Join(out, " ")
}

// keyWords are keys that people read otherwise than Bubble Tea names them.
var keyWords = map[string]string{
	" ": "Space", "up": "↑", "down": "↓", "left": "←", "right": "→", "pgup": "PgUp", "pgdown": "PgDn",
	"tab": "Tab", "enter": "Enter", "esc": "Esc", "home": "Home", "end": "End", "insert": "Ins", "delete": "Del", "backspace": "Backspace",
}

func shownKey(key string, ascii bool) string {
	word, ok := keyWords[key]
	switch {
	case ok && !(ascii && word > "~"):
		return word
	case ok:
		return key
	}
	for _, with := range []string{"ctrl", "alt", "shift"} {
		if rest, ok := strings.CutPrefix(key, with+"+"); ok {
			if rest = shownKey(rest, ascii); len(rest) == 1 {
				rest = strings.ToUpper(rest)
			}
			return strings.ToUpper(with[:1]) + with[1:] + "-" + rest
		}
	}
	return key
}

// ownKeys tells how keys are changed, with the names of all that have some.
func ownKeys(m *model) string {
	file := m.config
	if file == "" {
		file = "bide/" + personal.ConfigFile + " in your config folder"
	}
	var all []string
	for _, name := range slices.Sorted(maps.Keys(actionNames)) {
		i := slices.IndexFunc(m.keyTable.all, func(b binding) bool { return b.act == actionNames[name] && len(b.keys) > 0 })
		if i >= 0 {
			all = append(all, name+" "+shownKey(m.keyTable.all[i].keys[0], m.Theme.ASCII))
		}
	}
	return "They are set in " + file + ", in a table [keys]: undo = \"f2\", or search = [\"s\", \"f5\"]. What is wrong there is told, and nothing else depends on it. The names, with a key that each has now: " + strings.Join(all, ", ") + "."
}
