package workday

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bide/plan"
	"bide/plan/session/draft"
)

// A job that is added needs an id of its own and a turn that the rules allow.

// NextID is an id for a new job in the pattern of the day's: that of the job given, else
// of the first that ends with a number, with the number after the highest.
func (d *View) NextID(like *plan.Job) string {
	jobs := d.Now.All
	if like != nil {
		jobs = append([]*plan.Job{like}, jobs...)
	}
	for _, j := range jobs {
		if stem, _, digits, ok := numbered(j.ID); ok {
			highest := 0
			for _, other := range d.Now.All {
				if s, n, _, ok := numbered(other.ID); ok && s == stem {
					highest = max(highest, n)
				}
			}
			return fmt.Sprintf("%s%0*d", stem, digits, highest+1)
		}
	}
	return d.FreeID("new")
}

// numbered cuts the number that an id ends with off it; false for one that ends with
// none, or with one that is no count.
func numbered(id string) (stem string, n, digits int, ok bool) {
	stem = strings.TrimRight(id, "0123456789")
	digits = len(id) - len(stem)
	if digits == 0 || digits > 9 {
		return id, 0, 0, false
	}
	n, err := strconv.Atoi(id[len(stem):])
	return stem, n, digits, err == nil
}

// FreeID is an id that no job has, like the one given.
func (d *View) FreeID(like string) string {
	taken := func(id string) bool { return d.Now.Find(id) != nil }
	for _, tail := range strings.Split("bcdefghijklmnopqrstuvwxyz", "") {
		if !taken(like + tail) {
			return like + tail
		}
	}
	return d.FreeID(like + "z")
}

// Add adds a job behind another, or as near to there as the rules of the day let it:
// its own and those of the others.
func (d Editor) Add(j *plan.Job, stem string, behind *plan.Job) {
	d.stems[j] = stem
	all := d.Now.All
	wanted := len(all)
	if i := slices.Index(all, behind); i >= 0 {
		wanted = i + 1
	}
	at := d.nearestFor(j, wanted)
	next := draft.New(slices.Insert(slices.Clone(all), at, j), d.Now.Aim)
	next.Given, next.About, next.Did, next.Back = d.Now.Given, j.ID, j.ID+" is added", j.ID+" is removed from the day again"
	if turn := slices.Index(next.Jobs, j); at != wanted && turn == 0 {
		next.Did += " as the first: the nearest position in the sequence that keeps the rules"
	} else if at != wanted && turn > 0 {
		next.Did += fmt.Sprintf(" after %s: the nearest position in the sequence that keeps the rules", next.Jobs[turn-1].ID)
	}
	d.do(next)
}

// nearestFor is the place among all jobs that is nearest to the one wanted, the later of
// two, at which a job breaks no rule that isn't broken without it; the one wanted where
// there is none. It looks at n+1 orders of n jobs.
func (d Editor) nearestFor(j *plan.Job, wanted int) int {
	all := d.Now.All
	breaches := func(all []*plan.Job) int {
		able := slices.DeleteFunc(draft.New(all, plan.AimMinutes).Jobs, d.cannotRun)
		return len(plan.Broken(able, d.Now.Done()))
	}
	already := breaches(all)
	for away := range len(all) + 1 {
		for _, at := range []int{wanted + away, wanted - away} {
			if at >= 0 && at <= len(all) && breaches(slices.Insert(slices.Clone(all), at, j)) <= already {
				return at
			}
		}
	}
	return wanted
}

// cannotRun reports whether it is known of a job that the beam can't run it.
func (d Editor) cannotRun(j *plan.Job) bool {
	turn := slices.Index(d.Jobs(), j)
	return turn >= 0 && d.Refused(turn)
}
