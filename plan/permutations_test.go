package plan_test

import (
	"testing"

	"bide/plan"
)

// Paint production, from Guéret, Prins & Sevaux, Applications of Optimization with
// Xpress-MP: cleaning minutes from one batch to the next. The book solves the
// round, 41 without run times; the best open order, 22, is computed here.
func TestPaintProductionMatrix(t *testing.T) {
	clean := [5][5]int{{0, 11, 7, 13, 11}, {5, 0, 13, 15, 15}, {13, 15, 0, 23, 11}, {9, 13, 5, 0, 3}, {3, 7, 7, 7, 0}}
	open, round := 1<<30, 1<<30
	plan.Orders(5, func(order []int) {
		sum := 0
		for i := 1; i < 5; i++ {
			sum += clean[order[i-1]][order[i]]
		}
		open, round = min(open, sum), min(round, sum+clean[order[4]][order[0]])
	})
	if open != 22 || round != 41 {
		t.Errorf("best open order %d, best round %d; computed 22, published 41", open, round)
	}
}
