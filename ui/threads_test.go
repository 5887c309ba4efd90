package ui

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"bide/plan"
)

// drawn are threads of holders that keep their order.
func drawn(r *rand.Rand, holders, columns int) []thread {
	from, to := make([]int, holders), make([]int, holders)
	for i := range holders {
		from[i], to[i] = r.IntN(columns), r.IntN(columns)
	}
	slices.Sort(from)
	slices.Sort(to)
	ts := make([]thread, holders)
	for i := range ts {
		if ts[i] = (thread{from[i], to[i], moves}); r.IntN(3) == 0 {
			ts[i] = thread{from[i], from[i], bides} // stays, and may now be out of order; so are rounded ones
		}
	}
	return ts
}

// At every height the threads are in the order of their holders, begin and end
// where they should, and never leave the stretch between.
func TestThreadsNeverCross(t *testing.T) {
	const seed = 5
	r := rand.New(rand.NewPCG(seed, 0))
	for range 2000 {
		n := r.IntN(80)
		a, b := thread{from: r.IntN(400), to: r.IntN(400)}, thread{}
		b.from, b.to = a.from+r.IntN(30), a.to+r.IntN(30)
		for y := 0; y <= n; y++ {
			xa, xb := a.from+part(a.to-a.from, y, n), b.from+part(b.to-b.from, y, n)
			if xa > xb {
				t.Fatalf("seed %d: %v and %v cross at height %d of %d", seed, a, b, y, n)
			}
			if xa < min(a.from, a.to) || xa > max(a.from, a.to) || n > 0 && (y == 0 && xa != a.from || y == n && xa != a.to) {
				t.Fatalf("seed %d: %v is at %d at height %d of %d", seed, a, xa, y, n)
			}
		}
	}
}

// Of elbows that each have a row, none crosses another: no line along the beam
// meets another's way down.
func TestElbowsDontCross(t *testing.T) {
	const seed = 7
	r := rand.New(rand.NewPCG(seed, 0))
	for range 3000 {
		all := drawn(r, 2+r.IntN(12), 60)
		ts := slices.DeleteFunc(all, func(t thread) bool { return t.class == bides })
		rows := levels(ts)
		for i := range ts {
			for j := range ts {
				a, b := ts[i], ts[j]
				if i == j || a.way() == 0 || b.way() == 0 || a.from == b.from || a.to == b.to || a.to == b.from || a.from == b.to {
					continue // meet in a column: too near to be told apart
				}
				left, right := min(a.from, a.to), max(a.from, a.to)
				if left < b.from && b.from < right && rows[i] <= rows[j] || left < b.to && b.to < right && rows[i] >= rows[j] {
					t.Fatalf("seed %d: %v on row %d and %v on row %d cross", seed, a, rows[i], b, rows[j])
				}
			}
		}
	}
}

// pictured is a picture as text.
func pictured(k *look, w, h int, ts []thread) string {
	p := newPicture(k, w, h)
	p.draw(ts)
	var out []string
	for y := range h {
		out = append(out, strings.TrimRight(textOf(p.line(y)), " "))
	}
	return strings.Join(out, "\n")
}

