package plan

// score is what of the totals orders are compared by.
func (t Totals) score() score {
	return score{late: t.Late, lateJobs: t.LateJobs, setup: t.Setup, repositions: t.Repositions}
}

// Better reports whether a day with the totals is better than another: less late,
// then by the aim, then by the other of setup time and repositions.
func (t Totals) Better(other Totals, aim Aim) bool {
	return t.score().compare(other.score(), aim) < 0
}
