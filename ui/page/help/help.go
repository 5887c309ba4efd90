// Package help is the page of the cautions, the keys, the marks and what was taken for granted.
// It is made from the table of keys, and shows those that a person has set.
package help

import (
	"maps"
	"slices"
	"strings"

	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/personal"
)

// Page is the help over the whole screen.
type Page struct {
	*draw.Theme
	*keys.Table
	Config string          // the person's file of keys; empty where there can be none
	Notes  func() []string // what was taken for granted
	from   int             // the first line shown
}

// Open goes to what has the keys; over the panes of the first page to the beginning, with
// the cautions.
func (p *Page) Open(in keys.Scope, s draw.Size) {
	if in&(keys.OnDay|keys.OnBeam|keys.OnMoves) == 0 {
		p.from = p.at(in, s.W)
		p.HandleKey(keys.None, s)
	}
}

// at is the line at which the chapter of a scope begins.
func (p *Page) at(in keys.Scope, w int) int {
	for _, c := range chapters {
		if c.in&in == 0 || c.in == keys.OnPanes {
			continue
		}
		name := p.chapter(c.name, w)[0].Text()
		for n, l := range p.lines(w) {
			if l.Text() == name {
				return n
			}
		}
	}
	return 0
}

// HandleKey turns the page on a screen of that size.
func (p *Page) HandleKey(a keys.Action, s draw.Size) {
	p.from = list.Text(p.from, len(p.lines(s.W)), max(s.H-2, 1)).Step(a)
}

// View draws the page over the whole screen.
func (p *Page) View(s draw.Size) []draw.Line {
	lines := p.lines(s.W)
	lines = lines[max(0, min(p.from, len(lines)-(s.H-2))):]
	out := draw.Box(p.Theme, "Help", p.Line(), lines, draw.Size{W: s.W, H: max(s.H-1, 1)}, true)
	if s.H > 1 {
		out = append(out, keys.Footer(p.Theme, p.Table, keys.OnHelp, s.W))
	}
	return out
}

// chapters are the scopes in the order in which the help shows their keys.
var chapters = []struct {
	name string
	in   keys.Scope
}{
	{"Everywhere", keys.OnPanes},
	{"Day", keys.OnDay},
	{"Beam", keys.OnBeam},
	{"Moves", keys.OnMoves},
	{"Day map", keys.OnDayMap},
	{"Schedule", keys.OnSchedule},
	{"Holders", keys.OnHolders},
	{"Settings", keys.OnSettings},
	{"Moving a job", keys.OnMoveTo},
	{"The job form", keys.OnJobForm},
	{"Its list of materials", keys.OnNames},
	{"Two orders", keys.OnCompare | keys.OnSearching | keys.OnOffer},
	{"Lists to choose from", keys.OnList},
	{"Guided setup", keys.OnCautions | keys.OnSetup | keys.OnEnding},
	{"Correcting a position", keys.OnCorrection},
	{"On a small screen", keys.OnSmall},
}

// lines are all of the help, broken to the screen's width.
func (p *Page) lines(w int) (out []draw.Line) {
	out = append(out, p.chapter("Before a hand goes near the beam", w)...)
	for _, c := range caution.All {
		out = append(out, p.entry("", c.Head+": "+c.Text, w)...)
	}
	for _, c := range chapters {
		out = append(out, p.chapter(c.name, w)...)
		for _, b := range p.Table.All {
			if b.Does == "" || !has(b.Where, c.in) {
				continue
			}
			out = append(out, p.entry(b.Shown(p.Theme.ASCII), b.Does, w)...)
		}
	}
	out = append(out, p.chapter("Saving the day", w)...)
	out = append(out, p.entry("", keeping, w)...)
	out = append(out, p.chapter("Keys of your own", w)...)
	out = append(out, p.entry("", p.ownKeys(), w)...)
	out = append(out, p.chapter("Marks", w)...)
	for _, mark := range marks(p.Theme) {
		out = append(out, p.entry(mark[0], mark[1], w)...)
	}
	if len(p.Notes()) > 0 {
		out = append(out, p.chapter("Assumed", w)...)
	}
	for _, text := range p.Notes() {
		out = append(out, p.entry("", text, w)...)
	}
	return out
}

// has reports whether a chapter has a binding: those of all panes in one, those
// of a pane in its own.
func has(where, chapter keys.Scope) bool {
	if where&keys.OnPanes == keys.OnPanes {
		return chapter == keys.OnPanes
	}
	return where&chapter != 0 && chapter != keys.OnPanes
}

