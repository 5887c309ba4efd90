package plan

// Begun is a changeover under way: which job the beam is being set up for, in
// which layout, and what has been done of it.
type Begun struct {
	Job   string   // id
	Slits []Length // cut widths in the order set up, operator side first
	Shift Length   // of the layout, from centred
	To    []Length // where each holder was to stand at its end; empty when that isn't known
	Made  []Made   // moves that were made, first to last
	Found bool     // since it was begun a holder was found elsewhere than thought
}

// Made is a move that was made: who went, and where it stood before.
type Made struct {
	Holder int // number, from 1
	From   Length
}
