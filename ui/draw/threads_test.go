package draw

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"bide/plan"
)

// drawn are threads of holders that keep their order.
func drawn(r *rand.Rand, holders, columns int) []Thread {
	from, to := make([]int, holders), make([]int, holders)
	for i := range holders {
		from[i], to[i] = r.IntN(columns), r.IntN(columns)
	}
	slices.Sort(from)
	slices.Sort(to)
	ts := make([]Thread, holders)
	for i := range ts {
		if ts[i] = (Thread{from[i], to[i], Moves}); r.IntN(3) == 0 {
			ts[i] = Thread{from[i], from[i], Stays} // stays, and may now be out of order; so are rounded ones
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
		a, b := Thread{From: r.IntN(400), To: r.IntN(400)}, Thread{}
		b.From, b.To = a.From+r.IntN(30), a.To+r.IntN(30)
		for y := 0; y <= n; y++ {
			xa, xb := a.From+part(a.To-a.From, y, n), b.From+part(b.To-b.From, y, n)
			if xa > xb {
				t.Fatalf("seed %d: %v and %v cross at height %d of %d", seed, a, b, y, n)
			}
			if xa < min(a.From, a.To) || xa > max(a.From, a.To) || n > 0 && (y == 0 && xa != a.From || y == n && xa != a.To) {
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
		ts := slices.DeleteFunc(all, func(t Thread) bool { return t.Class == Stays })
		rows := levels(ts)
		for i := range ts {
			for j := range ts {
				a, b := ts[i], ts[j]
				if i == j || a.way() == 0 || b.way() == 0 || a.From == b.From || a.To == b.To || a.To == b.From || a.From == b.To {
					continue // meet in a column: too near to be told apart
				}
				left, right := min(a.From, a.To), max(a.From, a.To)
				if left < b.From && b.From < right && rows[i] <= rows[j] || left < b.To && b.To < right && rows[i] >= rows[j] {
					t.Fatalf("seed %d: %v on row %d and %v on row %d cross", seed, a, rows[i], b, rows[j])
				}
			}
		}
	}
}

// pictured is a picture as text.
func pictured(k *Theme, w, h int, ts []Thread) string {
	p := NewPicture(k, w, h)
	p.Draw(ts)
	var out []string
	for y := range h {
		out = append(out, strings.TrimRight(p.Line(y).Text(), " "))
	}
	return strings.Join(out, "\n")
}

// The marks of ASCII: | stays, ' was, , will be, . is idle.
func TestElbowPicture(t *testing.T) {
	k := bareLook(true)
	got := pictured(k, 30, 3, []Thread{
		{1, 1, Stays}, {3, 3, Idles}, {5, 9, Moves}, {8, 13, Moves}, {22, 18, Aimed}, {25, 25, Moves},
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
	k := bareLook(true)
	got := pictured(k, 20, 4, []Thread{{1, 7, Moves}, {3, 9, Moves}, {5, 11, Moves}, {6, 13, Moves}, {7, 15, Moves}})
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
		k := bareLook(ascii)
		for range 2000 {
			w, h := r.IntN(40), r.IntN(12)
			ts := drawn(r, 1+r.IntN(50), 120)
			for i := range ts {
				ts[i].From -= 40
				ts[i].To -= 40
				ts[i].Class = class(r.IntN(int(classes)-1) + 1)
			}
			for i, l := range strings.Split(pictured(k, w, h, ts), "\n") {
				if CellWidth(l) > w {
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
	got := Threads(c, 4, func(x plan.Length) int { return int(x) })
	want := []Thread{{0, 0, Stays}, {10, 10, Idles}, {20, 25, Moves}, {30, 35, Aimed}}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Without colours a thread that moves is denser than one that stays, and that than
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
	if !(dense(Idles) < dense(Stays) && 2*dense(Stays) <= dense(Moves)) {
		t.Errorf("dots of four: idle %d, stays %d, moves %d", dense(Idles), dense(Stays), dense(Moves))
	}
}

// However many move, each holder's position now and next is drawn, the picked one's way
// whole, and what stays and cuts isn't hidden below those that move.
func TestCrowdedDotsKeepPlaces(t *testing.T) {
	const seed, w, h = 9, 40, 5
	r := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		ts := drawn(r, 20+r.IntN(110), 2*w)
		ts[r.IntN(len(ts))].Class = Aimed
		pic := NewPicture(bareLook(false), w, h).(*dots)
		pic.Draw(ts)
		at := func(x, y int) bool { return pic.fields[y/4*w+x/2].bits&dotBits[y%4][x%2] != 0 }
		for _, thread := range ts {
			if !at(thread.From, 0) || thread.Class != Stays && !at(thread.To, 4*h-1) {
				t.Fatalf("seed %d: %v doesn't show where it begins and ends", seed, thread)
			}
			for y := 0; y < 4*h; y++ {
				if x := thread.From + part(thread.To-thread.From, y, 4*h-1); thread.Class == Aimed && !at(x, y) {
					t.Fatalf("seed %d: the picked one %v isn't drawn at height %d", seed, thread, y)
				}
			}
			if f := pic.fields[2*w+thread.From/2]; pic.most && thread.Class == Stays && f.class == Moves {
				t.Fatalf("seed %d: %v stays below those that move", seed, thread)
			}
		}
	}
}