// The marks of ASCII: | bides, ' was, , will be, . is idle.
func TestElbowPicture(t *testing.T) {
	k := testLook(noColours, false, true)
	got := pictured(k, 30, 3, []thread{
		{1, 1, bides}, {3, 3, idles}, {5, 9, moves}, {8, 13, moves}, {22, 18, aimed}, {25, 25, moves},
	})
	want := strings.Join([]string{
		` | . '  '----,    *===*  ;`,
		` | . '---,   ,    *      ;`,
		` | .     ,   ,    *      ;`,
	}, "\n")
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// More threads than rows go as a stream: where they were, where they will be, and
// which way.
func TestElbowStream(t *testing.T) {
	k := testLook(noColours, false, true)
	got := pictured(k, 20, 4, []thread{{1, 7, moves}, {3, 9, moves}, {5, 11, moves}, {6, 13, moves}, {7, 15, moves}})
	want := strings.Join([]string{
		` ' ' '''`,
		` >>>>>>>>>>>>>>>`,
		` >>>>>>>>>>>>>>>`,
		`       , , , , ,`,
	}, "\n")
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Nothing is drawn outside the picture, and what is drawn at any size doesn't fail.
func TestPicturesOfEverySize(t *testing.T) {
	const seed = 9
	r := rand.New(rand.NewPCG(seed, 0))
	for _, ascii := range []bool{false, true} {
		k := testLook(noColours, false, ascii)
		for range fewer(2000, 300) {
			w, h := r.IntN(40), r.IntN(12)
			ts := drawn(r, 1+r.IntN(50), 120)
			for i := range ts {
				ts[i].from -= 40
				ts[i].to -= 40
				ts[i].class = class(r.IntN(int(classes)-1) + 1)
			}
			for i, l := range strings.Split(pictured(k, w, h, ts), "\n") {
				if cells(l) > w {
					t.Fatalf("seed %d: line %d of %dx%d is %q", seed, i, w, h, l)
				}
			}
		}
	}
}

// A thread says what its holder does.
func TestThreadsSayWhatHoldersDo(t *testing.T) {
	c := &plan.Changeover{
		From: []plan.Length{0, 10, 20, 30},
		Holders: []plan.Stand{
			{At: 0, Use: plan.Cutting, Cut: 1}, {At: 10, Use: plan.Resting}, {At: 25, Use: plan.Cutting, Cut: 2}, {At: 35, Use: plan.Parked},
		},
	}
	got := threads(c, 4, func(x plan.Length) int { return int(x) })
	want := []thread{{0, 0, bides}, {10, 10, idles}, {20, 25, moves}, {30, 35, aimed}}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Every mark that ASCII threads are drawn with is told in the help.
func TestASCIIMarksAreTold(t *testing.T) {
	var told strings.Builder
	for _, m := range marks(testLook(noColours, false, true)) {
		told.WriteString(m[0])
	}
	for _, s := range strokes {
		for _, r := range s {
			if r != ' ' && !strings.ContainsRune(told.String(), r) {
				t.Errorf("the help doesn't tell %q", r)
			}
		}
	}
}

// Without colours a thread that moves is denser than one that bides, and that than
// one that is idle.
func TestClassesDifferWithoutColours(t *testing.T) {
	dense := func(of class) (n int) {
		for _, gap := range gaps[of] {
			if !gap {
				n++
			}
		}
		return n
	}
	if !(dense(idles) < dense(bides) && 2*dense(bides) <= dense(moves)) {
		t.Errorf("dots of four: idle %d, bides %d, moves %d", dense(idles), dense(bides), dense(moves))
	}
}

// However many move, each holder's place now and next is drawn, the picked one's way
// whole, and what bides and cuts isn't hidden below those that move.
func TestCrowdedDotsKeepPlaces(t *testing.T) {
	const seed, w, h = 9, 40, 5
	r := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		ts := drawn(r, 20+r.IntN(110), 2*w)
		ts[r.IntN(len(ts))].class = aimed
		pic := newPicture(testLook(noColours, false, false), w, h).(*dots)
		pic.draw(ts)
		at := func(x, y int) bool { return pic.fields[y/4*w+x/2].bits&dotBits[y%4][x%2] != 0 }
		for _, thread := range ts {
			if !at(thread.from, 0) || thread.class != bides && !at(thread.to, 4*h-1) {
				t.Fatalf("seed %d: %v doesn't show where it begins and ends", seed, thread)
			}
			for y := 0; y < 4*h; y++ {
				if x := thread.from + part(thread.to-thread.from, y, 4*h-1); thread.class == aimed && !at(x, y) {
					t.Fatalf("seed %d: the picked one %v isn't drawn at height %d", seed, thread, y)
				}
			}
			if f := pic.fields[2*w+thread.from/2]; pic.most && thread.class == bides && f.class == moves {
				t.Fatalf("seed %d: %v bides below those that move", seed, thread)
			}
		}
	}
}
