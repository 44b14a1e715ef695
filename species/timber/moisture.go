package timber

import (
	"math"
	"slices"

	"holt.example/joints"
	"holt.example/species/cite"
)

// FibreSaturation is the moisture content in % above which wood does not
// swell, where nothing better is known of it (Wood Handbook, Eq. 4-9).
const FibreSaturation = 30

// EuropeanSoftwoodPerCent is the change in thickness and width of sawn
// softwood, in % per 1 % of moisture content (EN 1313-1, clause 5).
const EuropeanSoftwoodPerCent = 0.25

// Movement is the change of a dimension across the grain, in mm, when the
// moisture content goes from one percentage to another: dW = W C dM, with the
// coefficient C per 1 % of moisture content. Positive is swelling. The formula
// is good from 6 to 14 %; near that it still is what people use, so any
// percentage up to fibre saturation is taken. Wood Handbook, Eq. 13-2.
func Movement(width joints.MM, coefficient, from, to float64) (joints.MM, error) {
	err := first(
		within("width", float64(width), 0, 1e4, "mm"),
		within("coefficient of movement", coefficient, 0, 0.02, "per %"),
		within("moisture content before", from, 0, FibreSaturation, "%"),
		within("moisture content after", to, 0, FibreSaturation, "%"),
	)
	if err != nil {
		return 0, err
	}
	c := float64(coefficient * (to - from))
	return joints.MM(float64(float64(width) * c)), nil
}

// MovementByShrinkage is the same from the total shrinkage in % (green to
// oven-dry) instead of a coefficient; it holds for any step below fibre
// saturation. Wood Handbook, Eq. 13-3.
func MovementByShrinkage(width joints.MM, shrinkage, from, to float64) (joints.MM, error) {
	err := first(
		within("width", float64(width), 0, 1e4, "mm"),
		within("shrinkage", shrinkage, 0.01, 30, "%"),
		within("moisture content before", from, 0, FibreSaturation, "%"),
		within("moisture content after", to, 0, FibreSaturation, "%"),
	)
	if err != nil {
		return 0, err
	}
	d := FibreSaturation*100/shrinkage - FibreSaturation + from
	return joints.MM(float64(float64(width)*(to-from)) / d), nil
}

// CoefficientOf is the coefficient of movement per 1 % of moisture content, of
// the dimension at 10 %, that a total shrinkage in % leads to:
// C = S/(3000 - 20 S). It reproduces Table 13-5 of the Wood Handbook from its
// Table 4-3, but for a few woods that saturate at 22 %.
func CoefficientOf(shrinkage float64) (float64, error) {
	if err := within("shrinkage", shrinkage, 0, 30, "%"); err != nil {
		return 0, err
	}
	return shrinkage / (3000 - float64(20*shrinkage)), nil
}

// EMC is the moisture content in % that wood comes to in air of a temperature
// in degrees Celsius (-40 to 120) and a relative humidity in % (0 to 100).
// Wood Handbook, Eq. 4-5 (Hailwood and Horrobin; Simpson 1973).
func EMC(celsius, humidity float64) (float64, error) {
	err := first(within("temperature", celsius, -40, 120, "degrees C"), within("relative humidity", humidity, 0, 100, "%"))
	if err != nil {
		return 0, err
	}
	t, h := celsius, humidity/100
	t2 := float64(t * t)
	w := 349 + float64(1.29*t) + float64(0.0135*t2)
	k := 0.805 + float64(0.000736*t) - float64(0.00000273*t2)
	k1 := 6.27 - float64(0.00938*t) - float64(0.000303*t2)
	k2 := 1.91 + float64(0.0407*t) - float64(0.000293*t2)
	kh := float64(k * h)
	one := float64(k1 * kh)
	two := float64(float64(k1*k2) * float64(kh*kh))
	sum := kh/(1-kh) + (one+float64(2*two))/(1+one+two)
	return 1800 / w * sum, nil
}

// MaxMoisture is the largest moisture content in % that wood of a basic
// specific gravity (0.1 to 1.5) can hold, all its hollows full of water. Wood
// Handbook, Eq. 4-3. The handbook's own text prints 267 and 44 for 0.30 and
// 0.90, where the formula gives 268.4 and 46.2.
func MaxMoisture(basicGravity float64) (float64, error) {
	if err := within("basic specific gravity", basicGravity, 0.1, 1.5, ""); err != nil {
		return 0, err
	}
	return 100 * (1.54 - basicGravity) / float64(1.54*basicGravity), nil
}

// ShrinkageAt is the shrinkage in % from green to a moisture content in %
// below fibre saturation, given the total one. Wood Handbook, Eq. 4-9.
func ShrinkageAt(total, moisture float64) (float64, error) {
	err := first(within("shrinkage", total, 0, 30, "%"), within("moisture content", moisture, 0, FibreSaturation, "%"))
	if err != nil {
		return 0, err
	}
	return float64(total * (1 - moisture/FibreSaturation)), nil
}

// GravityAt is the specific gravity, oven-dry mass over volume at a moisture
// content in %, of a wood of a basic specific gravity, its total shrinkage in
// volume taken as 26.5 times that. Wood Handbook, Eq. 4-9 and 4-11 to 4-13.
func GravityAt(basic, moisture float64) (float64, error) {
	err := first(within("basic specific gravity", basic, 0.05, 1.5, ""), within("moisture content", moisture, 0, 400, "%"))
	if err != nil {
		return 0, err
	}
	m := math.Min(moisture, FibreSaturation)
	return basic / (1 - float64(float64(0.265*basic)*(1-m/FibreSaturation))), nil
}

// DensityAt is the density in kg/m3 at a moisture content in %, from the
// specific gravity on the volume at that moisture content. Wood Handbook,
// Eq. 4-14.
func DensityAt(gravity, moisture float64) (float64, error) {
	err := first(within("specific gravity", gravity, 0.05, 1.6, ""), within("moisture content", moisture, 0, 400, "%"))
	if err != nil {
		return 0, err
	}
	return float64(1000 * float64(gravity*(1+moisture/100))), nil
}

// Mass is the mass in kg of a volume in mm3 at a density in kg/m3 (1 to 25000).
func Mass(volume, density float64) (float64, error) {
	err := first(within("volume", volume, 0, 1e12, "mm3"), within("density", density, 1, 25000, "kg/m3"))
	if err != nil {
		return 0, err
	}
	return float64(volume*density) / 1e9, nil
}

// Place is the moisture content that wood comes to outdoors, under cover.
type Place struct {
	Name        string
	Months      string  // "Jan", "Nov-Jun", "all months"
	Least, Most float64 // %; equal where one figure is printed
	Source      string
	Locator     string
	Basis       cite.Basis
}

// Places lists moisture contents outdoors by place and month: of the United
// States only, and mostly from memory. The result is a copy.
func Places() []Place { return slices.Clone(places) }
