package shop

import (
	"fmt"

	"bide/plan"
)

// JobProblems lists what keeps jobs of the day from being laid out on the beam,
// whatever stands where. Jobs done or set aside aren't looked at.
func (s *Shop) JobProblems() Problems {
	var out Problems
	for i := range s.Day.Jobs {
		j := &s.Day.Jobs[i]
		if j.State == plan.Done || j.State == plan.Aside {
			continue
		}
		for _, f := range s.Beam.Faults(j) {
			out = append(out, s.ProblemOf(j, f))
		}
	}
	return out.sorted()
}

// ProblemOf is a fault of a job of the day as a problem of its file.
func (s *Shop) ProblemOf(j *plan.Job, f plan.Fault) Problem {
	p := Problem{File: dayFile, Place: "job (" + j.ID + "), " + f.Key, What: f.Why(s.Unit), Remedy: remedies[f.Key]}
	for i := range s.Day.Jobs {
		if s.Day.Jobs[i].ID == j.ID {
			p.Place = fmt.Sprintf("job %d (%s), %s", i+1, j.ID, f.Key)
			p.Line = lineOf(s.dayLines, fmt.Sprintf("job[%d].%s", i, f.Key))
		}
	}
	return p
}

// remedies by the key of a fault.
var remedies = map[string]string{
	"web":      "correct web, or run the job on a wider beam",
	"slits":    "correct slits, split the job, or run it on another beam",
	"trim":     "set trim to what the winder can pull, take a slit out or run a wider web",
	"shift":    `allow shift = "free"`,
	"standing": "measure where the holders stand and correct standing.toml",
}
