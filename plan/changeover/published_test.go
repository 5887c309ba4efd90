package changeover_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// Published cutting-stock plans as changeovers. Sources are named in the files of
// testdata/reference.

// knifeCase is one published set of patterns and its knife positions.
type knifeCase struct {
	ID        string
	Master    float64
	Sequences []knifeSequence
}

// knifeSequence is patterns in one order, with the positions of their cuts, the
// number of knives the first needs, and of new positions from there on.
type knifeSequence struct {
	Datum, Order string
	First, New   int
	Patterns     [][]float64
	Cuts         [][]float64
}

// reference reads a file of reference data.
func reference(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", name))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

// eachSequence runs a test for every published sequence.
func eachSequence(t *testing.T, test func(t *testing.T, c knifeCase, s knifeSequence)) {
	var file struct{ Cases []knifeCase }
	reference(t, "knife_changes.json", &file)
	if len(file.Cases) != 4 {
		t.Fatalf("%d cases", len(file.Cases))
	}
	for _, c := range file.Cases {
		for _, s := range c.Sequences {
			t.Run(fmt.Sprintf("%s/%s/%s", c.ID, s.Datum, s.Order), func(t *testing.T) { test(t, c, s) })
		}
	}
}

// units is a number of the published data as a length: 1 unit is 1 mm, exact to a
// tenth.
func units(x float64) plan.Length { return plan.Length(x*10+0.5) * mm / 10 }

// layouts lays the patterns out as published: centred through the beam, from the
// web's edge by hand, since a job always keeps trim on both sides.
func (s knifeSequence) layouts(b *plan.Beam, master float64) []plan.Layout {
	var out []plan.Layout
	for _, pattern := range s.Patterns {
		j := patternJob(pattern, master)
		if s.Datum == "centre" {
			out = append(out, b.Lay(&j, j.Slits(), 0))
			continue
		}
		l := plan.Layout{Web: plan.Span{To: units(master)}, Slits: j.Slits()}
		at := plan.Length(0)
		for _, w := range l.Slits {
			if at += w; at < l.Web.To {
				l.Cuts = append(l.Cuts, at)
			}
		}
		l.Trim[1] = l.Web.To - at
		out = append(out, l)
	}
	return out
}

// patternJob is a job that cuts one pattern.
func patternJob(pattern []float64, master float64) plan.Job {
	j := plan.Job{ID: fmt.Sprint(pattern), Web: units(master), Trim: mm / 10}
	for _, w := range pattern {
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: units(w), Width: units(w)})
	}
	return j
}

// publishedBeam is a beam for webs of the master width, holders to be filled in.
func publishedBeam(master float64, pitch plan.Length) *plan.Beam {
	return &plan.Beam{HolderWidth: pitch, RestOverWeb: true, Guide: plan.GuideOperator,
		Rail: plan.Span{From: -20 * mm, To: units(master) + 20*mm}, Web: plan.Span{To: units(master)}}
}

// newCuts counts the cuts of a layout that are not among the places.
func newCuts(l plan.Layout, places []plan.Length) int {
	n := 0
	for _, c := range l.Cuts {
		if !slices.Contains(places, c) {
			n++
		}
	}
	return n
}

// Cuts and new positions of published patterns are those of the reference file, computed there
// from the patterns: no publication prints them but where its row says so.
func TestPublishedKnifePositions(t *testing.T) {
	eachSequence(t, func(t *testing.T, c knifeCase, s knifeSequence) {
		ls := s.layouts(publishedBeam(c.Master, mm/10), c.Master)
		changes := 0
		for k, l := range ls {
			var want []plan.Length
			for _, x := range s.Cuts[k] {
				want = append(want, units(x))
			}
			if !slices.Equal(l.Cuts, want) {
				t.Errorf("pattern %v: cuts %v, reference %v", s.Patterns[k], l.Cuts, want)
			}
			if k > 0 {
				changes += newCuts(l, ls[k-1].Cuts)
			}
		}
		if len(ls[0].Cuts) != s.First || changes != s.New {
			t.Errorf("%d knives at first and %d new positions, reference %d and %d", len(ls[0].Cuts), changes, s.First, s.New)
		}
	})
}

// Each pair of neighbouring patterns as a changeover. Holders stand on the cuts of
// the first and six idle ones in every stretch between and beside them, none on a
// cut. No plan can need fewer repositions than the second has new positions: nobody
// stands there. It needs no more either, since neither pitch nor order binds:
//
// Pitch: cuts are whole halves, idle places quarters, so any two places are 0.25 or
// more apart, and the pitch is 0.2. Order: take the stretch between two cuts kept.
// It has at least as many other holders as new cuts, f >= g. Going along it, count 1
// up at each holder and 1 down at each new cut. The count ends at f-g, so it passes
// from k-1 to k for the last time at some holder, for k = 1..f-g; let those stay.
// Between two that stay there are then as many holders as new cuts, and each of the
// g others takes one, in order.
func TestPublishedPairsNeedTheirNewPositions(t *testing.T) {
	t.Parallel()
	eachSequence(t, func(t *testing.T, c knifeCase, s knifeSequence) {
		ls := s.layouts(publishedBeam(c.Master, mm/5), c.Master)
		total := 0
		for k := range ls[1:] {
			b := publishedBeam(c.Master, mm/5)
			standing := amongIdle(ls[k].Cuts, 6)
			b.Holders = make([]plan.Condition, len(standing))
			got := published(t, b, standing, ls[k+1])
			if want := newCuts(ls[k+1], ls[k].Cuts); got.Repositions != want {
				t.Errorf("%v to %v: %d repositions, %d new positions", s.Patterns[k], s.Patterns[k+1], got.Repositions, want)
			}
			total += got.Repositions
		}
		if total != s.New {
			t.Errorf("%d repositions in all, reference %d new positions", total, s.New)
		}
	})
}

