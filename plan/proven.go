package plan

// Floor is a proven lower bound: no plan of the day can need fewer repositions.
type Floor struct {
	Repositions int
	By          string // what proves it
}

// What proves a floor.
const (
	ByKeeping  = "cuts that no holder can have kept from an earlier job"
	ByDistance = "how many holders must move between one job and a later one"
	ByDistinct = "cut positions where no holder is at the start"
	ByOrders   = "how many holders must move between jobs, whatever their order"
)
