package material

// Caution is one line on what can hurt or go wrong. It permits nothing: local codes,
// the site's own procedure and licensed people decide.
type Caution struct {
	About  string // the subject: guards, nips, stored air, lockout, ...
	Text   string // one line of at most CautionWidth letters
	Source string
}

// CautionWidth is the longest text of a caution.
const CautionWidth = 76

// always are the cautions of any job on a score slitter.
var always = []Caution{
	{"first", "Local codes, the site's procedure and licensed people come first.", commonPractice},
	{"guards", "Guards on at knives, nips and turning parts before anything turns.", "29 CFR 1910.212(a)(1), (a)(3)(ii) (read)"},
	{"nips", "Nips pull in: no glove, sleeve or tool near turning rolls.", "OSHA 3170, slitters (read)"},
	{"lockout", "Lock out before reaching in; the site's procedure says who and how.", "29 CFR 1910.147 (read)"},
	{"stored air", "Dump the holders' air, prove zero; prove it again where air can build up.", "29 CFR 1910.147(d)(5) (read)"},
	{"stored air", "Air back on: knives may drop at once. Everyone clear first.", "EN ISO 4414 (from memory, unchecked)"},
	{"standstill", "Blades and anvil coast: wait until all have stopped, and look.", "EN ISO 14119 (read)"},
	{"blades", "Handle blades in cut-resistant gloves, machine isolated; count sharps.", "29 CFR 1910.138 (from memory); OSHA 3170 (read)"},
	{"anvil", "Never lower a knife onto a roll at rest: engage at crawl, web moving.", commonPractice},
}

// Cautions lists what to watch with a material, in the order of the work: those of
// any job, then those of its method, dust, adhesive and group. The error is that of
// Advise.
func Cautions(m Material) ([]Caution, error) {
	g, err := m.group()
	if err != nil {
		return nil, err
	}
	a, err := Advise(m, Limits{})
	if err != nil {
		return nil, err
	}
	out := append([]Caution(nil), always...)
	out = append(out, dustCautions(g, a.Dust)...)
	out = append(out, heatCautions(a)...)
	if sticks(g, m.Adhesive) {
		out = append(out,
			Caution{"cleaning", "Clean blades only at standstill and locked out; beware of solvent fumes.", commonPractice},
			Caution{"trim", "Sticky trim can't be blown off: wind it up, never pull it at a nip.", commonPractice})
	}
	if g.Liner {
		out = append(out, Caution{"silicone", "A liner sheds silicone on blades and felts: decide whether to clean down.", commonPractice})
	}
	if m.SiliconeFree {
		out = append(out, Caution{"silicone", "Silicone-free job: no silicone oil, spray or hand cream near web and felts.", "NASA NTRS 20120016452 (read); wording common practice"})
	}
	for _, text := range g.Cautions {
		out = append(out, Caution{"material", text, g.Source})
	}
	return out, nil
}

// sticks reports whether a material sticks: one whose adhesive is unknown may, and bitumen
// does by itself.
func sticks(g Group, adhesive Adhesive) bool { return adhesive != NoAdhesive || g.Name == "roofing" }

// neverBlown are the groups whose dust must not be blown off: fines of metal, which laminates
// may have too, and glass.
var neverBlown = map[string]bool{"foil": true, "laminate": true, "glass cloth": true}

// dustCautions are for what sheds dust. Glass doesn't burn; its group's own cautions, and those
// of foil, say what glass and fines of metal do to people.
func dustCautions(g Group, dust Level) []Caution {
	if dust == Low {
		return nil
	}
	extract := Caution{"dust", "Dust can burn and harms lungs: extract it, do not let it settle.", "OSHA CPL 03-00-008 (read)"}
	if g.Name == "glass cloth" {
		extract = Caution{"dust", "Dust harms lungs: extract it, do not let it settle, never blow it off.", commonPractice}
	}
	if neverBlown[g.Name] {
		return []Caution{extract}
	}
	return []Caution{
		extract,
		{"dust", "Blow down only where allowed: below 30 psi, shielded, eyes protected.", "29 CFR 1910.242(b) (partly read)"},
	}
}

// heatCautions are for blades that friction heats, and for hot knives where they are
// the better way.
func heatCautions(a Advice) []Caution {
	out := []Caution{{"heat", "Blades are hot after a run: let them cool before you touch them.", commonPractice}}
	if a.Method.Hot() {
		out = append(out, []Caution{
			{"heat", "Hot knives burn and start fires: shields on, let cool, no solvent near.", textiles},
			{"fumes", "Melting gives off fumes: extract them; know what the fibre gives off.", textiles},
		}...)
	}
	return out
}