// amongIdle are holders on the cuts, and n idle ones beside the first cut and
// behind each, a quarter off the whole places.
func amongIdle(cuts []plan.Length, n int) []plan.Length {
	at := slices.Clone(cuts)
	for i := range plan.Length(n) {
		at = append(at, i*mm-10*mm+mm/4)
		for _, c := range cuts {
			at = append(at, c+i*mm+mm/4)
		}
	}
	slices.Sort(at)
	return at
}

// published plans a changeover between published patterns and verifies it.
func published(t *testing.T, b *plan.Beam, standing []plan.Length, l plan.Layout) plan.Changeover {
	t.Helper()
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	c, faults := p.Changeover(standing, l)
	if len(faults) > 0 {
		t.Fatalf("refused: %v", plantest.Reasons(faults))
	}
	if err := verify.Changeover(b, nil, standing, l, c); err != nil {
		t.Fatal(err)
	}
	return c
}

// A whole sequence on one beam, from idle holders a quarter off. A holder left idle
// on an old cut may serve there again unmoved, so what bounds each changeover is the
// cuts that nobody stands on. With idle ones enough all over, they are also what it
// takes, by the proof above; and a day never needs more than the number of the reference file.
func TestPublishedSequencesAsDays(t *testing.T) {
	eachSequence(t, func(t *testing.T, c knifeCase, s knifeSequence) {
		b := publishedBeam(c.Master, mm/5)
		ls := s.layouts(b, c.Master)
		var standing []plan.Length
		for x := -10*mm + mm/4; x < b.Web.To+10*mm; x += max(units(c.Master)/200/mm, 1) * mm {
			standing = append(standing, x)
		}
		b.Holders = make([]plan.Condition, len(standing))
		total := 0
		for k, l := range ls {
			got := published(t, b, standing, l)
			if orderBinds(standing, l.Cuts) {
				t.Errorf("pattern %v: too few idle holders to say what it takes", s.Patterns[k])
			}
			if want := newCuts(l, standing); got.Repositions != want {
				t.Errorf("pattern %v: %d repositions, %d cuts that nobody stands on", s.Patterns[k], got.Repositions, want)
			}
			total += got.Repositions
			for i, h := range got.Holders {
				standing[i] = h.At
			}
		}
		if total > s.First+s.New {
			t.Errorf("%d repositions, reference %d", total, s.First+s.New)
		}
	})
}

// orderBinds reports whether some stretch between two cuts that holders stand on
// has fewer other holders than new cuts.
func orderBinds(standing, cuts []plan.Length) bool {
	all := append(slices.Clone(standing), cuts...)
	slices.Sort(all)
	spare := 0
	for i, x := range all {
		switch stood, cut := slices.Contains(standing, x), slices.Contains(cuts, x); {
		case stood && cut && (i == 0 || all[i-1] != x): // listed twice, the stretch ends
			if spare < 0 {
				return true
			}
			spare = 0
		case !cut:
			spare++
		case !stood:
			spare--
		}
	}
	return spare < 0
}

// Real holders 12.3 mm apart, from as many as the cuts to plenty: never fewer
// repositions than there are cuts that nobody stands on.
func TestPublishedPositionsBoundRepositions(t *testing.T) {
	eachSequence(t, func(t *testing.T, c knifeCase, s knifeSequence) {
		if c.Master < 1000 {
			return // strips finer than holders
		}
		b := publishedBeam(c.Master, 12_300_000)
		ls := s.layouts(b, c.Master)
		for _, n := range []int{4, 5, 8, 20, 60, 140} {
			b.Holders = make([]plan.Condition, n)
			standing := make([]plan.Length, n)
			for i := range standing {
				standing[i] = b.Rail.From + b.Rail.Length()/plan.Length(n)*plan.Length(i)
			}
			for k, l := range ls {
				got := published(t, b, standing, l)
				if least := newCuts(l, standing); got.Repositions < least {
					t.Errorf("%d holders, pattern %v: %d repositions, %d cuts that nobody stands on", n, s.Patterns[k], got.Repositions, least)
				}
				for i, h := range got.Holders {
					standing[i] = h.At
				}
			}
		}
	})
}

// The paper on changing knives says 12 for its three patterns as given and 7 for
// the best (read in its abstract). It counts every cut; laid out here, a cut common to
// two patterns, at 180, makes it 11 knife moves, the first setup included (computed).
func TestPublishedPaperCounts(t *testing.T) {
	counted := map[string]int{}
	eachSequence(t, func(t *testing.T, c knifeCase, s knifeSequence) {
		if c.ID != "paper3" || s.Datum != "left" {
			return
		}
		var before []plan.Length
		for _, l := range s.layouts(publishedBeam(c.Master, mm/10), c.Master) {
			counted[s.Order] += newCuts(l, before)
			counted[s.Order+", every cut"] += len(l.Cuts)
			before = l.Cuts
		}
	})
	if counted["as listed, every cut"] != 12 || counted["as listed"] != 11 || counted["patterns and strips in any order"] != 7 {
		t.Errorf("counted %v", counted)
	}
}
