package colony

import "math"

// z95 is the two-sided 95 % quantile of the standard normal distribution.
var z95 = normalQuantile(0.975)

// wilsonInterval is the Wilson score interval at 95 % for a share of which
// count of n were found, without correction for continuity (Wilson 1927;
// method 3 of Newcombe 1998). Both ends are shares from 0 to 1. With n = 0
// nothing is known: 0 to 1.
func wilsonInterval(count, n int) (low, high float64) {
	if n <= 0 {
		return 0, 1
	}
	p, m, zz := float64(count)/float64(n), float64(n), z95*z95
	mid := (p + zz/(2*m)) / (1 + zz/m)
	half := z95 / (1 + zz/m) * math.Sqrt(p*(1-p)/m+zz/(4*m*m))
	return math.Max(0, mid-half), math.Min(1, mid+half)
}

// poissonInterval holds, at 95 %, the mean number of which count were found:
// Byar's approximation to the exact limits. The upper one is off by less than
// 0.2 %, the lower one by less than 2 % from a count of 4 on; for 1 to 3 it is
// too low by less than 0.02. A count of zero is compatible with a mean up to
// 3.69, the exact limit.
func poissonInterval(count int) (low, high float64) {
	if count <= 0 {
		return 0, 3.6889
	}
	c := float64(count)
	low = c * math.Pow(1-1/(9*c)-z95/(3*math.Sqrt(c)), 3)
	d := c + 1
	high = d * math.Pow(1-1/(9*d)+z95/(3*math.Sqrt(d)), 3)
	return math.Max(0, low), high
}
