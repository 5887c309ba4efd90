package sequence

import (
	"math"
	"math/big"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
)

// On any beam that is planned all costs together stay within 63 bits: each holder
// moves now and at the next changeover, swaps its blade, parks and travels the whole
// rail, and the dynamic program adds all of that up.
func TestWeightsStayWithin63Bits(t *testing.T) {
	for _, n := range []int{1, 2, 20, 150, plan.MaxHolders} {
		for _, rail := range []plan.Length{plan.Millimetre, 4000 * plan.Millimetre, plan.MaxRail} {
			var p changeover.Places
			p.Weigh(&changeover.Scene{At: make([]plan.Length, n), Rail: plan.Span{From: 0, To: rail}}, true)
			moves := big.NewInt(p.Most(n) + 3) // the swap, two moves, and all that is less than one
			sum := moves.Mul(moves, big.NewInt(p.PerReposition))
			if sum.Mul(sum, big.NewInt(int64(n))); sum.Cmp(big.NewInt(math.MaxInt64)) >= 0 {
				t.Errorf("%d holders on a rail of %s mm: costs come to %v", n, rail.MM(), sum)
			}
			if realistic := n <= 150 && rail <= 4000*plan.Millimetre; realistic && p.Most(n) < int64(n) { // as much as moving all of them
				t.Errorf("%d holders on a rail of %s mm: a swap weighs %d moves at most", n, rail.MM(), p.Most(n))
			}
		}
	}
}
