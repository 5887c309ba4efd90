package material

// Turn is one job at its turn of a day: what is set for it, what that changes, and
// what its blades do to the anvil.
type Turn struct {
	Settings *Settings // nil where the material is in no table
	Before   string    // the job or material that the changes are against; empty where it isn't known
	Changes  []Change
	Bending  *Bending // nil where it can't be calculated: see Unbent
	Unbent   string   // why
	Damaged  []Damage // as this job's cuts lie about each damaged band of the anvil
}

// Day is the turns of a day, and what they make of the anvil's face.
type Day struct {
	Turns   []Turn
	Face    *Face    // nil where no face is known
	Damaged []Damage // as the day's cuts lie about each damaged band of the anvil
	Rests   string   // where the anvil's bearings lie, in words; empty where none are known
	Faced   string   // how its face was assumed, where no file says it
}
