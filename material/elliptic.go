package material

import "math"

// ellipticKD is the complete elliptic integral of the first kind K and
// D = (K - E) / e^2, for a complementary modulus c = sqrt(1 - e^2) in (0, 1].
//
// By the arithmetic-geometric mean of 1 and c (Abramowitz and Stegun 17.6), whose
// steps double the right digits: K = pi / (2 agm), K - E = K sum 2^(n-1) d_n^2 with
// d_0 = e. Taking e^2 out of the sum keeps D exact where e goes to zero and K - E
// would cancel. E = K - e^2 D, and K - D is the third integral that contact needs.
func ellipticKD(c float64) (k, d float64) {
	e2 := (1 - c) * (1 + c)
	if e2 == 0 {
		return math.Pi / 2, math.Pi / 4
	}
	a, g := 1.0, c
	sum, weight := 0.5, 0.5
	for range 64 { // ten do for any c of a float64
		half := (a - g) / 2
		weight *= 2
		sum += weight * half * half / e2
		a, g = (a+g)/2, math.Sqrt(a*g)
		if half <= 1e-9*a { // the next step's would be its square
			break
		}
	}
	k = math.Pi / (2 * a)
	return k, k * sum
}

// curvatureRatio is the ratio of the relative curvatures, larger over smaller, of
// bodies whose contact is an ellipse with the axes' ratio c = b/a in (0, 1]:
// (K - D) / (c^2 D). It falls from infinity to 1 (Johnson, Contact Mechanics, 4.2).
func curvatureRatio(c float64) float64 {
	k, d := ellipticKD(c)
	return (k - d) / (c * c * d)
}

// axesRatio is the b/a whose curvatureRatio is r >= 1, by bisection of its
// logarithm: the ratio falls with b/a, and b/a is never below 1/r.
func axesRatio(r float64) float64 {
	low, high := -math.Log(r), 0.0
	for range 200 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if curvatureRatio(math.Exp(middle)) > r {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Exp((low + high) / 2)
}
