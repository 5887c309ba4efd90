// Package keys is the table of keys: where each works, what it asks for, and how it is shown.
// Footer and help are made from this table alone; a person's config file may change it.
package keys

import (
	"bide/ui/draw"
	"slices"
)

// Action is what a key asks for.
type Action uint8

const (
	None Action = iota
	Quit
	Abort // at once, whatever is open
	Suspend
	Help
	Back
	NextPane
	LastPane
	Pane1
	Pane2
	Pane3
	Pane4
	Pane5
	Pane6
	Enlarge
	Up
	Down
	Left
	Right
	PageUp
	PageDown
	Top
	Bottom
	Earlier
	Later
	Undo
	Redo
	Search
	SearchMoves
	ZoomIn
	ZoomOut
	WholeBeam
	OnlyMoved
	Schedule
	HolderBefore
	HolderNext
	MoveTo
	Cheapest
	Choose
	AddJob
	EditJob
	CopyJob
	RemoveJob
	Fix
	OrderJob
	ShiftRule
	ArrangeRule
	Replan
	ReplanAll
	MarkRunning
	MarkDone
	Hold
	LeftOut
	CompareOrders
	Discard
	OtherOrder
	SaveDay
	Reread
	Yes
	Setup
	Proceed
	Confirm
	TakeBack
	Runs
	Correct
	Fault
	SaveAgain
	RunEnded
	RunOnHold
	Accept
	FilterRows
	ToggleMouse
	Sort
	Reverse
	Pairs
	Marking
	MarkGood
	MarkNoCut
	MarkStuck
	MarkOut
	MarkFiled
	MarkDrop
)

// Scope is where a binding works; several may be joined.
type Scope uint32

const (
	OnDay Scope = 1 << iota
	OnBeam
	OnMoves
	OnSmall
	OnHelp
	OnQuestion
	OnDayMap
	OnHolders
	OnMoveTo
	OnJobForm
	OnNames
	OnList
	OnCompare
	OnOffer
	OnCautions
	OnSetup
	OnCorrection
	OnMark
	OnPrompt
	OnSettings
	OnEnding
	Scopes  // one beyond the last
	OnJobs  = OnDay | OnDayMap
	OnPanes = OnDay | OnBeam | OnMoves | OnDayMap | OnHolders | OnSettings
)

// Binding ties keys to an action. The footer and the help are made from these
// alone.
type Binding struct {
	Where Scope
	Act   Action
	Keys  []string // as Bubble Tea names them
	Show  string   // the keys as people read them
	ascii string   // the same without arrows; empty: as show
	Word  string   // what it does, in a word for the footer; empty: not there
	Does  string   // what it does, for the help
}

