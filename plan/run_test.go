package plan

import (
	"math"
	"testing"
	"time"
)

// 1000 m at 120 m/min take 500 s, and 504 with ramps of 0.5 m/s2; the rest are trapezoids
// and triangles in metres and m/s, worked by hand from s = v t - v^2/2a - v^2/2b and
// t = sqrt(2 s (1/a + 1/b)).
func TestRestToRest(t *testing.T) {
	for _, c := range []struct{ metres, speed, up, down, want float64 }{
		{1000, 120, 0, 0, 500}, {1000, 120, 0.5, 0.5, 504},
		{1.0, 0.25 * 60, 0.5, 0.5, 4.5}, {0.54, 15, 0.5, 0.5, 2.66}, {0.82, 15, 0.5, 0.5, 3.78},
		{0.125, 15, 0.5, 0.5, 1.0},       // just reaches its speed
		{0.05, 15, 0.5, 0.5, 0.63245553}, // a triangle: sqrt(2 * 0.05 * 4)
		{1.0, 15, 0.5, 1.0, 4.375},       // down faster than up
		{100, 20 * 60, 2, 4, 12.2474487}, // a triangle: sqrt(2 * 100 * 0.75)
		{0, 120, 0.5, 0.5, 0}, {0, 120, 0, 0, 0},
		{100, 60, 0.5, 0, 101}, // up only: half of the 2 s ramp is lost
	} {
		if got := RestToRest(c.metres, c.speed, c.up, c.down); math.Abs(got-c.want) > 1e-8*max(c.want, 1) {
			t.Errorf("%v: %v s", c, got)
		}
	}
}

// Longer takes longer, faster and steeper never do, and the time passes smoothly from
// triangle to trapezoid.
func TestRestToRestLaws(t *testing.T) {
	last := -1.0
	for m := 0.0; m < 40; m += 0.25 { // full speed is reached at 2*2/0.5 = 8 m
		got, faster, steeper := RestToRest(m, 120, 0.5, 0.5), RestToRest(m, 150, 0.5, 0.5), RestToRest(m, 120, 0.6, 0.5)
		if got <= last || faster > got+1e-12 || steeper > got+1e-12 {
			t.Errorf("%v m: %v after %v; faster %v, steeper %v", m, got, last, faster, steeper)
		}
		last = got
	}
	for _, m := range []float64{8 - 1e-9, 8 + 1e-9} {
		if got := RestToRest(m, 120, 0.5, 0.5); math.Abs(got-8) > 1e-8 {
			t.Errorf("at the corner: %v", got)
		}
	}
}

