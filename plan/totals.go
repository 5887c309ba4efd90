package plan

// Score is what of the totals orders are compared by.
func (t Totals) Score() Score {
	return Score{Late: t.Late, LateJobs: t.LateJobs, Setup: t.Setup, Repositions: t.Repositions}
}

// Better reports whether a day with the totals is better than another: less late,
// then by the aim, then by the other of setup time and repositions.
func (t Totals) Better(other Totals, aim Aim) bool {
	return t.Score().Compare(other.Score(), aim) < 0
}
