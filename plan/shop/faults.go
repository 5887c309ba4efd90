package shop

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/shop/toml"
)

// JobProblems lists what keeps jobs of the day from being laid out on the beam,
// whatever stands where. Jobs done or set aside aren't looked at.
func (s *Shop) JobProblems() toml.Problems {
	var out toml.Problems
	for i := range s.Day.Jobs {
		j := &s.Day.Jobs[i]
		if j.State == plan.Done || j.State == plan.OnHold {
			continue
		}
		for _, f := range layouts.Faults(s.Beam, j) {
			out = append(out, s.ProblemOf(j, f))
		}
	}
	return out.Sorted()
}

// ProblemOf is a fault of a job of the day as a problem of its file, lengths in the
// file's unit.
func (s *Shop) ProblemOf(j *plan.Job, f plan.Fault) toml.Problem {
	why := f.Why(s.dayUnit)
	p := toml.Problem{File: dayFile, Place: "job (" + j.ID + "), " + f.Key, What: why + s.allowance(j, why), Remedy: s.remedy(f.Key, why)}
	for i := range s.Day.Jobs {
		if s.Day.Jobs[i].ID == j.ID {
			p.Place = fmt.Sprintf("job %d (%s), %s", i+1, j.ID, f.Key)
			p.Line = toml.LineOf(s.dayLines, fmt.Sprintf("job[%d].%s", i, f.Key))
		}
	}
	return p
}

// remedies by the key of a fault.
var remedies = map[string]string{
	"material":  "find cut_through_bar by trial and correct it in materials.toml, or run the job on a beam with more supply or larger pistons",
	"web":       "correct web, or run the job on a wider beam",
	"slits":     "correct slits, split the job, or run it on another beam",
	"shift":     `set shift = "free", or run the job on another beam`,
	"trim":      "set trim to what the winder can pull, remove a slit or run a wider web",
	"positions": "measure the holders' positions and correct positions.toml",
	"fixed":     "put the job at that number, or change fixed",
	"after":     "put the job after it, or change after",
}

// remedy is what helps against a fault. Holders at fault come first: with them
// mended the job can stay as it is.
func (s *Shop) remedy(key, why string) string {
	if key != "slits" {
		return remedies[key]
	}
	stuck, others := s.faulty(why)
	var first []string
	if len(stuck) > 0 {
		first = append(first, "free or exchange holder "+some(stuck))
	}
	if len(others) > 0 {
		first = append(first, "repair or exchange holder "+some(others))
	}
	if len(first) == 0 {
		return remedies[key]
	}
	return strings.Join(first, ", ") + ", locked out by your site's procedure; or " + remedies[key]
}

var (
	namedHolders = regexp.MustCompile(`\bholders? (\d+)(?: to (\d+))?\b`)
	tooFewCut    = regexp.MustCompile(`(\d+) cuts need as many holders; \d+ of the`)
)

// faulty lists the holders that a reason names and that aren't good, by number,
// those stuck apart from the others; where too few of the beam may cut, all that
// may not.
func (s *Shop) faulty(why string) (stuck, others []string) {
	named := map[int]bool{}
	for _, m := range namedHolders.FindAllStringSubmatch(why, -1) {
		from, _ := strconv.Atoi(m[1])
		to, _ := strconv.Atoi(m[2])
		for n := from; n <= min(max(from, to), len(s.Beam.Holders)); n++ {
			named[n] = true
		}
	}
	few := false // mending helps only up to as many cuts as there are holders
	if m := tooFewCut.FindStringSubmatch(why); m != nil {
		cuts, err := strconv.Atoi(m[1])
		few = err == nil && cuts <= len(s.Beam.Holders)
	}
	for i, c := range s.Beam.Holders {
		number := strconv.Itoa(i + 1)
		switch {
		case c == plan.Good || !named[i+1] && (!few || c.Cuts()):
		case c == plan.Stuck:
			stuck = append(stuck, number)
		default:
			others = append(others, number)
		}
	}
	return stuck, others
}

var widths = regexp.MustCompile(`\bslits? |\btrim\b|off the rail|damaged bands?\b`)

// allowance says, in a reason about widths, that they aren't those of the file.
func (s *Shop) allowance(j *plan.Job, why string) string {
	m, ok := s.Materials.Lookup(j.Material)
	if !ok || m.AllowancePct.Sign() == 0 || !widths.MatchString(why) {
		return ""
	}
	pct, _ := m.AllowancePct.Float64()
	return fmt.Sprintf(" (cut widths include the material's allowance of %s %%)", toml.Plainly(pct))
}
