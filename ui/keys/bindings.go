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
	Pane7
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
	OnSchedule
	Scopes  // one beyond the last
	OnJobs  = OnDay | OnDayMap | OnSchedule
	OnPanes = OnDay | OnBeam | OnMoves | OnDayMap | OnHolders | OnSettings | OnSchedule
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
	{OnDay, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the job above"},
	{OnDay, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the job below"},
	{OnDay, Earlier, []string{"shift+up", "K"}, "Shift-↑", "Shift-up", "", "move the job one place earlier (also K)"},
	{OnDay, Later, []string{"shift+down", "J"}, "Shift-↓", "Shift-down", "", "move the job one place later (also J)"},
	{OnDay, None, nil, "↑↓", "up down", "pick", ""},
	{OnDay, None, nil, "Shift-↑↓", "Shift-up/down", "move job", ""},

	{OnBeam, Left, []string{"left", "h"}, "← h", "left h", "", "pick the next moving holder to the operator side"},
	{OnBeam, Right, []string{"right", "l"}, "→ l", "right l", "", "pick the next moving holder to the drive side"},
	{OnBeam, Up, []string{"up", "k"}, "↑ k", "up k", "", "the previous changeover"},
	{OnBeam, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{OnBeam | OnDayMap | OnSchedule, ZoomIn, []string{"+", "="}, "+", "", "", "zoom in, around the picked holder; in the schedule around the picked job"},
	{OnBeam | OnDayMap | OnSchedule, ZoomOut, []string{"-", "_"}, "-", "", "", "zoom out"},
	{OnBeam | OnDayMap | OnSchedule, WholeBeam, []string{"0"}, "0", "", "", "show the whole beam, or the whole schedule"},
	{OnBeam, None, nil, "←→", "left right", "holder", ""},
	{OnBeam, None, nil, "+ - 0", "", "zoom", ""},

	{OnDayMap, Up, []string{"up", "k"}, "↑ k", "up k", "", "the previous changeover"},
	{OnDayMap, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{OnDayMap, Left, []string{"left", "h"}, "← h", "left h", "", "scroll to the operator side, when zoomed in"},
	{OnDayMap, Right, []string{"right", "l"}, "→ l", "right l", "", "scroll to the drive side, when zoomed in"},
	{OnDayMap, OnlyMoved, []string{"M"}, "M", "", "", "show all holders, or only those that move"},
	{OnDayMap, HolderBefore, []string{"["}, "[", "", "", "pick the previous holder and follow its line"},
	{OnDayMap, HolderNext, []string{"]"}, "]", "", "", "pick the next holder"},
	{OnDayMap, None, nil, "↑↓", "up down", "pick", ""},

	{OnSchedule, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the job above"},
	{OnSchedule, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the job below"},
	{OnSchedule, Left, []string{"left", "h"}, "← h", "left h", "", "scroll to earlier, when zoomed in"},
	{OnSchedule, Right, []string{"right", "l"}, "→ l", "right l", "", "scroll to later, when zoomed in"},
	{OnSchedule, None, nil, "↑↓", "up down", "pick", ""},
	{OnSchedule, None, nil, "+ - 0", "", "zoom", ""},

	{OnMoves, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the move above"},
	{OnMoves, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the move below"},
	{OnMoves, Left, []string{"left", "h"}, "← h", "left h", "", "the previous changeover"},
	{OnMoves, Right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{OnMoves, None, nil, "↑↓", "up down", "move", ""},
	{OnMoves, None, nil, "←→", "left right", "changeover", ""},

	{OnHolders, Up, []string{"up", "k"}, "↑ k", "up k", "", "pick the row above"},
	{OnHolders, Down, []string{"down", "j"}, "↓ j", "down j", "", "pick the row below"},
	{OnHolders, Left, []string{"left", "h"}, "← h", "left h", "", "as of the previous job"},
	{OnHolders, Right, []string{"right", "l"}, "→ l", "right l", "", "as of the next job"},
	{OnHolders, Marking, []string{"c"}, "c", "", "condition", "set the holder's condition (good, no cut, stuck, out) with a reason, and see what that costs"},
	{OnHolders, Sort, []string{"o"}, "o", "", "sort", "sort by number, idle time, next job, moves, metres, blade metres, condition"},
	{OnHolders, Reverse, []string{"O"}, "O", "", "", "reverse the order"},
	{OnHolders, Pairs, []string{"p"}, "p", "", "changeovers", "list the changeovers by moves, and back"},

	{OnSettings, Up, []string{"up", "k"}, "↑ k", "up k", "", "a line up"},
	{OnSettings, Down, []string{"down", "j"}, "↓ j", "down j", "", "a line down"},
	{OnSettings, Left, []string{"left", "h"}, "← h", "left h", "", "the previous job"},
	{OnSettings, Right, []string{"right", "l"}, "→ l", "right l", "", "the next job"},
	{OnSettings, None, nil, "↑↓", "up down", "more", ""},
	{OnSettings, None, nil, "←→", "left right", "job", ""},

	{OnMark, MarkNoCut, []string{"n"}, "n", "", "no cut", ""},
	{OnMark, MarkStuck, []string{"s"}, "s", "", "stuck", ""},
	{OnMark, MarkOut, []string{"o"}, "o", "", "out", ""},
	{OnMark, MarkGood, []string{"g"}, "g", "", "good", ""},
	{OnMark, MarkFiled, []string{"b"}, "b", "", "as beam.toml", ""},
	{OnMark, MarkDrop, []string{"esc", "q"}, "Esc", "", "no change", ""},

	{OnPrompt, None, nil, "Enter", "", "save", ""},
	{OnPrompt, None, nil, "Esc", "", "cancel", ""},
	{OnPrompt, None, nil, "Ctrl-U", "", "clear", ""},

	{OnSmall, Up, []string{"up", "k"}, "↑ k", "up k", "", "the previous move"},
	{OnSmall, Down, []string{"down", "j"}, "↓ j", "down j", "", "the next move"},
	{OnSmall, Left, []string{"left", "h"}, "← h", "left h", "", "the previous changeover"},
	{OnSmall, Right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{OnSmall, Back, []string{"esc"}, "Esc", "", "", "stop a running search and keep the best order so far"},
	{OnSmall, None, nil, "↑↓", "jk", "step", ""},
	{OnSmall, None, nil, "←→", "hl", "job", ""},

	{OnCautions, Proceed, []string{"enter", " "}, "Enter", "", "read, go on", "the cautions are read: go to the first move (also Space)"},
	{OnCautions, Back, []string{"esc"}, "Esc", "", "leave", ""},
	{OnCautions, Right, []string{"right", "down", "l", "j"}, "↓", "down", "", "a line down, where there is more to read"},
	{OnCautions, Left, []string{"left", "up", "h", "k"}, "↑", "up", "", "a line up"},
	{OnCautions, Correct, []string{"f"}, "f", "", "correct", ""},
	{OnSetup, Confirm, []string{"enter", " "}, "Enter", "", "confirm", "confirm that the move is made: it is saved (also Space)"},
	{OnSetup, Runs, []string{"r"}, "r", "", "runs", "all moves are made and the job runs; u in the panes undoes that"},
	{OnSetup, TakeBack, []string{"u", "backspace"}, "u", "", "undo", "undo the last entry of this setup: a confirmed move, a correction, a condition (also Backspace)"},
	{OnSetup, Back, []string{"esc"}, "Esc", "", "leave", "leave the guided setup; w continues it"},
	{OnSetup, Correct, []string{"f"}, "f", "", "correct", "correct a holder's position: type where it is; the rest is planned again"},
	{OnSetup, Fault, []string{"c"}, "c", "", "fault", "a holder is stuck, can't cut or is out of service: set its condition; the rest is planned again"},
	{OnSetup, Right, []string{"right", "down", "l", "j"}, "→", "right", "", "look at the next move; one that nothing blocks can be made first (also ↓)"},
	{OnSetup, Left, []string{"left", "up", "h", "k"}, "←", "left", "", "look at the previous move (also ↑)"},
	{OnSetup, Top, []string{"home", "g"}, "Home", "", "", "back to the next move to make"},
	{OnSetup, None, nil, "←→", "left right", "look", ""},
	{OnSetup, SaveAgain, []string{"s"}, "s", "", "save again", "save again what could not be saved"},
	{OnEnding, RunEnded, []string{"y"}, "y", "", "it has ended", ""},
	{OnEnding, RunOnHold, []string{"z"}, "z", "", "on hold", ""},
	{OnEnding, Back, []string{"esc"}, "Esc", "", "still running", ""},
	{OnCorrection, Accept, []string{"enter"}, "Enter", "", "next", "go to the next field; after the last, save"},
	{OnCorrection, Back, []string{"esc"}, "Esc", "", "cancel", "close without a change"},
	{OnCorrection, NextPane, []string{"tab", "down"}, "Tab", "", "field", "the next field"},
	{OnCorrection, LastPane, []string{"shift+tab", "up"}, "Shift-Tab", "", "", "the previous field"},

	{OnHelp, Up, []string{"up", "k"}, "↑ k", "up k", "", ""},
	{OnHelp, Down, []string{"down", "j"}, "↓ j", "down j", "", ""},
	{OnHelp, None, nil, "↑↓", "up down", "more", ""},

	{OnDay | OnDayMap | OnMoves | OnSettings | OnSchedule | OnSmall | OnHelp | OnMoveTo | OnList | OnCompare | OnOffer, PageUp, []string{"pgup", "ctrl+b"}, "PgUp", "", "", "a page up (also Ctrl-B)"},
	{OnDay | OnDayMap | OnMoves | OnSettings | OnSchedule | OnSmall | OnHelp | OnMoveTo | OnList | OnCompare | OnOffer, PageDown, []string{"pgdown", "ctrl+f", " "}, "PgDn", "", "", "a page down (also Space, Ctrl-F)"},
	{OnPanes | OnMoveTo | OnList | OnCompare | OnOffer, Top, []string{"home"}, "Home", "", "", "to the first"},
	{OnPanes | OnMoveTo | OnList | OnCompare | OnOffer, Bottom, []string{"end"}, "End", "", "", "to the last"},
	{OnSmall | OnHelp, Top, []string{"home", "g"}, "Home g", "", "", "to the first"},
	{OnSmall | OnHelp, Bottom, []string{"end", "G"}, "End G", "", "", "to the last"},
	{OnJobs, None, nil, "g", "", "move to", ""},
	{OnPanes, MoveTo, []string{"g"}, "g", "", "", "move the picked job: see what each number in the sequence would cost, and choose one"},
	{OnJobs, AddJob, []string{"a"}, "a", "", "", "add a job, in a form"},
	{OnJobs, EditJob, []string{"e"}, "e", "", "", "edit the picked job"},
	{OnJobs, CopyJob, []string{"c"}, "c", "", "", "add a copy of it"},
	{OnJobs, RemoveJob, []string{"x"}, "x", "", "", "remove it from the day (undo brings it back)"},
	{OnJobs, Fix, []string{"t"}, "t", "", "", "fix it at its number in the sequence, or free it"},
	{OnJobs, OrderJob, []string{"o"}, "o", "", "", "let it come after another job, or free it"},
	{OnJobs, ShiftRule, []string{"f"}, "f", "", "", "layout: free to shift inside the trim, or centred"},
	{OnJobs, ArrangeRule, []string{"y"}, "y", "", "", "slits: as listed, groups may be reordered, any order"},
	{OnJobs, Replan, []string{"n"}, "n", "", "", "replan its layout: drop the one that an accepted search chose"},
	{OnJobs, ReplanAll, []string{"N"}, "N", "", "", "replan the layouts of all jobs"},
	{OnJobs, MarkRunning, []string{"r"}, "r", "", "", "mark it as running, or waiting again"},
	{OnJobs, MarkDone, []string{"d"}, "d", "", "", "mark it as done"},
	{OnJobs, Hold, []string{"z"}, "z", "", "", "put it on hold"},
	{OnJobs, LeftOut, []string{"Z"}, "Z", "", "", "list the jobs done or on hold, to bring one back"},
	{OnPanes, CompareOrders, []string{"v"}, "v", "", "", "compare this order with the file's, or with the one that a search found"},
	{OnPanes, SaveDay, []string{"ctrl+s", "W"}, "Ctrl-S W", "", "", "save the day, with the layouts that a search chose"},
	{OnPanes | OnSmall | OnCautions | OnSetup, Reread, []string{"R"}, "R", "", "", "read the shop's files again, when they have changed"},

	{OnMoveTo | OnList | OnCompare | OnOffer, Up, []string{"up", "k"}, "↑ k", "up k", "", "the one above"},
	{OnMoveTo | OnList | OnCompare | OnOffer, Down, []string{"down", "j"}, "↓ j", "down j", "", "the one below"},
	{OnMoveTo, None, nil, "↑↓", "up down", "number", ""},
	{OnMoveTo, Choose, []string{"enter"}, "Enter", "", "move here", "move the job to the picked number"},
	{OnMoveTo, Cheapest, []string{"b"}, "b", "", "cheapest", "go to the number that costs least, of those known"},
	{OnMoveTo, Back, []string{"esc"}, "Esc", "", "cancel", "leave the job where it was"},

	{OnJobForm, Up, []string{"up"}, "↑", "up", "", "the previous field (also Shift-Tab)"},
	{OnJobForm, Down, []string{"down"}, "↓", "down", "", "the next field (also Tab)"},
	{OnJobForm, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", ""},
	{OnJobForm, NextPane, []string{"tab"}, "Tab", "", "", ""},
	{OnJobForm, None, nil, "↑↓", "up down", "field", ""},
	{OnJobForm, None, nil, "←→", "left right", "in it", ""},
	{OnJobForm, Choose, []string{"enter", "ctrl+s"}, "Enter", "", "save", "save the job as typed; where something is wrong, go there"},
	{OnNames, Up, []string{"up"}, "↑", "up", "", "the name above, and out of the list"},
	{OnNames, Down, []string{"down"}, "↓", "down", "", "the name below; after the last, the next field"},
	{OnNames, None, nil, "↑↓", "up down", "name", ""},
	{OnNames, Choose, []string{"enter"}, "Enter", "", "use it", "use the picked name, and go on to the next field (also Tab)"},
	{OnNames, NextPane, []string{"tab"}, "Tab", "", "", ""},
	{OnNames, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the previous field"},
	{OnNames, Back, []string{"esc"}, "Esc", "", "none of these", "leave the list; what was typed stays"},
	{OnJobForm, Back, []string{"esc"}, "Esc", "", "close", "close the form; what was typed is kept"},

	{OnCompare | OnOffer, None, nil, "↑↓", "up down", "job", ""},
	{OnCompare, Choose, []string{"enter"}, "Enter", "", "go to it", "go to the picked job"},
	{OnOffer, Choose, []string{"enter"}, "Enter", "", "accept", "accept the order that a search found, with its layouts"},
	{OnOffer, Discard, []string{"x"}, "x", "", "discard", "discard it (undo brings it back)"},
	{OnCompare | OnOffer, OtherOrder, []string{"tab"}, "Tab", "", "switch", "compare with another order"},
	{OnCompare | OnOffer, Back, []string{"esc", "v"}, "Esc", "", "back", "back to the panes; the order that was found is kept"},

	{OnList, None, nil, "↑↓", "up down", "pick", ""},
	{OnList, Choose, []string{"enter"}, "Enter", "", "choose", "what the list is for"},
	{OnList, RemoveJob, []string{"x"}, "x", "", "", "remove a job that is done or on hold from the day"},
	{OnList, Back, []string{"esc"}, "Esc", "", "back", "back to the panes"},

	{OnPanes, FilterRows, []string{"/"}, "/", "", "", "show only the rows with some words; for a holder its number or h31. Esc while typing shows all again"},
	{OnPanes, ToggleMouse, []string{"m"}, "m", "", "", "mouse on or off: click picks, wheel scrolls; off, the terminal selects text"},
	{OnPanes, Undo, []string{"u"}, "u", "", "", "undo the last change, as often as you like"},
	{OnPanes, Redo, []string{"U", "ctrl+r"}, "U", "", "", "redo (also Ctrl-R)"},
	{OnBeam | OnMoves | OnSmall, None, nil, "w", "", "set up", ""},
	{OnPanes | OnSmall, Setup, []string{"w"}, "w", "", "", "guided setup: the next changeover at the machine, move by move"},
	{OnPanes, Search, []string{"s"}, "s", "", "search", "search for the best order: least late, then least setup time; Esc stops the search and keeps the best so far"},
	{OnPanes, SearchMoves, []string{"S"}, "S", "", "", "search for the fewest moves"},
	{OnPanes, NextPane, []string{"tab"}, "Tab", "", "pane", "the next pane"},
	{OnPanes, LastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the previous pane"},
	{OnPanes, Pane1, []string{"1"}, "1", "", "", "the day"},
	{OnPanes, Pane2, []string{"2"}, "2", "", "", "the beam"},
	{OnPanes, Pane3, []string{"3"}, "3", "", "", "the moves"},
	{OnPanes, Pane4, []string{"4"}, "4", "", "", "the day map: the day along the beam"},
	{OnPanes, Pane5, []string{"5"}, "5", "", "", "the holders"},
	{OnPanes, Pane6, []string{"6"}, "6", "", "", "the settings: what to set at the knife, and what the blades do to the anvil"},
	{OnPanes, Pane7, []string{"7"}, "7", "", "", "the schedule: the day along the clock, with due times, lateness and the end of the shift"},
	{OnDay | OnBeam | OnMoves | OnSchedule, Schedule, []string{"b"}, "b", "", "", "the beam or the schedule above the list"},
	{OnPanes, Enlarge, []string{"enter"}, "Enter", "", "", "the pane over the whole screen, and back; from another page to the beam"},
	{OnPanes | OnHelp, Back, []string{"esc"}, "Esc", "", "", "back to all panes"},
	{OnHelp, Back, []string{"?", "q"}, "Esc", "", "back", ""},

	{OnQuestion, Yes, []string{"y", "Y"}, "y", "", "quit", ""},
	{OnQuestion, None, nil, "any other key", "", "stay", ""},

	{OnPanes | OnSmall | OnCautions | OnSetup | OnEnding | OnMoveTo | OnList | OnCompare | OnOffer, Help, []string{"?"}, "?", "", "help", "this page, at what has the keys"},
	{OnCorrection, Help, []string{"f1"}, "F1", "", "help", "this page, at the form"},
	{OnJobForm | OnNames, Help, []string{"f1"}, "F1", "", "", "this page, at the form"},
	{OnPanes | OnSmall | OnCautions | OnSetup | OnEnding, Quit, []string{"q"}, "q", "", "quit", "quit; asks first if something would be lost"},
	{OnPanes | OnSmall | OnHelp | OnQuestion | OnCautions | OnSetup | OnEnding | OnCorrection | OnMoveTo | OnJobForm | OnNames | OnList | OnCompare | OnOffer | OnMark | OnPrompt, Abort, []string{"ctrl+c"}, "Ctrl-C", "", "", "quit without asking"},
	{OnPanes | OnSmall | OnHelp | OnQuestion | OnCautions | OnSetup | OnEnding | OnCorrection | OnMoveTo | OnJobForm | OnNames | OnList | OnCompare | OnOffer | OnMark | OnPrompt, Suspend, []string{"ctrl+z"}, "Ctrl-Z", "", "", "to the shell; fg comes back"},
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
