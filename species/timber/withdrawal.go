package timber

import (
	"math"

	"holt.example/joints"
)

// The loads at which a fastener is drawn out of side grain. What the Wood
// Handbook gives is the mean ultimate load in a test; what the American Wood
// Council gives is an allowable load, five to six times smaller. End grain
// holds half to three quarters (common practice).

// NailWithdrawal is the mean ultimate load in N that draws a smooth nail of a
// diameter, a length in, from wood of a specific gravity (0.2 to 1):
// 54.12 G^2.5 D L. Wood Handbook, Eq. 8-1.
func NailWithdrawal(gravity float64, diameter, in joints.MM) (float64, error) {
	if err := drawn(gravity, diameter, in); err != nil {
		return 0, err
	}
	g2 := float64(gravity * gravity)
	return product(54.12, g2, sqrt(gravity), float64(diameter), float64(in)), nil
}

// RingNailWithdrawal is the same for an annularly threaded nail:
// 77.57 G^2 D L. Wood Handbook, Eq. 8-2a.
func RingNailWithdrawal(gravity float64, diameter, in joints.MM) (float64, error) {
	if err := drawn(gravity, diameter, in); err != nil {
		return 0, err
	}
	return product(77.57, gravity, gravity, float64(diameter), float64(in)), nil
}

// ScrewWithdrawal is the same for a wood screw of a shank diameter and a length
// of thread in: 108.25 G^2 D L. Wood Handbook, Eq. 8-10.
func ScrewWithdrawal(gravity float64, shank, thread joints.MM) (float64, error) {
	if err := drawn(gravity, shank, thread); err != nil {
		return 0, err
	}
	return product(108.25, gravity, gravity, float64(shank), float64(thread)), nil
}

// PoundsPerInch is a load per length, in N/m.
const PoundsPerInch = 4.4482216152605 / 0.0254

// NailAllowable is the allowable withdrawal of a plain nail in N per metre of
// its length in the wood: 1380 G^2.5 D lb/in with D in inches. American Wood
// Council, example E2.1a.
func NailAllowable(gravity float64, diameter joints.MM) (float64, error) {
	if err := drawn(gravity, diameter, 1); err != nil {
		return 0, err
	}
	g2 := float64(gravity * gravity)
	return product(1380*PoundsPerInch, g2, sqrt(gravity), float64(diameter)/25.4), nil
}

// LagAllowable is the allowable withdrawal in N of a lag screw with a length of
// thread in: 1800 G^1.5 D^0.75 lb/in with D in inches. American Wood Council,
// example E2.3.
func LagAllowable(gravity float64, diameter, thread joints.MM) (float64, error) {
	if err := drawn(gravity, diameter, thread); err != nil {
		return 0, err
	}
	d := float64(diameter) / 25.4
	return product(1800*PoundsPerInch, gravity, sqrt(gravity), sqrt(d), sqrt(sqrt(d)), float64(thread)/1000), nil
}

func drawn(gravity float64, diameter, in joints.MM) error {
	return first(
		within("specific gravity", gravity, 0.2, 1, ""),
		within("diameter", float64(diameter), 0.5, 30, "mm"),
		within("length in the wood", float64(in), 0, 1000, "mm"),
	)
}

// product multiplies from the left, each step rounded, so that every processor
// gives the same digits.
func product(x ...float64) float64 {
	p := 1.0
	for _, f := range x {
		p = float64(p * f)
	}
	return p
}

// sqrt is exact to the last digit on every processor, unlike a general power.
func sqrt(x float64) float64 { return math.Sqrt(x) }
