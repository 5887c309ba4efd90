package plan

import (
	"testing"
	"time"
)

// Trapezoid and triangle of speed, worked by hand from s = v t - v^2/a and
// s = a t^2/4 (any textbook of mechanics).
func TestTravelTakesATrapezoid(t *testing.T) {
	d := Drive{Speed: 250 * Millimetre, Acceleration: 500 * Millimetre}
	for _, c := range []struct {
		way Length
		s   float64
	}{
		{0, 0},
		{50 * Millimetre, 0.632456}, // triangle: 2 sqrt(50/500)
		{125 * Millimetre, 1.0},     // just reaches full speed
		{540 * Millimetre, 2.66},
		{820 * Millimetre, 3.78},
		{1000 * Millimetre, 4.5},
	} {
		if got := d.Travel(c.way).Seconds(); got < c.s-1e-6 || got > c.s+1e-6 {
			t.Errorf("%s mm take %v s, want %v", c.way.MM(), got, c.s)
		}
	}
}

// A changeover with every cause of setup, added up by hand, one after the other; where the
// site has made it safe, blades beside the moves.
func TestSetupByCause(t *testing.T) {
	b := &Beam{
		HolderWidth: 9 * Millimetre, Clearance: Millimetre, Rail: Span{0, 1000 * Millimetre}, Holders: make([]Condition, 3),
		Drive: Drive{Kind: Shuttle, Speed: 100 * Millimetre, Pick: 2 * time.Second, Set: time.Second},
		Setup: Setup{Every: 6 * time.Minute, Rethread: 5 * time.Minute, Blade: 40 * time.Second,
			CleanDown: 15 * time.Minute, Pressure: 30 * time.Second, Wicks: 4 * time.Minute, Pistons: 20 * time.Minute, Crew: 2},
	}
	wants := Blade{45, 0.15}
	now := &Positions{Material: "paper", Web: 500, SetBar: 2, Blades: []Blade{{30, 0.1}, {}, wants}}
	j := &Job{Material: "film", Web: 500, SetBar: 3, SiliconeFree: true, Blade: wants, Wick: "bar, water", Pistons: Pistons{2, 100}}
	c := change([]Length{100 * Millimetre, 200 * Millimetre, 300 * Millimetre},
		[]Length{100 * Millimetre, 250 * Millimetre, 300 * Millimetre})
	for i := range c.Holders {
		c.Holders[i].Use = Cutting
	}
	c.Moves = []Move{{Holder: 2, From: 200 * Millimetre, To: 250 * Millimetre}}
	got := b.SetupTime(now, j, c)
	want := SetupTime{
		Positioner: 8 * time.Second, // 200 mm out, 2 s, 50 mm, 1 s, 250 mm home, at 100 mm/s
		Crew:       40 * time.Second,
		Every:      6 * time.Minute, Rethread: 5 * time.Minute, CleanDown: 15 * time.Minute, Pressure: 30 * time.Second, Wicks: 4 * time.Minute, Pistons: 20 * time.Minute,
		Swaps: 2, Carriage: 500 * Millimetre,
	}
	if got != want {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	if got.Total() != 50*time.Minute+78*time.Second { // 6+5+15+4+20 min, 30+40+8 s
		t.Errorf("in all %v", got.Total())
	}
	b.Setup.Beside = true
	if got := b.SetupTime(now, j, c).Total(); got != 50*time.Minute+70*time.Second {
		t.Errorf("in all %v with blades beside the moves", got)
	}
	if got := b.SetupTime(&Positions{Wick: "bar, water", Pistons: Pistons{2, 100}}, &Job{}, c); got.Wicks != 0 || got.Pistons != 20*time.Minute {
		t.Errorf("a job without wicking, on the beam's own pistons: %+v", got)
	}
	b.Drive = Drive{Kind: ByHand, Hand: 25 * time.Second}
	c.Moves = append(c.Moves, c.Moves[0], c.Moves[0])
	if got := b.SetupTime(now, j, c).Positioner; got != 50*time.Second {
		t.Errorf("three moves by two people take %v, want two rounds of 25 s", got)
	}
}

// Holders that drive themselves run at once, but one waits where its neighbour is
// in the way: {10,20} to {25,35} at a pitch of 5 is 3 s after 3 s at 5 a second.
func TestOwnDrivesWaitForNeighbours(t *testing.T) {
	b := &Beam{HolderWidth: 5, Drive: Drive{Kind: OwnDrive, Speed: 5}}
	waiting := []Move{{Holder: 2, From: 20, To: 35}, {Holder: 1, From: 10, To: 25}}
	if got, _ := b.PositionerTime(waiting); got != 6*time.Second {
		t.Errorf("one behind the other take %v, want 6s", got)
	}
	apart := []Move{{Holder: 2, From: 20, To: 35}, {Holder: 1, From: 10, To: 15}}
	if got, _ := b.PositionerTime(apart); got != 3*time.Second {
		t.Errorf("clear of each other take %v, want 3s", got)
	}
}

// change is the changeover between two lists of places.
func change(from, to []Length) *Changeover {
	c := &Changeover{From: from}
	for _, at := range to {
		c.Holders = append(c.Holders, Stand{At: at})
	}
	return c
}
