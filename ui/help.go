package ui

import (
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/personal"
	"maps"
	"slices"
	"strings"
)

// openHelp opens the help: over the panes of the first page at its beginning, with the
// cautions, else at what has the keys.
func (m *model) openHelp(in keys.Scope) {
	m.help = &helpPage{}
	if in&(keys.OnDay|keys.OnBeam|keys.OnMoves) == 0 {
		m.help.from = m.help.at(m, in)
		m.help.HandleKey(keys.None, m)
	}
}

// at is the line at which the chapter of a scope begins.
func (p *helpPage) at(m *model, in keys.Scope) int {
	for _, c := range chapters {
		if c.in&in == 0 || c.in == keys.OnPanes {
			continue
		}
		name := p.chapter(m, c.name)[0].Text()
		for n, l := range p.lines(m) {
			if l.Text() == name {
				return n
			}
		}
	}
	return 0
}

// helpPage shows the cautions, the keys, the marks and what was taken for granted.
type helpPage struct{ from int }

// HandleKey turns the page.
func (p *helpPage) HandleKey(a keys.Action, m *model) {
	p.from = list.Text(p.from, len(p.lines(m)), max(m.H-2, 1)).Step(a)
}

// View draws the page over the whole screen.
func (p *helpPage) View(m *model) []draw.Line {
	lines := p.lines(m)
	lines = lines[max(0, min(p.from, len(lines)-(m.H-2))):]
	out := draw.Box(m.Theme, "Help", m.Line(), lines, draw.Size{W: m.W, H: max(m.H-1, 1)}, true)
	if m.H > 1 {
		out = append(out, keys.Footer(m.Theme, m.Table, keys.OnHelp, m.W))
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
	{"Two orders", keys.OnCompare | keys.OnOffer},
	{"Lists to choose from", keys.OnList},
	{"Guided setup", keys.OnCautions | keys.OnSetup | keys.OnEnding},
	{"Correcting a position", keys.OnCorrection},
	{"On a small screen", keys.OnSmall},
}

// lines are all of the help, broken to the screen's width.
func (p *helpPage) lines(m *model) (out []draw.Line) {
	out = append(out, p.chapter(m, "Before a hand goes near the beam")...)
	for _, c := range cautions {
		out = append(out, p.entry(m, "", c.head+": "+c.text)...)
	}
	for _, c := range chapters {
		out = append(out, p.chapter(m, c.name)...)
		for _, b := range m.Table.All {
			if b.Does == "" || !told(b.Where, c.in) {
				continue
			}
			out = append(out, p.entry(m, b.Shown(m.Theme.ASCII), b.Does)...)
		}
	}
	out = append(out, p.chapter(m, "Saving the day")...)
	out = append(out, p.entry(m, "", keeping)...)
	out = append(out, p.chapter(m, "Keys of your own")...)
	out = append(out, p.entry(m, "", ownKeys(m))...)
	out = append(out, p.chapter(m, "Marks")...)
	for _, mark := range marks(m.Theme) {
		out = append(out, p.entry(m, mark[0], mark[1])...)
	}
	if len(m.notes()) > 0 {
		out = append(out, p.chapter(m, "Assumed")...)
	}
	for _, text := range m.notes() {
		out = append(out, p.entry(m, "", text)...)
	}
	return out
}

// told reports whether a chapter has a binding: those of all panes in one, those
// of a pane in its own.
func told(where, chapter keys.Scope) bool {
	if where&keys.OnPanes == keys.OnPanes {
		return chapter == keys.OnPanes
	}
	return where&chapter != 0 && chapter != keys.OnPanes
}

// chapter is a chapter's name.
func (p *helpPage) chapter(m *model, name string) (out []draw.Line) {
	for _, row := range m.Wrap(name, max(m.W-1, 1)) {
		l := m.Line()
		l.Add(draw.Strong, " "+row)
		out = append(out, l)
	}
	return out
}

// entry is a key or mark and what it means: beside it, or below it where the screen is
// narrow.
func (p *helpPage) entry(m *model, key, text string) (out []draw.Line) {
	indent := 14
	if m.W < 50 {
		if indent = 2; draw.CellWidth(key) > 3 {
			for _, row := range m.Wrap(key, max(m.W-1, 1)) {
				l := m.Line()
				l.Add(draw.Accent, " "+row)
				out = append(out, l)
			}
			key = ""
		} else if key != "" {
			indent = 6 // a key of three and a blank
		}
	}
	for i, row := range m.Wrap(text, max(m.W-indent-1, 1)) {
		l := m.Line()
		if i == 0 && key != "" {
			l.Add(draw.Plain, draw.Blanks(min(indent-3, 2)))
			l.Add(draw.Accent, m.Short(key, max(indent-3, 3)))
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
		{k.Levels[len(k.Levels)-1:][0] + " " + k.Bearing, "in the settings: force or metres at a place, more is higher; a bearing of the anvil"},
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

// warning is a caution: what it is about, and the caution.
type warning struct{ head, text string }

// cautions are usual ones of the trade. They permit nothing.
var cautions = []warning{
	{"Site rules", "Local codes, the site's procedure and licensed or authorised people come first; this screen permits nothing."},
	{"Standstill", "Stop, and wait until blades, anvil and web stand still: blades coast. Lock out as local code and the site's procedure say."},
	{"Lifted", "Lift the holders and see that they are lifted. Dump stored air and prove zero pressure; prove it again for as long as it can build up."},
	{"Positions", "Check that each holder is where the screen shows it. Correct any that is not."},
	{"Hands", "Keep hands away from the beam and from between holders while one travels: gaps close. Cut-resistant gloves with a blade in the hand, no gloves near turning nips."},
	{"In order", "In the order given, each move is clear of its neighbours; out of order it may not be."},
}

// ownKeys says how keys are changed, with the names of all that have some.
func ownKeys(m *model) string {
	file := m.config
	if file == "" {
		file = "bide/" + personal.ConfigFile + " in your config folder"
	}
	var all []string
	for _, name := range slices.Sorted(maps.Keys(keys.ActionNames)) {
		i := slices.IndexFunc(m.Table.All, func(b keys.Binding) bool { return b.Act == keys.ActionNames[name] && len(b.Keys) > 0 })
		if i >= 0 {
			all = append(all, name+" "+keys.ShownKey(m.Table.All[i].Keys[0], m.Theme.ASCII))
		}
	}
	return "Set them in " + file + ", in a table [keys]: undo = \"f2\", or search = [\"s\", \"f5\"]. Errors there are reported; the rest of the program is unaffected. The names, each with a key that it has now: " + strings.Join(all, ", ") + "."
}