// Bindings are all keys, the more needed first. The footer takes them in this
// order, and always the last two.
var Bindings = []Binding{
	{OnDay, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the job before"},
	{OnDay, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next job"},
	{OnDay, Earlier, []string{"K", "shift+up"}, "K", "", "", "move the job up, one turn earlier (also shift ↑)"},
	{OnDay, Later, []string{"J", "shift+down"}, "J", "", "", "move the job down, one turn later (also shift ↓)"},
	{OnDay, None, nil, "↑↓", "up down", "pick", ""},
	{OnDay, None, nil, "K J", "", "move job", ""},

	{OnBeam, Left, []string{"left", "h"}, "← h", "left h", "", "the moved holder nearer to the operator side"},
	{OnBeam, Right, []string{"right", "l"}, "→ l", "right l", "", "the moved holder nearer to the drive side"},
	{OnBeam, Up, []string{"up", "k"}, "↑ k", "up k", "", "the changeover before"},
	{OnBeam, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{OnBeam | OnDayMap, ZoomIn, []string{"+", "="}, "+", "", "", "look nearer, around the picked holder; on the clock, the picked job"},
	{OnBeam | OnDayMap, ZoomOut, []string{"-", "_"}, "-", "", "", "look from farther off"},
	{OnBeam | OnDayMap, WholeBeam, []string{"0"}, "0", "", "", "see the whole beam, or all of the clock"},
	{OnBeam, None, nil, "←→", "left right", "holder", ""},
	{OnBeam, None, nil, "+ - 0", "", "zoom", ""},

	{OnDayMap, Up, []string{"up", "k"}, "↑ k", "up k", "", "the changeover before"},
	{OnDayMap, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{OnDayMap, Left, []string{"left", "h"}, "← h", "left h", "", "along the beam to the operator side, or to earlier, when near"},
	{OnDayMap, Right, []string{"right", "l"}, "→ l", "right l", "", "along the beam to the drive side, or to later, when near"},
	{OnDayMap, OnlyMoved, []string{"M"}, "M", "", "", "all holders, or only those that move"},
	{OnDayMap, Schedule, []string{"b"}, "b", "", "", "across the screen the beam, or the clock: due times, lateness and the shift's end"},
	{OnDayMap, HolderBefore, []string{"["}, "[", "", "", "pick the holder before, to follow its line"},
	{OnDayMap, HolderNext, []string{"]"}, "]", "", "", "pick the next holder"},
	{OnDayMap, None, nil, "↑↓", "up down", "pick", ""},
	{OnDayMap, None, nil, "b", "", "beam/clock", ""},

	{OnMoves, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the move before"},
	{OnMoves, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next move"},
	{OnMoves, Left, []string{"left", "h"}, "← h", "left h", "", "the changeover before"},
	{OnMoves, Right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{OnMoves, None, nil, "↑↓", "up down", "move", ""},
	{OnMoves, None, nil, "←→", "left right", "changeover", ""},

	{OnHolders, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the row before"},
	{OnHolders, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next row"},
	{OnHolders, Left, []string{"left", "h"}, "← h", "left h", "", "see it from the job before"},
	{OnHolders, Right, []string{"right", "l"}, "→ l", "right l", "", "see it from the next job"},
	{OnHolders, Marking, []string{"c"}, "c", "", "mark", "mark the holder no cut, stuck, out or good, with a reason, and see what that costs"},
	{OnHolders, Sort, []string{"o"}, "o", "", "order", "order by number, idle time, next need, moves, metres, what the edge has cut, state"},
	{OnHolders, Reverse, []string{"O"}, "O", "", "", "turn the order round"},
	{OnHolders, Pairs, []string{"p"}, "p", "", "pairs", "the changeovers by the moves they take, and back"},

	{OnSettings, Up, []string{"up", "k"}, "↑ k", "up k", "", "a line up"},
	{OnSettings, Down, []string{"down", "j"}, "↓ j", "down j", "", "a line down"},
	{OnSettings, Left, []string{"left", "h"}, "← h", "left h", "", "the job before"},
	{OnSettings, Right, []string{"right", "l"}, "→ l", "right l", "", "the next job"},
	{OnSettings, None, nil, "↑↓", "up down", "more", ""},
	{OnSettings, None, nil, "←→", "left right", "job", ""},

	{OnMark, MarkNoCut, []string{"n"}, "n", "", "no cut", ""},
	{OnMark, MarkStuck, []string{"s"}, "s", "", "stuck", ""},
	{OnMark, MarkOut, []string{"o"}, "o", "", "out", ""},
	{OnMark, MarkGood, []string{"g"}, "g", "", "good", ""},
	{OnMark, MarkFiled, []string{"b"}, "b", "", "as beam.toml", ""},
	{OnMark, MarkDrop, []string{"esc", "q"}, "Esc", "", "leave it", ""},

	{OnPrompt, None, nil, "Enter", "", "keep", ""},
	{OnPrompt, None, nil, "Esc", "", "drop", ""},
	{OnPrompt, None, nil, "Ctrl-U", "", "empty", ""},

	{OnSmall, Up, []string{"up", "k"}, "↑ k", "up k", "", "the move before"},
	{OnSmall, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next move"},
	{OnSmall, Left, []string{"left", "h"}, "← h", "left h", "", "the changeover before"},
	{OnSmall, Right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{OnSmall, Back, []string{"esc"}, "Esc", "", "", "stop a running search and keep the best order so far"},
	{OnSmall, None, nil, "↑↓", "jk", "step", ""},
	{OnSmall, None, nil, "←→", "hl", "job", ""},

	{OnCautions, Proceed, []string{"enter", " "}, "Enter", "", "read, go on", "the cautions are read: to the first move (also Space)"},
	{OnCautions, Back, []string{"esc"}, "Esc", "", "leave", ""},
	{OnCautions, Right, []string{"right", "down", "l", "j"}, "↓", "down", "", "a line down, where there is more to read"},
	{OnCautions, Left, []string{"left", "up", "h", "k"}, "↑", "up", "", "a line up"},
	{OnCautions, Correct, []string{"f"}, "f", "", "elsewhere", ""},
	{OnSetup, Confirm, []string{"enter", " "}, "Enter", "", "made", "the move is made: it is saved, then ticked (also Space)"},
	{OnSetup, Runs, []string{"r"}, "r", "", "runs", "all moves are made: the job is set up and runs; u in the panes takes that back"},
	{OnSetup, TakeBack, []string{"u", "backspace"}, "u", "", "undo", "take back what was told last on this walk, move by move: a tick, what was found, a mark (also Backspace)"},
	{OnSetup, Back, []string{"esc"}, "Esc", "", "leave", "leave the walk; w goes on with it"},
	{OnSetup, Correct, []string{"f"}, "f", "", "elsewhere", "a holder stands elsewhere: type where; the rest is planned again"},
	{OnSetup, Fault, []string{"c"}, "c", "", "trouble", "a holder is stuck, without air or out of service: mark it; the rest is planned again"},
	{OnSetup, Right, []string{"right", "down", "l", "j"}, "→", "right", "", "look at the move after; what isn't in its way can be made before (also ↓)"},
	{OnSetup, Left, []string{"left", "up", "h", "k"}, "←", "left", "", "look at the move before (also ↑)"},
	{OnSetup, Top, []string{"home", "g"}, "Home", "", "", "back to the next move"},
	{OnSetup, None, nil, "←→", "left right", "look", ""},
	{OnSetup, SaveAgain, []string{"s"}, "s", "", "save again", "save what could not be saved"},
	{OnEnding, RunEnded, []string{"y"}, "y", "", "it has", ""},
	{OnEnding, RunOnHold, []string{"z"}, "z", "", "set aside", ""},
	{OnEnding, Back, []string{"esc"}, "Esc", "", "it runs still", ""},
	{OnCorrection, Accept, []string{"enter"}, "Enter", "", "next", "take the field; after the last, all of it"},
	{OnCorrection, Back, []string{"esc"}, "Esc", "", "drop", "drop what was typed"},
	{OnCorrection, NextPane, []string{"tab", "down"}, "Tab", "", "field", "the next field"},
	{OnCorrection, LastPane, []string{"shift+tab", "up"}, "Shift-Tab", "", "", "the field before"},

	{OnHelp, Up, []string{"up", "k"}, "↑ k", "up k", "", ""},
	{OnHelp, Down, []string{"down", "j"}, "↓ j", "down j", "", ""},
	{OnHelp, None, nil, "↑↓", "up down", "more", ""},

	{OnDay | OnDayMap | OnMoves | OnSettings | OnSmall | OnHelp | OnMoveTo | OnList | OnCompare | OnOffer, PageUp, []string{"pgup", "ctrl+b"}, "PgUp", "", "", "a page up (also Ctrl-B)"},
	{OnDay | OnDayMap | OnMoves | OnSettings | OnSmall | OnHelp | OnMoveTo | OnList | OnCompare | OnOffer, PageDown, []string{"pgdown", "ctrl+f", " "}, "PgDn", "", "", "a page down (also Space, Ctrl-F)"},
	{OnPanes | OnMoveTo | OnList | OnCompare | OnOffer, Top, []string{"home"}, "Home", "", "", "to the first"},
	{OnPanes | OnMoveTo | OnList | OnCompare | OnOffer, Bottom, []string{"end"}, "End", "", "", "to the last"},
	{OnSmall | OnHelp, Top, []string{"home", "g"}, "Home g", "", "", "to the first"},
	{OnSmall | OnHelp, Bottom, []string{"end", "G"}, "End G", "", "", "to the last"},
	{OnJobs, None, nil, "g", "", "lift", ""},
	{OnPanes, MoveTo, []string{"g"}, "g", "", "", "lift the picked job: see what every gap costs, and drop it into one"},
	{OnJobs, AddJob, []string{"a"}, "a", "", "", "add a job, in a form"},
	{OnJobs, EditJob, []string{"e"}, "e", "", "", "edit the picked job"},
	{OnJobs, CopyJob, []string{"c"}, "c", "", "", "add a copy of it"},
	{OnJobs, RemoveJob, []string{"x"}, "x", "", "", "take it out of the day (undo brings it back)"},
	{OnJobs, Fix, []string{"t"}, "t", "", "", "fix it to the turn that it has, or free it"},
	{OnJobs, OrderJob, []string{"o"}, "o", "", "", "let it come after another job, or no more"},
	{OnJobs, ShiftRule, []string{"f"}, "f", "", "", "let its layout shift inside the trim, or run centred"},
	{OnJobs, ArrangeRule, []string{"y"}, "y", "", "", "slits as listed, entries may change places, any slit anywhere"},
	{OnJobs, Replan, []string{"n"}, "n", "", "", "plan its layout afresh: forget the one that an accepted search chose"},
	{OnJobs, ReplanAll, []string{"N"}, "N", "", "", "the same for all jobs"},
	{OnJobs, MarkRunning, []string{"r"}, "r", "", "", "mark it as running, or no more"},
	{OnJobs, MarkDone, []string{"d"}, "d", "", "", "mark it as done"},
	{OnJobs, Hold, []string{"z"}, "z", "", "", "set it aside"},
	{OnJobs, LeftOut, []string{"Z"}, "Z", "", "", "what is done or set aside, to bring it back"},
	{OnPanes, CompareOrders, []string{"v"}, "v", "", "", "two orders side by side: this one and the file's, or the one that a search found"},
	{OnPanes, SaveDay, []string{"ctrl+s", "W"}, "Ctrl-S W", "", "", "save the day in day.toml, layouts that a search chose too"},
	{OnPanes | OnSmall | OnCautions | OnSetup, Reread, []string{"R"}, "R", "", "", "read the shop's files again, when another has changed them"},

	{OnMoveTo | OnList | OnCompare | OnOffer, Up, []string{"up", "k"}, "↑ k", "up k", "", "the one before"},
	{OnMoveTo | OnList | OnCompare | OnOffer, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next one"},
	{OnMoveTo, None, nil, "↑↓", "up down", "gap", ""},
	{OnMoveTo, Choose, []string{"enter"}, "Enter", "", "drop", "drop the job into the picked gap"},
	{OnMoveTo, Cheapest, []string{"b"}, "b", "", "cheapest", "to the gap that costs least, of those known"},
	{OnMoveTo, Back, []string{"esc"}, "Esc", "", "put back", "put the job back where it was"},

	{OnJobForm, Up, []string{"up"}, "↑", "up", "", "the field before (also Shift-Tab)"},
	{OnJobForm, Down, []string{"down"}, "↓", "down", "", "the next field (also Tab)"},
	{OnJobForm, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", ""},
	{OnJobForm, NextPane, []string{"tab"}, "Tab", "", "", ""},
	{OnJobForm, None, nil, "↑↓", "up down", "field", ""},
	{OnJobForm, None, nil, "←→", "left right", "in it", ""},
	{OnJobForm, Choose, []string{"enter", "ctrl+s"}, "Enter", "", "take it", "take the job as typed; where something is wrong, go there"},
	{OnNames, Up, []string{"up"}, "↑", "up", "", "the name before, and out of the list"},
	{OnNames, Down, []string{"down"}, "↓", "down", "", "the next name; behind the last, the next field"},
	{OnNames, None, nil, "↑↓", "up down", "name", ""},
	{OnNames, Choose, []string{"enter"}, "Enter", "", "take it", "take the picked name, and go on to the next field (also Tab)"},
	{OnNames, NextPane, []string{"tab"}, "Tab", "", "", ""},
	{OnNames, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the field before"},
	{OnNames, Back, []string{"esc"}, "Esc", "", "none of these", "out of the list, what was typed stays"},
	{OnJobForm, Back, []string{"esc"}, "Esc", "", "put away", "put the form away; what was typed is kept"},

	{OnCompare | OnOffer, None, nil, "↑↓", "up down", "job", ""},
	{OnCompare, Choose, []string{"enter"}, "Enter", "", "go to it", "go to the picked job"},
	{OnOffer, Choose, []string{"enter"}, "Enter", "", "accept", "accept the order that a search found; its layouts stay with the jobs"},
	{OnOffer, Discard, []string{"x"}, "x", "", "discard", "discard it (undo brings it back)"},
	{OnCompare | OnOffer, OtherOrder, []string{"tab"}, "Tab", "", "other", "another order on the left"},
	{OnCompare | OnOffer, Back, []string{"esc", "v"}, "Esc", "", "back", "back to the panes; an order that was found waits"},

	{OnList, None, nil, "↑↓", "up down", "pick", ""},
	{OnList, Choose, []string{"enter"}, "Enter", "", "choose", "what the list is for"},
	{OnList, RemoveJob, []string{"x"}, "x", "", "", "of the left out: take it out of the day"},
	{OnList, Back, []string{"esc"}, "Esc", "", "back", "back to the panes"},

	{OnPanes, FilterRows, []string{"/"}, "/", "", "", "show only the rows that have some words, of a holder its number or h31; Esc while typing shows all again"},
	{OnPanes, ToggleMouse, []string{"m"}, "m", "", "", "mouse on or off: click picks, wheel scrolls; off, the terminal selects text"},
	{OnPanes, Undo, []string{"u"}, "u", "", "", "take back the last change, as often as you like"},
	{OnPanes, Redo, []string{"U", "ctrl+r"}, "U", "", "", "do it again (also Ctrl-R)"},
	{OnBeam | OnMoves | OnSmall, None, nil, "w", "", "walk", ""},
	{OnPanes | OnSmall, Setup, []string{"w"}, "w", "", "", "walk through the next changeover at the machine, move by move"},
	{OnPanes, Search, []string{"s"}, "s", "", "search", "search for the best order: least late, then least setup time; Esc stops it and keeps the best so far"},
	{OnPanes, SearchMoves, []string{"S"}, "S", "", "", "the same for the fewest moves"},
	{OnPanes, NextPane, []string{"tab"}, "Tab", "", "pane", "the next pane"},
	{OnPanes, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the pane before"},
	{OnPanes, Pane1, []string{"1"}, "1", "", "", "the day"},
	{OnPanes, Pane2, []string{"2"}, "2", "", "", "the beam"},
	{OnPanes, Pane3, []string{"3"}, "3", "", "", "the moves"},
	{OnPanes, Pane4, []string{"4"}, "4", "", "", "the day as tracks along the beam"},
	{OnPanes, Pane5, []string{"5"}, "5", "", "", "the holders"},
	{OnPanes, Pane6, []string{"6"}, "6", "", "", "the settings: what is set at the knife, and what the blades do to the anvil"},
	{OnPanes, Enlarge, []string{"enter"}, "Enter", "", "", "the pane over the whole screen, and back; from 4, 5 and 6 to the beam"},
	{OnPanes | OnHelp, Back, []string{"esc"}, "Esc", "", "", "back to all panes"},
	{OnHelp, Back, []string{"?", "q"}, "Esc", "", "back", ""},

	{OnQuestion, Yes, []string{"y", "Y"}, "y", "", "quit", ""},
	{OnQuestion, None, nil, "any other key", "", "stay", ""},

	{OnPanes | OnSmall | OnCautions | OnSetup | OnEnding | OnMoveTo | OnList | OnCompare | OnOffer, Help, []string{"?"}, "?", "", "help", "this page, at what has the keys"},
	{OnCorrection, Help, []string{"f1"}, "F1", "", "help", "this page, at the form"},
	{OnJobForm | OnNames, Help, []string{"f1"}, "F1", "", "", "this page, at the form"},
	{OnPanes | OnSmall | OnCautions | OnSetup | OnEnding, Quit, []string{"q"}, "q", "", "quit", "leave; asks first when the order was changed"},
	{OnPanes | OnSmall | OnHelp | OnQuestion | OnCautions | OnSetup | OnEnding | OnCorrection | OnMoveTo | OnJobForm | OnNames | OnList | OnCompare | OnOffer | OnMark | OnPrompt, Abort, []string{"ctrl+c"}, "Ctrl-C", "", "", "leave at once"},
	{OnPanes | OnSmall | OnHelp | OnQuestion | OnCautions | OnSetup | OnEnding | OnCorrection | OnMoveTo | OnJobForm | OnNames | OnList | OnCompare | OnOffer | OnMark | OnPrompt, Suspend, []string{"ctrl+z"}, "Ctrl-Z", "", "", "back to the shell for a while (fg returns)"},
}

// keyTable is the table of keys, with a person's own, as a screen shows them.
type Table struct {
	All      []Binding
	noArrows bool
}

// newKeyTable is the table before a person's own keys are read.
func NewTable(ascii bool) *Table { return &Table{All: Bindings, noArrows: ascii} }

// ActionOf is what a key asks for in a scope.
func (t *Table) ActionOf(key string, in Scope) Action {
	for _, b := range t.All {
		if b.Where&in != 0 && slices.Contains(b.Keys, key) {
			return b.Act
		}
	}
	return None
}

// KeyFor is the key for an action, as it is shown.
func (t *Table) KeyFor(a Action) string { return t.KeyIn(a, ^Scope(0)) }

// KeyIn is the key for an action in some scopes, as it is shown.
func (t *Table) KeyIn(a Action, in Scope) string {
	for _, b := range t.All {
		if b.Act == a && b.Show != "" && b.Where&in != 0 {
			return b.Shown(t.noArrows)
		}
	}
	return ""
}

// Shown is how the binding's keys are shown.
func (b Binding) Shown(ascii bool) string {
	if ascii && b.ascii != "" {
		return b.ascii
	}
	return b.Show
}

// bunched names keys close together, the last two alone in words.
func bunched(k *draw.Theme, named []Binding) draw.Line {
	l := k.Line()
	for i, b := range named {
		told := i >= len(named)-2
		if told && i > 0 {
			l.Add(draw.Plain, "  ")
		}
		if l.Add(draw.Accent, b.Shown(k.ASCII)); told {
			l.Add(draw.Faint, " "+b.Word)
		}
	}
	return l
}

// Footer names the keys of a scope in w cells: the last two, help and quit, and
// before them as many others as there is room for.
func Footer(k *draw.Theme, t *Table, in Scope, w int) draw.Line {
	var named []Binding
	for _, b := range t.All {
		if b.Where&in != 0 && b.Word != "" {
			named = append(named, b)
		}
	}
	for ; ; named = slices.Delete(named, len(named)-3, len(named)-2) {
		l := k.Line()
		for i, b := range named {
			if i > 0 {
				l.Add(draw.Plain, "  ")
			}
			l.Add(draw.Accent, b.Shown(k.ASCII))
			l.Add(draw.Faint, " "+b.Word)
		}
		if l.Width > w && in == OnSmall {
			l = bunched(k, named)
		}
		if l.Width <= w || len(named) < 3 {
			return l.Fit(w)
		}
	}
}
