package ui

import (
	"bide/ui/draw"
	"slices"
)

// action is what a key asks for.
type action uint8

const (
	nothing action = iota
	quit
	abort // at once, whatever is open
	suspend
	help
	back
	nextPane
	lastPane
	pane1
	pane2
	pane3
	pane4
	pane5
	pane6
	enlarge
	up
	down
	left
	right
	pageUp
	pageDown
	top
	bottom
	earlier
	later
	undo
	redo
	seek
	seekMoves
	nearer
	farther
	wholeBeam
	onlyMoved
	overTime
	holderBefore
	holderNext
	liftJob
	cheapest
	choose
	addJob
	editJob
	copyJob
	removeJob
	lockTurn
	orderJob
	shiftRule
	arrangeRule
	afresh
	allAfresh
	markRunning
	markDone
	setAside
	leftOut
	compareOrders
	discard
	otherOrder
	saveDay
	readAgain
	yes
	walkOn
	proceed
	tickMove
	untickMove
	setUp
	asFound
	trouble
	saveAgain
	runEnded
	runWaits
	accept
	filterRows
	toggleMouse
	orderBy
	turnRound
	otherView
	marking
	markGood
	markNoCut
	markStuck
	markOut
	markFiled
	markDrop
)

// scope is where a binding works; several may be joined.
type scope uint32

const (
	onDay scope = 1 << iota
	onBeam
	onMoves
	onSmall
	onHelp
	onQuestion
	onTracks
	onHolders
	onLift
	onJobForm
	onNames
	onList
	onCompare
	onOffer
	onCautions
	onWalk
	onForm
	onMark
	onPrompt
	onSettings
	onEnding
	scopes // one beyond the last
	onJobs = onDay | onTracks
	panes  = onDay | onBeam | onMoves | onTracks | onHolders | onSettings
)

// binding ties keys to an action. The footer and the help are made from these
// alone.
type binding struct {
	where scope
	act   action
	keys  []string // as Bubble Tea names them
	show  string   // the keys as people read them
	ascii string   // the same without arrows; empty: as show
	word  string   // what it does, in a word for the footer; empty: not there
	does  string   // what it does, for the help
}

