package changeover_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// The planner against two open integer-programming solvers, GLPK and CBC, on the
// program of milp_model_test.go: repositions, then parked, then travel. An instance
// that either doesn't solve in 20 seconds is counted and drawn again.

const patience = 20 * time.Second

var (
	errSlow       = errors.New("not solved in time")
	errInfeasible = errors.New("infeasible")
)

// solver runs one program and returns the least value of its aim.
type solver struct {
	name  string
	solve func(ctx context.Context, file string) (float64, error)
}

var solvers = []solver{{"glpsol", glpsol}, {"cbc", cbc}}

// glpsol solves with GLPK. Its plain listing of a solution begins "s mip", rows,
// columns, status (o optimal, f feasible, n none, u undefined) and value.
func glpsol(ctx context.Context, file string) (float64, error) {
	limit := fmt.Sprint(int(patience.Seconds()))
	out, err := exec.CommandContext(ctx, "glpsol", "--lp", file, "--cuts", "--tmlim", limit, "-w", file+".sol").CombinedOutput()
	if err != nil {
		return 0, fmt.Errorf("%w\n%s", err, out)
	}
	if bytes.Contains(out, []byte("HAS NO PRIMAL FEASIBLE")) || bytes.Contains(out, []byte("HAS NO INTEGER FEASIBLE")) {
		return 0, errInfeasible
	}
	listing, err := os.ReadFile(file + ".sol")
	if err != nil {
		return 0, err
	}
	found := regexp.MustCompile(`(?m)^s mip \d+ \d+ (\w) (\S+)`).FindSubmatch(listing)
	switch {
	case found == nil:
		return 0, fmt.Errorf("no status in\n%s", out)
	case string(found[1]) == "n":
		return 0, errInfeasible
	case string(found[1]) != "o":
		return 0, errSlow
	}
	return strconv.ParseFloat(string(found[2]), 64)
}

// cbc solves with CBC. Its solution file begins with the status and the value. With
// its cuts on, CBC 2.10.8 calls some larger instances infeasible, or a
// Worse value optimal, where a plan that passes the verifier shows it wrong.
func cbc(ctx context.Context, file string) (float64, error) {
	limit := fmt.Sprint(int(patience.Seconds()))
	out, err := exec.CommandContext(ctx, "cbc", file, "sec", limit, "ratio", "0", "cuts", "off", "solve", "solution", file+".out").CombinedOutput()
	if err != nil {
		return 0, fmt.Errorf("%w\n%s", err, out)
	}
	listing, err := os.ReadFile(file + ".out")
	if err != nil {
		return 0, fmt.Errorf("%w\n%s", err, out)
	}
	first, _, _ := strings.Cut(string(listing), "\n")
	switch {
	case strings.HasPrefix(first, "Optimal"):
		return strconv.ParseFloat(first[strings.LastIndex(first, " ")+1:], 64)
	case strings.HasPrefix(first, "Infeasible") || strings.HasPrefix(first, "Integer infeasible"):
		return 0, errInfeasible
	case strings.HasPrefix(first, "Stopped"):
		return 0, errSlow
	}
	return 0, fmt.Errorf("no status in %q", first)
}

// leasts solves for the aims, each with those before it held at their least.
func (s solver) leasts(p *program, dir string) ([]int, error) {
	var held []int
	for k := range aims {
		file := filepath.Join(dir, fmt.Sprintf("%s-%d.lp", s.name, k))
		if err := os.WriteFile(file, []byte(p.text(k, held)), 0o600); err != nil {
			return nil, err
		}
		ctx, cancel := context.WithTimeout(context.Background(), 2*patience)
		value, err := s.solve(ctx, file)
		late := ctx.Err() != nil
		cancel()
		switch {
		case late:
			return nil, errSlow
		case err != nil:
			return nil, err
		}
		// Every aim is a whole number of steps: the places are bound by whole numbers
		// through differences alone. 1e-3 steps are 1e-4 mm.
		whole := math.Round(value)
		if math.Abs(value-whole) > 1e-3 {
			return nil, fmt.Errorf("%s: %g is no whole number", s.name, value)
		}
		held = append(held, int(whole))
	}
	return held, nil
}

// The planner must agree with both solvers in all three aims, and where nothing fits.
func TestSolversAgree(t *testing.T) {
	for _, s := range solvers {
		if _, err := exec.LookPath(s.name); err != nil {
			if os.Getenv("CI") == "true" {
				t.Fatalf("%s is missing: install glpk-utils and coinor-cbc", s.name)
			}
			t.Skipf("skipped, %s is missing: install glpk-utils and coinor-cbc", s.name)
		}
	}
	n := plantest.Worlds(8, 32)
	var tally struct{ planned, refused, redrawn, free atomic.Int32 }
	t.Run("instances", func(t *testing.T) {
		for k := range n {
			t.Run(fmt.Sprint(k), func(t *testing.T) {
				t.Parallel()
				for draw := range uint64(10) {
					w := drawInstance(uint64(k), draw)
					answer, err := w.againstSolvers(t.TempDir())
					if errors.Is(err, errSlow) || answer == "nothing fits" && draw < 9 && k%8 != 0 {
						if err != nil {
							tally.redrawn.Add(1)
						}
						continue
					}
					if err != nil {
						t.Fatalf("instance %d draw %d: %v\n%v", k, draw, err, w)
					}
					if answer == "nothing fits" {
						tally.refused.Add(1)
						return
					}
					tally.planned.Add(1)
					if w.job.Shift == plan.Free {
						tally.free.Add(1)
					}
					return
				}
				t.Fatalf("instance %d: not solved in ten draws", k)
			})
		}
	})
	t.Logf("%d planned (%d of them with free shift), %d where nothing fits, %d drawn again as too slow",
		tally.planned.Load(), tally.free.Load(), tally.refused.Load(), tally.redrawn.Load())
}