// 1000 m at 120 m/min take 500 s; each length from rest to rest adds 4 s with ramps of
// 0.5 m/s2. By hand:
//   - sets of 500 m: one change, 2 lengths, 508 s; of 400 m: 2 changes, 3 lengths, 512 s;
//   - parents of 600 m: one change;
//   - sets of 200 m and parents of 400 m: changes of sets at 200, 400, 600 and 800, of
//     parents at 400 and 800, where both are one stop: 5 lengths;
//   - 1000.5 m in sets of 500 m: the last 0.5 m are a triangle of 2 s, twice sqrt(0.5/0.5).
//
// A set takes 75 s, a parent 420 s.
func TestRunStopsAtRolls(t *testing.T) {
	ramped := Line{RampUp: 0.5, RampDown: 0.5, SetChange: Stop{75 * time.Second, true}, ParentChange: Stop{420 * time.Second, true}}
	bare := Line{RampUp: 0.5, RampDown: 0.5}
	for _, c := range []struct {
		line                    Line
		metres, set, parent     float64
		sets, parents, legs     int
		webSeconds, stopSeconds float64
	}{
		{ramped, 1000, 0, 0, 0, 0, 1, 504, 0},
		{ramped, 1000, 1000, 0, 0, 0, 1, 504, 0},
		{ramped, 1000, 2000, 3000, 0, 0, 1, 504, 0},
		{ramped, 1000, 500, 0, 1, 0, 2, 508, 75},
		{ramped, 1000, 400, 0, 2, 0, 3, 512, 150},
		{ramped, 1000, 0, 600, 0, 1, 2, 508, 420},
		{ramped, 1000, 200, 400, 4, 2, 5, 520, 4*75 + 2*420},
		{ramped, 1000.5, 500, 0, 2, 0, 3, 510, 150},
		{bare, 1000, 200, 400, 4, 2, 5, 520, 0}, // at rest, though no file says for how long
		{ramped, 1000, 0.1, 0, 9999, 0, 10000, 0, 9999 * 75},
	} {
		r := c.line.Run(&Job{Metres: c.metres, Speed: 120, SetMetres: c.set, ParentMetres: c.parent})
		if r.SetChanges != c.sets || r.ParentChanges != c.parents || r.Legs != c.legs || math.Abs(r.Stops.Seconds()-c.stopSeconds) > 1e-9 {
			t.Errorf("%+v: %+v", c, r)
		}
		if c.webSeconds > 0 && math.Abs(r.Web.Seconds()-c.webSeconds) > 2e-6 {
			t.Errorf("%+v: the web runs %v", c, r.Web)
		}
		if r.Total() != r.Web+r.Stops {
			t.Errorf("%+v", r)
		}
	}
	if r := ramped.Run(&Job{Metres: 1000}); r != (Run{}) {
		t.Errorf("without a speed: %+v", r)
	}
}

// What has run already isn't run again. 1000 m at 120 m/min in sets of 400 m and parents of 600 m,
// by hand: from 300 m on stops are at 400, 600 and 800, and 4 lengths of 700 m in all take
// 350 s + 4 * 4 s; from 600 m on, where a parent just ended, one at 800 m and 2 lengths of 400 m,
// 200 s + 2 * 4 s; all of it run is nothing. A job that is done takes what all of it takes.
func TestRunGoesOn(t *testing.T) {
	l := Line{RampUp: 0.5, RampDown: 0.5, SetChange: Stop{75 * time.Second, true}, ParentChange: Stop{420 * time.Second, true}}
	for _, c := range []struct {
		ran        float64
		state      State
		want       time.Duration
		sets, legs int
	}{
		{300, Running, (350 + 16 + 2*75 + 420) * time.Second, 2, 4},
		{300, OnHold, (350 + 16 + 2*75 + 420) * time.Second, 2, 4},
		{600, Running, (200 + 8 + 75) * time.Second, 1, 2},
		{1000, Running, 0, 0, 1},
		{2000, Running, 0, 0, 1},
		{1000, Done, (500 + 16 + 2*75 + 420) * time.Second, 2, 4},
	} {
		r := l.Run(&Job{Metres: 1000, Speed: 120, SetMetres: 400, ParentMetres: 600, State: c.state, Ran: c.ran})
		if (r.Total()-c.want).Abs() > 2*time.Microsecond || r.SetChanges != c.sets || r.Legs != c.legs {
			t.Errorf("%+v: %+v, in all %v", c, r, r.Total())
		}
	}
}

// What isn't given is named, job by job.
func TestUncounted(t *testing.T) {
	all := Line{SetChange: Stop{0, true}, ParentChange: Stop{0, true}}
	jobs := []*Job{{ID: "A", SetMetres: 50, ParentMetres: 6000}, {ID: "B"}}
	if u := UncountedIn(&all, jobs); len(u.Sets) != 1 || u.Sets[0] != "B" || len(u.Parents) != 1 || u.Parents[0] != "B" {
		t.Errorf("%+v", u)
	}
	if u := UncountedIn(&Line{}, jobs); len(u.Sets) != 2 || len(u.Parents) != 2 {
		t.Errorf("a line that gives nothing: %+v", u)
	}
}
