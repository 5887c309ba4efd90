package plan

// After are the positions while the step's job runs, those now being before it.
func (now *Positions) After(s *Step) *Positions {
	stands := &Positions{}
	now.Advance(stands, s.Job, s.Changeover.Holders)
	stands.Recorded = s.RunEnd
	return stands
}

// Done counts the jobs that are done.
func (d *Day) Done() (n int) {
	for i := range d.Jobs {
		if d.Jobs[i].State == Done {
			n++
		}
	}
	return n
}

// Take makes now a copy of the other standing that shares no memory with it.
func (now *Positions) Take(other *Positions) {
	at, blades, metres := now.At, now.Blades, now.Metres
	*now = *other
	now.At = append(at[:0], other.At...)
	now.Blades = append(blades[:0], other.Blades...)
	now.Metres = append(metres[:0], other.Metres...)
}

// Advance makes next the positions while a job runs, from those before and
// where its changeover sets the holders.
func (now *Positions) Advance(next *Positions, j *Job, holders []Stand) {
	next.Take(now)
	next.Job, next.Material, next.Web, next.SetBar = j.ID, j.Material, j.Web, j.SetBar
	next.SiliconeFree, next.Assumed, next.Begun = j.SiliconeFree, false, nil
	next.Pistons = j.Pistons
	if j.Wick != "" {
		next.Wick = j.Wick
	}
	if len(next.Blades) == 0 { // unknown until they have cut
		next.Blades = append(next.Blades, make([]Blade, len(holders))...)
	}
	for i, h := range holders {
		next.At[i] = h.At
		if h.Use != Cutting {
			continue
		}
		if j.Blade.Known() && next.Blades[i] != j.Blade {
			if next.Blades[i].Known() && i < len(next.Metres) {
				next.Metres[i] = 0 // a fresh edge
			}
			next.Blades[i] = j.Blade
		}
		if i < len(next.Metres) {
			next.Metres[i] += j.Metres
		}
	}
}
