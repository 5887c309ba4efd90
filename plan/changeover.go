package plan

// Use is what a holder does while a job runs.
type Use uint8

// The uses of a holder.
const (
	Cutting Use = iota
	Resting     // idle and lifted over the web
	Parked      // idle and outside the web
)

// String is the use's word.
func (u Use) String() string { return [...]string{"cutting", "resting", "parked"}[u] }

// Stand is where one holder stands while a job runs, and what it does there.
type Stand struct {
	At  Length
	Use Use
	Cut int // the cut it holds, from 1 at the operator side; 0 when idle
}

// Changeover takes the beam from one standing to a layout.
type Changeover struct {
	From        []Length // places before, by number
	Holders     []Stand  // places and uses after, by number
	Moves       []Move   // in an order in which each can be made as it comes
	Repositions int      // holders that end at another place
	Parked      int
	Resting     int
	Travel      Length // sum of the moves' lengths
}

// Move is one holder going straight to its new place.
type Move struct {
	Holder   int // number, from 1
	From, To Length
	Why      Why
}

// Cause is the kind of reason for a move.
type Cause uint8

// The causes of a move.
const (
	ToCut       Cause = iota // it takes a cut: Cut
	NearCut                  // it stood Distance from Cut, nearer than the pitch, Least
	OverWeb                  // it stood where idle holders may not: Distance from a web's edge, negative over the web; nearer than Least
	MakesRoom                // Holder comes to a place Distance from where it stood, nearer than the pitch
	MakesWay                 // Holder goes Distance past where it stood, and holders keep their order
	ForLaterJob              // it goes to where it is to cut Cut of the later Job, or, Cut 0, to where it can stay until Job has run
	AsBegun                  // idle, it goes on to where it was to stand when this changeover was begun
	AsChosen                 // idle, it goes to where a search had it stand, for the sake of later jobs
)

// Why is the reason for one move, with its numbers. Fields that the cause does
// not name are zero.
type Why struct {
	Cause    Cause
	Cut      int
	Holder   int
	Distance Length
	Least    Length // what the distance must be
	Job      string
}
