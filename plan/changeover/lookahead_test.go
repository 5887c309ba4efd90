package changeover

import (
	"slices"
	"testing"

	"bide/plan"
)

// Two holders a pitch of 10 apart at 50 and 60, and a cut at 53: one goes there, and the
// other has to give way, by 3 to 63 at least. Where the next job cuts at 90 it goes there at
// once and saves a move; where the next cuts nowhere else, or it is not looked at, it goes
// the shortest way.
func TestAnIdleHolderGoesWhereTheNextJobCuts(t *testing.T) {
	b := &plan.Beam{HolderWidth: 9 * plan.Millimetre, Clearance: plan.Millimetre, Rail: plan.Span{To: 200 * plan.Millimetre},
		Web: plan.Span{To: 200 * plan.Millimetre}, RestOverWeb: true, Holders: make([]plan.Condition, 2)}
	p, err := NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	at := func(places ...plan.Length) (out []plan.Length) {
		for _, x := range places {
			out = append(out, x*plan.Millimetre)
		}
		return out
	}
	for _, c := range []struct {
		next []plan.Layout
		want []plan.Length
	}{
		{nil, at(53, 63)},
		{[]plan.Layout{{Cuts: at(53)}}, at(53, 63)},
		{[]plan.Layout{{Cuts: at(53, 90)}}, at(53, 90)},
		{[]plan.Layout{{Cuts: at(53)}, {Cuts: at(53, 90)}}, at(53, 90)},
	} {
		p.Set(at(50, 60), b.Web, at(53))
		if !p.Stays.Find(&p.Scene) {
			t.Fatal("the cut can't be set")
		}
		got := p.read(p.Places.Solve(&p.Scene, &p.Stays, &Lookahead{Coming: c.next}))
		if ends := []plan.Length{got.Holders[0].At, got.Holders[1].At}; !slices.Equal(ends, c.want) {
			t.Errorf("with %v to come they go to %v, want %v", c.next, ends, c.want)
		}
	}
}

// A holder near enough to its cut stays, unless a damaged band is under it; the one beside it
// doesn't matter.
func TestWhoCutsBesideADamagedBand(t *testing.T) {
	b := &plan.Beam{HolderWidth: 10, PositionTolerance: 1, Rail: plan.Span{To: 200}, Holders: make([]plan.Condition, 2)}
	at, cuts := []plan.Length{99, 121}, []plan.Length{100, 120}
	for _, c := range []struct {
		bad  plan.Spans
		want []plan.Length
	}{{nil, at}, {plan.Spans{{From: 99, To: 99}}, []plan.Length{100, 121}}, {plan.Spans{{From: 121, To: 130}}, []plan.Length{99, 120}}} {
		b.Bad = c.bad
		if to, ok := IdlePlaces(&plan.Idle{}, b, at, cuts); !ok || !slices.Equal(to, c.want) {
			t.Errorf("bands %v: they go to %v (%v), want %v", c.bad, to, ok, c.want)
		}
	}
}
