package material

import "testing"

// By hand: a band from 10 to 20, its ends part of it, and a reach of 5. To the operator
// side 4 lies 6 from it and 5 just within reach, to the drive side 21 and 25 do and 26
// doesn't; 10, 15 and 20 lie in it.
func TestDamageByHand(t *testing.T) {
	d := DamageFrom(10, 20, 5, []Cut{{26, 1000}, {4, 500}, {5, 1}, {9, 2}, {5, 4}, {10, 10}, {20, 20}, {15, 40}, {21, 100}, {25, 200}})
	if d.Metres != 70 || d.Operator != (Beside{true, 9, 7}) || d.Drive != (Beside{true, 21, 300}) {
		t.Errorf("%+v", d)
	}
	if d := DamageFrom(10, 20, 5, []Cut{{4, 500}}); !d.Operator.Cuts || d.Operator.Nearest != 4 || d.Operator.Metres != 0 || d.Drive.Cuts || d.Metres != 0 {
		t.Errorf("one cut out of reach: %+v", d)
	}
}