// bindings are all keys, the more needed first. The footer takes them in this
// order, and always the last two.
var bindings = []binding{
	{onDay, up, []string{"up", "k"}, "↑ k", "up k", "", "pick the job before"},
	{onDay, down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next job"},
	{onDay, earlier, []string{"K", "shift+up"}, "K", "", "", "move the job up, one turn earlier (also shift ↑)"},
	{onDay, later, []string{"J", "shift+down"}, "J", "", "", "move the job down, one turn later (also shift ↓)"},
	{onDay, nothing, nil, "↑↓", "up down", "pick", ""},
	{onDay, nothing, nil, "K J", "", "move job", ""},

	{onBeam, left, []string{"left", "h"}, "← h", "left h", "", "the moved holder nearer to the operator side"},
	{onBeam, right, []string{"right", "l"}, "→ l", "right l", "", "the moved holder nearer to the drive side"},
	{onBeam, up, []string{"up", "k"}, "↑ k", "up k", "", "the changeover before"},
	{onBeam, down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{onBeam | onTracks, nearer, []string{"+", "="}, "+", "", "", "look nearer, around the picked holder; on the clock, the picked job"},
	{onBeam | onTracks, farther, []string{"-", "_"}, "-", "", "", "look from farther off"},
	{onBeam | onTracks, wholeBeam, []string{"0"}, "0", "", "", "see the whole beam, or all of the clock"},
	{onBeam, nothing, nil, "←→", "left right", "holder", ""},
	{onBeam, nothing, nil, "+ - 0", "", "zoom", ""},

	{onTracks, up, []string{"up", "k"}, "↑ k", "up k", "", "the changeover before"},
	{onTracks, down, []string{"down", "j"}, "↓ j", "down j", "", "the next changeover"},
	{onTracks, left, []string{"left", "h"}, "← h", "left h", "", "along the beam to the operator side, or to earlier, when near"},
	{onTracks, right, []string{"right", "l"}, "→ l", "right l", "", "along the beam to the drive side, or to later, when near"},
	{onTracks, onlyMoved, []string{"M"}, "M", "", "", "all holders, or only those that move"},
	{onTracks, overTime, []string{"b"}, "b", "", "", "across the screen the beam, or the clock: due times, lateness and the shift's end"},
	{onTracks, holderBefore, []string{"["}, "[", "", "", "pick the holder before, to follow its line"},
	{onTracks, holderNext, []string{"]"}, "]", "", "", "pick the next holder"},
	{onTracks, nothing, nil, "↑↓", "up down", "pick", ""},
	{onTracks, nothing, nil, "b", "", "beam/clock", ""},

	{onMoves, up, []string{"up", "k"}, "↑ k", "up k", "", "pick the move before"},
	{onMoves, down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next move"},
	{onMoves, left, []string{"left", "h"}, "← h", "left h", "", "the changeover before"},
	{onMoves, right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{onMoves, nothing, nil, "↑↓", "up down", "move", ""},
	{onMoves, nothing, nil, "←→", "left right", "changeover", ""},

	{onHolders, up, []string{"up", "k"}, "↑ k", "up k", "", "pick the row before"},
	{onHolders, down, []string{"down", "j"}, "↓ j", "down j", "", "pick the next row"},
	{onHolders, left, []string{"left", "h"}, "← h", "left h", "", "see it from the job before"},
	{onHolders, right, []string{"right", "l"}, "→ l", "right l", "", "see it from the next job"},
	{onHolders, marking, []string{"c"}, "c", "", "mark", "mark the holder no cut, stuck, out or good, with a reason, and see what that costs"},
	{onHolders, orderBy, []string{"o"}, "o", "", "order", "order by number, idle time, next need, moves, metres, what the edge has cut, state"},
	{onHolders, turnRound, []string{"O"}, "O", "", "", "turn the order round"},
	{onHolders, otherView, []string{"p"}, "p", "", "pairs", "the changeovers by the moves they take, and back"},

	{onSettings, up, []string{"up", "k"}, "↑ k", "up k", "", "a line up"},
	{onSettings, down, []string{"down", "j"}, "↓ j", "down j", "", "a line down"},
	{onSettings, left, []string{"left", "h"}, "← h", "left h", "", "the job before"},
	{onSettings, right, []string{"right", "l"}, "→ l", "right l", "", "the next job"},
	{onSettings, nothing, nil, "↑↓", "up down", "more", ""},
	{onSettings, nothing, nil, "←→", "left right", "job", ""},

	{onMark, markNoCut, []string{"n"}, "n", "", "no cut", ""},
	{onMark, markStuck, []string{"s"}, "s", "", "stuck", ""},
	{onMark, markOut, []string{"o"}, "o", "", "out", ""},
	{onMark, markGood, []string{"g"}, "g", "", "good", ""},
	{onMark, markFiled, []string{"b"}, "b", "", "as beam.toml", ""},
	{onMark, markDrop, []string{"esc", "q"}, "Esc", "", "leave it", ""},

	{onPrompt, nothing, nil, "Enter", "", "keep", ""},
	{onPrompt, nothing, nil, "Esc", "", "drop", ""},
	{onPrompt, nothing, nil, "Ctrl-U", "", "empty", ""},

	{onSmall, up, []string{"up", "k"}, "↑ k", "up k", "", "the move before"},
	{onSmall, down, []string{"down", "j"}, "↓ j", "down j", "", "the next move"},
	{onSmall, left, []string{"left", "h"}, "← h", "left h", "", "the changeover before"},
	{onSmall, right, []string{"right", "l"}, "→ l", "right l", "", "the next changeover"},
	{onSmall, back, []string{"esc"}, "Esc", "", "", "stop a running search and keep the best order so far"},
	{onSmall, nothing, nil, "↑↓", "jk", "step", ""},
	{onSmall, nothing, nil, "←→", "hl", "job", ""},

	{onCautions, proceed, []string{"enter", " "}, "Enter", "", "read, go on", "the cautions are read: to the first move (also Space)"},
	{onCautions, back, []string{"esc"}, "Esc", "", "leave", ""},
	{onCautions, right, []string{"right", "down", "l", "j"}, "↓", "down", "", "a line down, where there is more to read"},
	{onCautions, left, []string{"left", "up", "h", "k"}, "↑", "up", "", "a line up"},
	{onCautions, asFound, []string{"f"}, "f", "", "elsewhere", ""},
	{onWalk, tickMove, []string{"enter", " "}, "Enter", "", "made", "the move is made: it is saved, then ticked (also Space)"},
	{onWalk, setUp, []string{"r"}, "r", "", "runs", "all moves are made: the job is set up and runs; u in the panes takes that back"},
	{onWalk, untickMove, []string{"u", "backspace"}, "u", "", "undo", "take back what was told last on this walk, move by move: a tick, what was found, a mark (also Backspace)"},
	{onWalk, back, []string{"esc"}, "Esc", "", "leave", "leave the walk; w goes on with it"},
	{onWalk, asFound, []string{"f"}, "f", "", "elsewhere", "a holder stands elsewhere: type where; the rest is planned again"},
	{onWalk, trouble, []string{"c"}, "c", "", "trouble", "a holder is stuck, without air or out of service: mark it; the rest is planned again"},
	{onWalk, right, []string{"right", "down", "l", "j"}, "→", "right", "", "look at the move after; what isn't in its way can be made before (also ↓)"},
	{onWalk, left, []string{"left", "up", "h", "k"}, "←", "left", "", "look at the move before (also ↑)"},
	{onWalk, top, []string{"home", "g"}, "Home", "", "", "back to the next move"},
	{onWalk, nothing, nil, "←→", "left right", "look", ""},
	{onWalk, saveAgain, []string{"s"}, "s", "", "save again", "save what could not be saved"},
	{onEnding, runEnded, []string{"y"}, "y", "", "it has", ""},
	{onEnding, runWaits, []string{"z"}, "z", "", "set aside", ""},
	{onEnding, back, []string{"esc"}, "Esc", "", "it runs still", ""},
	{onForm, accept, []string{"enter"}, "Enter", "", "next", "take the field; after the last, all of it"},
	{onForm, back, []string{"esc"}, "Esc", "", "drop", "drop what was typed"},
	{onForm, nextPane, []string{"tab", "down"}, "Tab", "", "field", "the next field"},
	{onForm, lastPane, []string{"shift+tab", "up"}, "Shift-Tab", "", "", "the field before"},

	{onHelp, up, []string{"up", "k"}, "↑ k", "up k", "", ""},
	{onHelp, down, []string{"down", "j"}, "↓ j", "down j", "", ""},
	{onHelp, nothing, nil, "↑↓", "up down", "more", ""},

	{onDay | onTracks | onMoves | onSettings | onSmall | onHelp | onLift | onList | onCompare | onOffer, pageUp, []string{"pgup", "ctrl+b"}, "PgUp", "", "", "a page up (also Ctrl-B)"},
	{onDay | onTracks | onMoves | onSettings | onSmall | onHelp | onLift | onList | onCompare | onOffer, pageDown, []string{"pgdown", "ctrl+f", " "}, "PgDn", "", "", "a page down (also Space, Ctrl-F)"},
	{panes | onLift | onList | onCompare | onOffer, top, []string{"home"}, "Home", "", "", "to the first"},
	{panes | onLift | onList | onCompare | onOffer, bottom, []string{"end"}, "End", "", "", "to the last"},
	{onSmall | onHelp, top, []string{"home", "g"}, "Home g", "", "", "to the first"},
	{onSmall | onHelp, bottom, []string{"end", "G"}, "End G", "", "", "to the last"},
	{onJobs, nothing, nil, "g", "", "lift", ""},
	{panes, liftJob, []string{"g"}, "g", "", "", "lift the picked job: see what every gap costs, and drop it into one"},
	{onJobs, addJob, []string{"a"}, "a", "", "", "add a job, in a form"},
	{onJobs, editJob, []string{"e"}, "e", "", "", "edit the picked job"},
	{onJobs, copyJob, []string{"c"}, "c", "", "", "add a copy of it"},
	{onJobs, removeJob, []string{"x"}, "x", "", "", "take it out of the day (undo brings it back)"},
	{onJobs, lockTurn, []string{"t"}, "t", "", "", "fix it to the turn that it has, or free it"},
	{onJobs, orderJob, []string{"o"}, "o", "", "", "let it come after another job, or no more"},
	{onJobs, shiftRule, []string{"f"}, "f", "", "", "let its layout shift inside the trim, or run centred"},
	{onJobs, arrangeRule, []string{"y"}, "y", "", "", "slits as listed, entries may change places, any slit anywhere"},
	{onJobs, afresh, []string{"n"}, "n", "", "", "plan its layout afresh: forget the one that an accepted search chose"},
	{onJobs, allAfresh, []string{"N"}, "N", "", "", "the same for all jobs"},
	{onJobs, markRunning, []string{"r"}, "r", "", "", "mark it as running, or no more"},
	{onJobs, markDone, []string{"d"}, "d", "", "", "mark it as done"},
	{onJobs, setAside, []string{"z"}, "z", "", "", "set it aside"},
	{onJobs, leftOut, []string{"Z"}, "Z", "", "", "what is done or set aside, to bring it back"},
	{panes, compareOrders, []string{"v"}, "v", "", "", "two orders side by side: this one and the file's, or the one that a search found"},
	{panes, saveDay, []string{"ctrl+s", "W"}, "Ctrl-S W", "", "", "save the day in day.toml, layouts that a search chose too"},
	{panes | onSmall | onCautions | onWalk, readAgain, []string{"R"}, "R", "", "", "read the shop's files again, when another has changed them"},

	{onLift | onList | onCompare | onOffer, up, []string{"up", "k"}, "↑ k", "up k", "", "the one before"},
	{onLift | onList | onCompare | onOffer, down, []string{"down", "j"}, "↓ j", "down j", "", "the next one"},
	{onLift, nothing, nil, "↑↓", "up down", "gap", ""},
	{onLift, choose, []string{"enter"}, "Enter", "", "drop", "drop the job into the picked gap"},
	{onLift, cheapest, []string{"b"}, "b", "", "cheapest", "to the gap that costs least, of those known"},
	{onLift, back, []string{"esc"}, "Esc", "", "put back", "put the job back where it was"},

	{onJobForm, up, []string{"up"}, "↑", "up", "", "the field before (also Shift-Tab)"},
	{onJobForm, down, []string{"down"}, "↓", "down", "", "the next field (also Tab)"},
	{onJobForm, lastPane, []string{"shift+tab"}, "Shift-Tab", "", "", ""},
	{onJobForm, nextPane, []string{"tab"}, "Tab", "", "", ""},
	{onJobForm, nothing, nil, "↑↓", "up down", "field", ""},
	{onJobForm, nothing, nil, "←→", "left right", "in it", ""},
	{onJobForm, choose, []string{"enter", "ctrl+s"}, "Enter", "", "take it", "take the job as typed; where something is wrong, go there"},
	{onNames, up, []string{"up"}, "↑", "up", "", "the name before, and out of the list"},
	{onNames, down, []string{"down"}, "↓", "down", "", "the next name; behind the last, the next field"},
	{onNames, nothing, nil, "↑↓", "up down", "name", ""},
	{onNames, choose, []string{"enter"}, "Enter", "", "take it", "take the picked name, and go on to the next field (also Tab)"},
	{onNames, nextPane, []string{"tab"}, "Tab", "", "", ""},
	{onNames, lastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the field before"},
	{onNames, back, []string{"esc"}, "Esc", "", "none of these", "out of the list, what was typed stays"},
	{onJobForm, back, []string{"esc"}, "Esc", "", "put away", "put the form away; what was typed is kept"},

	{onCompare | onOffer, nothing, nil, "↑↓", "up down", "job", ""},
	{onCompare, choose, []string{"enter"}, "Enter", "", "go to it", "go to the picked job"},
	{onOffer, choose, []string{"enter"}, "Enter", "", "accept", "accept the order that a search found; its layouts stay with the jobs"},
	{onOffer, discard, []string{"x"}, "x", "", "discard", "discard it (undo brings it back)"},
	{onCompare | onOffer, otherOrder, []string{"tab"}, "Tab", "", "other", "another order on the left"},
	{onCompare | onOffer, back, []string{"esc", "v"}, "Esc", "", "back", "back to the panes; an order that was found waits"},

	{onList, nothing, nil, "↑↓", "up down", "pick", ""},
	{onList, choose, []string{"enter"}, "Enter", "", "choose", "what the list is for"},
	{onList, removeJob, []string{"x"}, "x", "", "", "of the left out: take it out of the day"},
	{onList, back, []string{"esc"}, "Esc", "", "back", "back to the panes"},

	{panes, filterRows, []string{"/"}, "/", "", "", "show only the rows that have some words, of a holder its number or h31; Esc while typing shows all again"},
	{panes, toggleMouse, []string{"m"}, "m", "", "", "mouse on or off: click picks, wheel scrolls; off, the terminal selects text"},
	{panes, undo, []string{"u"}, "u", "", "", "take back the last change, as often as you like"},
	{panes, redo, []string{"U", "ctrl+r"}, "U", "", "", "do it again (also Ctrl-R)"},
	{onBeam | onMoves | onSmall, nothing, nil, "w", "", "walk", ""},
	{panes | onSmall, walkOn, []string{"w"}, "w", "", "", "walk through the next changeover at the machine, move by move"},
	{panes, seek, []string{"s"}, "s", "", "search", "search for the best order: least late, then least setup time; Esc stops it and keeps the best so far"},
	{panes, seekMoves, []string{"S"}, "S", "", "", "the same for the fewest moves"},
	{panes, nextPane, []string{"tab"}, "Tab", "", "pane", "the next pane"},
	{panes, lastPane, []string{"shift+tab"}, "Shift-Tab", "", "", "the pane before"},
	{panes, pane1, []string{"1"}, "1", "", "", "the day"},
	{panes, pane2, []string{"2"}, "2", "", "", "the beam"},
	{panes, pane3, []string{"3"}, "3", "", "", "the moves"},
	{panes, pane4, []string{"4"}, "4", "", "", "the day as tracks along the beam"},
	{panes, pane5, []string{"5"}, "5", "", "", "the holders"},
	{panes, pane6, []string{"6"}, "6", "", "", "the settings: what is set at the knife, and what the blades do to the anvil"},
	{panes, enlarge, []string{"enter"}, "Enter", "", "", "the pane over the whole screen, and back; from 4, 5 and 6 to the beam"},
	{panes | onHelp, back, []string{"esc"}, "Esc", "", "", "back to all panes"},
	{onHelp, back, []string{"?", "q"}, "Esc", "", "back", ""},

	{onQuestion, yes, []string{"y", "Y"}, "y", "", "quit", ""},
	{onQuestion, nothing, nil, "any other key", "", "stay", ""},

	{panes | onSmall | onCautions | onWalk | onEnding | onLift | onList | onCompare | onOffer, help, []string{"?"}, "?", "", "help", "this page, at what has the keys"},
	{onForm, help, []string{"f1"}, "F1", "", "help", "this page, at the form"},
	{onJobForm | onNames, help, []string{"f1"}, "F1", "", "", "this page, at the form"},
	{panes | onSmall | onCautions | onWalk | onEnding, quit, []string{"q"}, "q", "", "quit", "leave; asks first when the order was changed"},
	{panes | onSmall | onHelp | onQuestion | onCautions | onWalk | onEnding | onForm | onLift | onJobForm | onNames | onList | onCompare | onOffer | onMark | onPrompt, abort, []string{"ctrl+c"}, "Ctrl-C", "", "", "leave at once"},
	{panes | onSmall | onHelp | onQuestion | onCautions | onWalk | onEnding | onForm | onLift | onJobForm | onNames | onList | onCompare | onOffer | onMark | onPrompt, suspend, []string{"ctrl+z"}, "Ctrl-Z", "", "", "back to the shell for a while (fg returns)"},
}

// keyTable is the table of keys, with a person's own, as a screen shows them.
type keyTable struct {
	all      []binding
	noArrows bool
}

// newKeyTable is the table before a person's own keys are read.
func newKeyTable(ascii bool) *keyTable { return &keyTable{all: bindings, noArrows: ascii} }

// actionOf is what a key asks for in a scope.
func (t *keyTable) actionOf(key string, in scope) action {
	for _, b := range t.all {
		if b.where&in != 0 && slices.Contains(b.keys, key) {
			return b.act
		}
	}
	return nothing
}

// keyFor is the key for an action, as it is shown.
func (t *keyTable) keyFor(a action) string { return t.keyIn(a, ^scope(0)) }

// keyIn is the key for an action in some scopes, as it is shown.
func (t *keyTable) keyIn(a action, in scope) string {
	for _, b := range t.all {
		if b.act == a && b.show != "" && b.where&in != 0 {
			return b.shown(t.noArrows)
		}
	}
	return ""
}

// shown is how the binding's keys are shown.
func (b binding) shown(ascii bool) string {
	if ascii && b.ascii != "" {
		return b.ascii
	}
	return b.show
}

// bunched names keys close together, the last two alone in words.
func bunched(k *draw.Theme, named []binding) draw.Line {
	l := k.Line()
	for i, b := range named {
		told := i >= len(named)-2
		if told && i > 0 {
			l.Add(draw.Plain, "  ")
		}
		if l.Add(draw.Accent, b.shown(k.ASCII)); told {
			l.Add(draw.Faint, " "+b.word)
		}
	}
	return l
}

// footer names the keys of a scope in w cells: the last two, help and quit, and
// before them as many others as there is room for.
func footer(k *draw.Theme, t *keyTable, in scope, w int) draw.Line {
	var named []binding
	for _, b := range t.all {
		if b.where&in != 0 && b.word != "" {
			named = append(named, b)
		}
	}
	for ; ; named = slices.Delete(named, len(named)-3, len(named)-2) {
		l := k.Line()
		for i, b := range named {
			if i > 0 {
				l.Add(draw.Plain, "  ")
			}
			l.Add(draw.Accent, b.shown(k.ASCII))
			l.Add(draw.Faint, " "+b.word)
		}
		if l.Width > w && in == onSmall {
			l = bunched(k, named)
		}
		if l.Width <= w || len(named) < 3 {
			return l.Fit(w)
		}
	}
}