// againstSolvers holds the planner against both solvers.
func (w *world) againstSolvers(dir string) (string, error) {
	p, err := changeover.NewPlanner(&w.beam)
	if err != nil {
		return "", err
	}
	l, c, faults := p.Best(w.standing, &w.job)
	if len(faults) == 0 {
		if err := verify.Changeover(&w.beam, &w.job, w.standing, l, c); err != nil {
			return "", err
		}
	}
	from, to := w.window()
	program := newProgram(&w.beam, w.standing, lay(&w.beam, &w.job, 0), from, to)
	answer := "agreed"
	for _, s := range solvers {
		least, err := s.leasts(program, dir)
		switch got := []int{c.Repositions, c.Parked, steps(c.Travel)}; {
		case errors.Is(err, errInfeasible) && len(faults) > 0:
			answer = "nothing fits"
		case errors.Is(err, errInfeasible):
			return "", fmt.Errorf("%s finds nothing, the planner %v", s.name, got)
		case err != nil:
			return "", err
		case len(faults) > 0:
			return "", fmt.Errorf("%s finds %v, the planner refuses: %v", s.name, least, plantest.Reasons(faults))
		case !slices.Equal(got, least):
			return "", fmt.Errorf("%s finds %v, the planner %v (repositions, parked, travel in 0.1 mm)", s.name, least, got)
		}
	}
	return answer, nil
}

// window is what the job's trim leaves to shift.
func (w *world) window() (from, to plan.Length) {
	centred := lay(&w.beam, &w.job, 0)
	if w.job.Shift == plan.Centred || centred.Trim[0] == 0 {
		return 0, 0
	}
	return w.job.Trim - centred.Trim[0], centred.Trim[1] - w.job.Trim
}

// drawInstance draws a beam of 8 to 14 holders on a 0.1 mm grid, a job, and a
// standing left by another job or drawn freely.
func drawInstance(instance, draw uint64) *world {
	r := rand.New(rand.NewPCG(instance, 100+draw))
	w := &world{}
	b := &w.beam
	n := 8 + r.IntN(7)
	b.HolderWidth, b.Clearance = plan.Length(30+r.IntN(30))*grid, plan.Length(r.IntN(4))*grid
	b.Holders = make([]plan.Condition, n)
	if instance%3 == 0 {
		for range 1 + r.IntN(2) {
			b.Holders[r.IntN(n)] = drawCondition(r)
		}
	}
	b.RestOverWeb = instance%4 > 0
	b.ParkClearance = plan.Length(r.IntN(20)) * grid
	if instance%5 == 0 {
		b.PositionTolerance = plan.Length(1+r.IntN(4)) * grid
	}
	slack := plan.Length(float64(plan.Length(n)*b.Pitch()/grid)*(0.3+0.6*r.Float64())) * grid
	b.Rail = plan.Span{From: -10 * grid, To: -10*grid + plan.Length(n-1)*b.Pitch() + slack}
	margin := b.Rail.Length() / grid / 8 * grid
	b.Web = plan.Span{From: b.Rail.From + margin, To: b.Rail.To - margin}

	free := plan.Length(2 * r.IntN(30))
	w.job = drawInstanceJob(r, b, free)
	w.standing = plantest.Places(r, n, b.Rail, b.Pitch(), grid)
	if p, err := changeover.NewPlanner(b); err == nil && r.IntN(4) > 0 {
		before := drawInstanceJob(r, b, free)
		if _, c, faults := p.Best(w.standing, &before); len(faults) == 0 {
			for i, h := range c.Holders {
				w.standing[i] = h.At
			}
		}
	}
	w.job.Shift = plan.ShiftRule(instance % 2)
	return w
}

// drawInstanceJob draws slits of a few widths, some an odd step wider, and leaves
// the trim's free part to shift in.
func drawInstanceJob(r *rand.Rand, b *plan.Beam, free plan.Length) plan.Job {
	j := plan.Job{ID: "drawn", Trim: plan.Length(5+r.IntN(10)) * grid}
	pitch := b.Pitch()
	widths := []plan.Length{pitch, pitch + 3*grid, pitch + 7*grid, pitch * 3 / 2 / grid * grid, 2 * pitch}
	j.Web = 2*j.Trim + free*grid
	most := 2 + r.IntN(max(1, len(b.Holders)-4))
	for range most {
		w := widths[r.IntN(len(widths))]
		if j.Web+w > b.Web.Length()-2*grid {
			break
		}
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w, Width: w})
		j.Web += w
	}
	if (b.Web.Length()-j.Web)/grid%2 != 0 { // both sides of the web on the grid
		j.Entries[0].Width += grid
		j.Entries[0].Finished += grid
		j.Web += grid
	}
	return j
}
