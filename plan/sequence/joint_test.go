package sequence_test

import (
	"context"
	"math/rand/v2"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// A day planned jointly keeps the order, verifies, is never worse by the aim, comes out the
// Same again, and over many days saves what it is asked to.
func TestJointDaysVerifyAndAreNeverWorse(t *testing.T) {
	t.Parallel()
	saved, sooner, days := 0, time.Duration(0), uint64(plantest.Worlds(8, 10))
	for seed := range days {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 71)))
		alone, err := sequence.PlanDay(b, start, d)
		if err != nil {
			continue
		}
		aim := plan.Aim(seed % 2)
		joint := sequence.Jointly(context.Background(), alone, aim)
		if err := verify.DayOf(joint, d); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if plantest.Worse(joint.Totals, alone.Totals, aim) {
			t.Errorf("seed %d: joint %+v, each on its own %+v", seed, joint.Totals, alone.Totals)
		}
		for i := range alone.Steps() {
			if joint.Steps()[i].Job != alone.Steps()[i].Job {
				t.Errorf("seed %d: %s at turn %d, was %s", seed, joint.Steps()[i].Job.ID, i+1, alone.Steps()[i].Job.ID)
			}
		}
		if again := sequence.Jointly(context.Background(), alone, aim); !plantest.Same(joint, again) {
			t.Errorf("seed %d: joint twice, and not alike", seed)
		}
		if joint.Floor != nil && joint.Totals.Repositions < joint.Floor.Repositions {
			t.Errorf("seed %d: %d moves below the floor of %d", seed, joint.Totals.Repositions, joint.Floor.Repositions)
		}
		if aim == plan.AimMoves {
			saved += alone.Totals.Repositions - joint.Totals.Repositions
		} else {
			sooner += alone.Totals.Setup - joint.Totals.Setup
		}
	}
	if saved <= 0 || sooner <= 0 {
		t.Errorf("planning jointly saved %d moves and %v of setup over all days", saved, sooner)
	}
}

// A job that runs, and one that the beam is being set up for, stay as they stand.
func TestJointPlanLeavesWhatIsBegunAlone(t *testing.T) {
	t.Parallel()
	tried, days := 0, uint64(plantest.Worlds(4, 5))
	for seed := range days {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 72)))
		if p, err := sequence.PlanDay(b, start, d); err == nil && len(p.Steps()) > 2 {
			first, stands := p.Steps()[0].Job.ID, start.After(p.Steps()[0])
			for i := range d.Jobs {
				d.Jobs[i].State = plan.Waiting
				if d.Jobs[i].ID == first {
					d.Jobs[i].State = plan.Running
					d.Jobs[0], d.Jobs[i] = d.Jobs[i], d.Jobs[0]
				}
			}
			runs, err := sequence.PlanDay(b, stands, d)
			if err != nil || len(runs.Steps()) == 0 || runs.Steps()[0].Changeover.Repositions > 0 {
				continue
			}
			tried++
			if s := sequence.Jointly(context.Background(), runs, plan.AimMoves); s.Steps()[0].Changeover.Repositions > 0 {
				t.Errorf("seed %d: %d moves under a job that runs", seed, s.Steps()[0].Changeover.Repositions)
			}
			s, err := sequence.Search(context.Background(), b, stands, d, sequence.Effort{Rounds: 300, Seed: seed})
			if err != nil || s.Steps()[0].Job.ID != first || s.Steps()[0].Changeover.Repositions > 0 {
				t.Errorf("seed %d: searched, %v: %s is first, with %d moves", seed, err, s.Steps()[0].Job.ID, s.Steps()[0].Changeover.Repositions)
			}
		}
	}
	if tried < int(days)/6 {
		t.Errorf("only %d days tried", tried)
	}
}
