package species

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box"
	"holt.example/species/timber"
)

// Site is what no plan can say: where the box will stand, and how it will be
// made. Its zero value is "not known", and rules that need what is not known are
// left alone.
type Site struct {
	// Place is what it hangs on.
	Place Place
	// Above is the height above ground in metres; 0 is not known.
	Above float64
	// Faces is the way that the entrance looks, and Shaded says that the box
	// stands in the shade at midday.
	Faces  Compass
	Shaded bool
	// Lean is how far the box leans towards its front, in degrees from upright,
	// -45 to 45.
	Lean box.Deg
	// HotSummers asks for the openings that hot places need, WetWall for a gap
	// behind the back.
	HotSummers, WetWall bool
	// Martens says that martens or cats hunt there, Peckers that woodpeckers or
	// squirrels widen holes.
	Martens, Peckers bool
	// Guard is how far below the box a baffle sits on its pole, in mm; 0 is not
	// known.
	Guard box.MM

	// Planed says that the boards are smooth inside, so that claws need a grip.
	// A board whose material is called planed or dressed is taken for smooth too.
	Planed bool
	// Inside and Outside are the coats of paint or stain; Sealed says that end
	// grain in the weather is sealed or capped.
	Inside, Outside Coat
	Sealed          bool
	// Glue is the class of the glue; 0 is not known.
	Glue timber.Glue
	// Fixings are nails and screws that the box will have beside those that its
	// design states; Fixings proposes some. Stainless says that all that are not
	// known are of stainless steel, brass or aluminium.
	Fixings   []Fixing
	Stainless bool
	// Mounting is what it hangs by; its zero value is a fair guess.
	Mounting Mounting
	// Swing is by how much the moisture content of the wood changes over a year,
	// in %; 0 means 4, what a box under its own roof sees at least.
	Swing float64
	// Shop is the maker's workshop; see Workshop.Check.
	Shop Workshop
}

// Place is what a box hangs or stands on.
type Place string

// The places.
const (
	AnyPlace Place = ""
	OnTree   Place = "tree"
	OnWall   Place = "wall"
	OnPole   Place = "pole"
	Indoors  Place = "indoors" // in a barn or loft
)

// Compass is a point of the compass; "" is not known.
type Compass string

// The points.
const (
	North     Compass = "north"
	NorthEast Compass = "north-east"
	East      Compass = "east"
	SouthEast Compass = "south-east"
	South     Compass = "south"
	SouthWest Compass = "south-west"
	West      Compass = "west"
	NorthWest Compass = "north-west"
)

// Coat is what a surface is coated with; "" is not known.
type Coat string

// The coats.
const (
	NoCoat       Coat = "none"
	WaterBased   Coat = "water-based"   // paint or stain, harmless once dry
	SolventBased Coat = "solvent-based" // paint, stain or varnish
	Preservative Coat = "preservative"
)

// check gathers everything about a site that cannot be.
func (s Site) check() error {
	var ps []error
	for _, x := range []struct {
		path        string
		got, lo, hi float64
		unit, why   string
	}{
		{"Above", s.Above, 0, 100, "m", "the height above ground is no height"},
		{"Lean", float64(s.Lean), -45, 45, "deg", "no box leans so far"},
		{"Guard", float64(s.Guard), 0, 10000, "mm", "this is no distance of a baffle"},
		{"Swing", s.Swing, 0, 18, "%", "no wood changes so much: at 12 % and as much more it is fully swollen"},
		{"Glue", float64(s.Glue), 0, float64(timber.D4), "", "the classes of glue are D1 to D4"},
	} {
		if !(x.got >= x.lo && x.got <= x.hi) {
			ps = append(ps, box.Problem{Path: "Review.site." + x.path, Code: "range", Got: num(x.got), Lo: x.lo, Hi: x.hi, Unit: x.unit, Why: x.why})
		}
	}
	word := func(path, got string, known ...string) error {
		if got == "" || slices.Contains(known, got) {
			return nil
		}
		return box.Problem{Path: "Review.site." + path, Code: "unknown-value", Got: fmt.Sprintf("%.40q", got), Why: "there is no such " + path, Try: known[0]}
	}
	_, hung := s.Mounting.check()
	ps = append(ps,
		word("Place", string(s.Place), string(OnTree), string(OnWall), string(OnPole), string(Indoors)),
		word("Faces", string(s.Faces), string(North), string(NorthEast), string(East), string(SouthEast), string(South), string(SouthWest), string(West), string(NorthWest)),
		word("Inside", string(s.Inside), string(NoCoat), string(WaterBased), string(SolventBased), string(Preservative)),
		word("Outside", string(s.Outside), string(NoCoat), string(WaterBased), string(SolventBased), string(Preservative)),
		s.Shop.check(), hung)
	return together(ps...)
}

// swing is the change of moisture content that movement is reckoned for.
func (s Site) swing() float64 {
	if s.Swing == 0 {
		return leastSwing
	}
	return s.Swing
}

// leastSwing and mostSwing are the ends of rule movement-mc, in % of moisture
// content.
const leastSwing, mostSwing = 4, 8

// swells is by how much wood so wide across the grain changes, in mm, for a
// change of moisture content in %; see rule movement.
func swells(width, change float64) float64 {
	m, err := timber.Movement(box.MM(width), timber.EuropeanSoftwoodPerCent/100, 12, 12+change)
	if err != nil {
		return math.NaN()
	}
	return float64(m)
}
