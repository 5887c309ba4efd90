package material

// ID is one of the things set at the knife. Its text is the name that people read, so
// that a setting is found by its constant and a name is changed in one place.
type ID string

// The settings, in the order of the work. A Line is of any but IDBlade and IDPressure; a
// Change is of blade, pistons, pressure, wicking, silicone or speed.
const (
	IDMethod        ID = "method"
	IDEdge          ID = "edge"
	IDBlade         ID = "blade"
	IDBevel         ID = "bevel"
	IDTip           ID = "tip radius"
	IDBladeHardness ID = "blade hardness"
	IDWearIndex     ID = "tip wear index"
	IDPressure      ID = "pressure"
	IDCutThrough    ID = "cut-through"
	IDSetPressure   ID = "set pressure"
	IDPistons       ID = "pistons"
	IDForce         ID = "force of a blade"
	IDWicking       ID = "wicking"
	IDSilicone      ID = "silicone"
	IDSpeed         ID = "speed"
	IDRunTime       ID = "run time"
	IDAnvilTurns    ID = "anvil turns"
	IDRoll          ID = "finished roll"
	IDAllowance     ID = "width allowance"
	IDNeckIn        ID = "neck-in"
	IDWidths        ID = "widths"
)

// Line is one setting for people.
type Line struct {
	ID     ID
	Value  string // with its unit, metric first and inch-pound in brackets
	Why    string
	Source string
}

// Line is the setting of an ID; the zero Line where the job has none.
func (s *Settings) Line(id ID) Line {
	for _, l := range s.Lines {
		if l.ID == id {
			return l
		}
	}
	return Line{}
}
