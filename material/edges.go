package material

import "fmt"

// Laid is how a layout lies on its relaxed web, mm.
type Laid struct {
	OperatorMM, DriveMM float64 // trim on either side
	LeastMM             float64 // trim asked for on each side; 0 where the slits fill the web
	// OperatorShare is the part of the web's narrowing that its operator side takes: a half
	// where it is guided on its centre, none on its operator edge, all on its drive edge.
	OperatorShare float64
}

// Edges is a layout at the knife, where tension has made its web narrower and the cuts
// stay where they are.
type Edges struct {
	WebMM               float64 // width of the web
	OperatorMM, DriveMM float64 // trim left on either side; below 0 the outer cut lies off the web
}

// Edges takes what a web narrows by from the trim of a layout on it.
func (n NeckIn) Edges(webMM float64, l Laid) Edges {
	tight := n.Tight(webMM)
	lost := webMM - tight
	return Edges{tight, l.OperatorMM - lost*l.OperatorShare, l.DriveMM - lost*(1-l.OperatorShare)}
}

// slitLost is what neck-in may take of the outer slits of a web without trim before it is warned
// of, mm: within what a strip may differ (common practice, no source).
const slitLost = 0.1

// Short reports whether a side has too little left of the trim asked for.
func (e Edges) Short(leastMM float64, l Limits) bool {
	left := min(e.OperatorMM, e.DriveMM)
	if leastMM == 0 {
		return left < -slitLost
	}
	return left < leastMM*(1-l.OrUsual().TrimLostPct/100)
}

// Off reports whether an outer cut is off the web, or on its edge.
func (e Edges) Off() bool { return min(e.OperatorMM, e.DriveMM) <= 0 }

func (e Edges) text() string {
	return fmt.Sprintf("%s on the operator side, %s on the drive side", lengths(e.OperatorMM, 2), lengths(e.DriveMM, 2))
}

// warn says what neck-in does to the layout's edges and what helps; empty where it does little.
func (e Edges) warn(webMM float64, l Laid, within Limits) string {
	if !e.Short(l.LeastMM, within) {
		return ""
	}
	what := fmt.Sprintf("the trim left there is %s, of the %s required", e.text(), lengths(l.LeastMM, 2))
	switch {
	case l.LeastMM == 0:
		what = fmt.Sprintf("the outer strips are cut narrower than planned by %s on the operator side, %s on the drive side",
			lengths(max(-e.OperatorMM, 0), 2), lengths(max(-e.DriveMM, 0), 2))
	case e.Off():
		what += ": an outer cut is off the web"
	}
	return fmt.Sprintf("Tension makes the web of %s narrow to %s at the knife, and %s. Use a wider web or less tension%s; or give the web's width at the knife and leave out the material's tension_n_m, so that neck-in isn't counted twice.",
		lengths(webMM, 2), lengths(e.WebMM, 2), what, e.more(webMM, l))
}

// more is the trim to ask for, where the layout lies to one side and the web is wide
// enough for it.
func (e Edges) more(webMM float64, l Laid) string {
	need := l.LeastMM + (webMM-e.WebMM)*max(l.OperatorShare, 1-l.OperatorShare)
	if l.LeastMM == 0 || 2*need > l.OperatorMM+l.DriveMM {
		return ""
	}
	return fmt.Sprintf(", or ask for a trim of %s", lengths(need, 2))
}
