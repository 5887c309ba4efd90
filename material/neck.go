package material

import (
	"fmt"
	"math/big"
	"strings"
)

// poissons is where the formula of neck-in comes from.
const poissons = "definition of Poisson's ratio, on the unstretched width; the shop's own file"

// neckIn works out what tension does to the material's web: nil where its modulus,
// Poisson's ratio, tension or thickness isn't known. The error is that of Web.NeckIn.
func (m Material) neckIn() (*NeckIn, error) {
	if m.ModulusMPa == 0 || m.Poisson == 0 || m.TensionNM == 0 || m.ThicknessMM == 0 {
		return nil, nil
	}
	n, err := Web{m.TensionNM / 1000, m.ThicknessMM, m.ModulusMPa, m.Poisson}.NeckIn()
	if err != nil {
		return nil, err
	}
	return &n, nil
}

// Relaxed is the width that a strip cut under tension has without it.
func (n NeckIn) Relaxed(cutMM float64) float64 { return cutMM / (1 - n.Narrowing) }

// Tight is the width that a relaxed web has under tension.
func (n NeckIn) Tight(relaxedMM float64) float64 { return relaxedMM * (1 - n.Narrowing) }

// NarrowerPct is by how much narrower than relaxed a web is under tension, in percent of
// its relaxed width.
func (n NeckIn) NarrowerPct() float64 { return 100 * n.Narrowing }

// allowanceHow says what the sign of an allowance means.
const allowanceHow = "cut = finished * (1 + allowance/100), below 0 for what grows after the cut, above 0 for what stays narrower than cut; rounded once for each slit, sums exact"

// widthLines say how wide strips are cut, and what tension does to them.
func (s *Settings) widthLines(g Group, r Run) []Line {
	m := s.Material
	allowance := AllowanceText(m.AllowancePct)
	if allowance == "" && s.NeckIn == nil {
		return nil
	}
	l := Line{IDAllowance, allowance, allowanceHow, m.from(g, true)}
	if allowance == "" {
		l.Value = "none: cut at the finished width"
	}
	if s.NeckIn != nil {
		asked := AllowanceText(s.NeckIn.Allowance())
		if asked == "" {
			asked = "none"
		}
		l.Why += "; for neck-in alone: " + asked
	}
	out := []Line{l}
	if s.NeckIn != nil {
		out = append(out, s.neckLine(r))
	}
	if text := s.slitText(r.Slits); text != "" {
		why := "cut width from finished width"
		if s.NeckIn != nil {
			why += "; relaxed from neck-in alone"
		}
		out = append(out, Line{IDWidths, text, why, "calculated"})
	}
	return out
}

// neckLine says how wide the web is at the knife, and what trim is left there.
func (s *Settings) neckLine(r Run) Line {
	n, m := s.NeckIn, s.Material
	value := trimmed(n.NarrowerPct(), 3) + " % narrower than relaxed"
	if r.WebMM > 0 {
		value = fmt.Sprintf("a web of %s is %s wide at the knife, %s", lengths(r.WebMM, 2), lengths(n.Tight(r.WebMM), 2), value)
	}
	if e := s.Edges; e != nil && r.Laid.LeastMM > 0 {
		value += "; trim left there: " + e.text()
	}
	doubt := "elastic only: measure relaxed"
	if most := s.Limits.NeckInPct; n.NarrowerPct() > most {
		value += "; only a guess at this size: measure it"
		doubt = fmt.Sprintf("elastic, first order: only a guess beyond %g %%%s: measure it", most, limitFrom(most, usual.NeckInPct))
	}
	return Line{IDNeckIn, value,
		fmt.Sprintf("%g N/m on %g mm with a modulus of %g MPa stretch it by %s %%, times Poisson's ratio of %g; %s",
			m.TensionNM, m.ThicknessMM, m.ModulusMPa, trimmed(100*n.Stretch, 3), m.Poisson, doubt), poissons}
}

// slitText says how wide each strip is cut and comes out.
func (s *Settings) slitText(slits []Slit) string {
	const most = 4
	var parts []string
	for _, w := range slits[:min(len(slits), most)] {
		text := fmt.Sprintf("%s: cut at %s", lengths(w.FinishedMM, 3), trimmed(w.CutMM, 3))
		if s.NeckIn != nil {
			text += ", relaxed " + trimmed(s.NeckIn.Relaxed(w.CutMM), 3)
		}
		parts = append(parts, text)
	}
	if more := len(slits) - most; more > 0 {
		parts = append(parts, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(parts, "; ")
}

// PctOf is a width allowance in percent as a number; nil is none.
func PctOf(pct *big.Rat) float64 {
	if pct == nil {
		return 0
	}
	f, _ := pct.Float64()
	return f
}
