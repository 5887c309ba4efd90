package plan

// Floor is a proven lower bound: no plan of the day can need fewer repositions.
type Floor struct {
	Repositions int
	By          string // what proves it
}

// What proves a floor.
const (
	ByKeeping  = "cuts that no holder can have kept from an earlier job"
	ByDistance = "how many holders must stand elsewhere from one job to a later one"
	ByDistinct = "places that some job cuts and no holder stands at"
	ByOrders   = "how many holders must stand elsewhere between jobs, whatever their order"
)