// chapter is a chapter's name.
func (p *Page) chapter(name string, w int) (out []draw.Line) {
	for _, row := range p.Wrap(name, max(w-1, 1)) {
		l := p.Line()
		l.Add(draw.Strong, " "+row)
		out = append(out, l)
	}
	return out
}

// entry is a key or mark and what it means: beside it, or below it where the screen is
// narrow.
func (p *Page) entry(key, text string, w int) (out []draw.Line) {
	indent := 14
	if w < 50 {
		if indent = 2; draw.CellWidth(key) > 3 {
			for _, row := range p.Wrap(key, max(w-1, 1)) {
				l := p.Line()
				l.Add(draw.Accent, " "+row)
				out = append(out, l)
			}
			key = ""
		} else if key != "" {
			indent = 6 // a key of three and a blank
		}
	}
	for i, row := range p.Wrap(text, max(w-indent-1, 1)) {
		l := p.Line()
		if i == 0 && key != "" {
			l.Add(draw.Plain, draw.Blanks(min(indent-3, 2)))
			l.Add(draw.Accent, p.Short(key, max(indent-3, 3)))
		}
		l.To(indent)
		l.Add(draw.Plain, row)
		out = append(out, l)
	}
	return out
}

// marks are the marks on the screen and what they mean.
func marks(k *draw.Theme) [][2]string {
	all := [][2]string{
		{k.Cursor, "picked; " + k.CursorBy + " in a pane without the keys"},
		{k.Legend[draw.Moves], "a holder that moves: its position now above, its new position below; where many move, only some are drawn all the way"},
		{k.Legend[draw.Aimed], "the picked move"},
		{k.Legend[draw.Stays], "a holder that stays and cuts"},
		{k.Legend[draw.Idles], "a holder that stays and is idle, lifted"},
		{"10  " + k.Aim + "30", "numbers of holders at their positions now: every tenth, and the picked one"},
		{"6n 7s 8o", "a holder that may not cut, is stuck, or is out"},
		{k.WebFrom + k.Trim + k.Cut + k.Web + k.Cut + k.Trim + k.WebTo, "the web from edge to edge, with its trim and its cuts"},
		{"| . _", "in the strip of a holder: a job in which it stays, cutting, resting or parked"},
		{"X + =", "there: a job for which it is moved, to cut, to rest or to park"},
		{k.Levels[len(k.Levels)-1:][0] + " " + k.Bearing, "in the settings: force or metres at a position, more is higher; a bearing of the anvil"},
		{"x", "refused: the beam can't run the job"},
		{"!", "late, past the end of the shift, or an order that breaks a rule"},
		{"r", "running: it stays first"},
		{"f", "fixed at its number in the sequence"},
		{"<", "comes after another job"},
		{"#1 #2 #3", "the three longest setups of the day"},
		{k.Pending, "being planned"},
		{"~", "estimate: each job planned on its own; planning all jobs together may make it less or more"},
		{"this order", "the day in the order shown, all jobs planned together"},
		{"as listed", "for comparison: the order of the file, every layout centred on its web"},
	}
	if k.ASCII {
		all = append(all, asciiMarks...)
	}
	return all
}

// asciiMarks are what threads are drawn with where there are no dots.
var asciiMarks = [][2]string{
	{"'", "a moving holder, its position now"},
	{",", "its new position"},
	{";", "one is there now, another will be: too close to draw apart"},
	{"-", "its way along the beam"},
	{"+", "where ways meet or cross over in one column"},
	{"> <", "many on their way to the drive side, to the operator side"},
	{"* =", "the picked one: its positions, and its way along the beam"},
}

// keeping says how a day is saved.
const keeping = "Ctrl-S saves the day in day.toml. Only the lines concerned change, and comments stay. Where that is not possible the day is saved beside it, in day.bide.toml, and the screen says so. Until then the top line says: not saved."

// ownKeys says how keys are changed, with the names of all that have some.
func (p *Page) ownKeys() string {
	file := p.Config
	if file == "" {
		file = "bide/" + personal.ConfigFile + " in your config folder"
	}
	var all []string
	for _, name := range slices.Sorted(maps.Keys(keys.ActionNames)) {
		i := slices.IndexFunc(p.Table.All, func(b keys.Binding) bool { return b.Act == keys.ActionNames[name] && len(b.Keys) > 0 })
		if i >= 0 {
			all = append(all, name+" "+keys.ShownKey(p.Table.All[i].Keys[0], p.Theme.ASCII))
		}
	}
	return "Set them in " + file + ", in a table [keys]: undo = \"f2\", or search = [\"s\", \"f5\"]. Errors there are reported; the rest of the program is unaffected. The names, each with a key that it has now: " + strings.Join(all, ", ") + "."
}
