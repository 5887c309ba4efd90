// Package keys is the table of keys: where each works, what it asks for, and how it is shown.
// Footer and help are made from this table alone; a person's config file may change it.
package keys

import (
	"slices"

	"bide/ui/draw"
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
	OnSearching // on the page of two orders, for what a search finds
	OnOffer
	OnCautions
	OnSetup
	OnCorrection
	OnMark
	OnPrompt
	OnFilter // as on a prompt, where that is for the words of a filter
	OnSettings
	OnEnding
	OnSchedule
	Scopes  // one beyond the last
	onJobs  = OnDay | OnDayMap | OnSchedule
	OnPanes = OnDay | OnBeam | OnMoves | OnDayMap | OnHolders | OnSettings | OnSchedule
)

// Binding ties keys to an action. The footer and the help are made from these
// alone.
type Binding struct {
	Where Scope
	Act   Action
	Keys  []string // as Bubble Tea names them
	show  string   // the keys as people read them
	ascii string   // the same without arrows; empty: as show
	Word  string   // what it does, in a word for the footer; empty: not there
	Does  string   // what it does, for the help
}

// Table is the table of keys, with a person's own, as a screen shows them.
type Table struct {
	All      []Binding
	noArrows bool
}

// NewTable is the table before a person's own keys are read.
func NewTable(ascii bool) *Table { return &Table{All: bindings, noArrows: ascii} }

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
		if b.Act == a && b.show != "" && b.Where&in != 0 {
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
	return b.show
}

// bunched names keys close together, the last two alone in words.
func bunched(k *draw.Theme, named []Binding) draw.Line {
	l := k.Line()
	for i, b := range named {
		inWords := i >= len(named)-2
		if inWords && i > 0 {
			l.Add(draw.Plain, "  ")
		}
		if l.Add(draw.Accent, b.Shown(k.ASCII)); inWords {
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
