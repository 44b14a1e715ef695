// Package anybox draws random designs of every kind, for the property tests of
// this library: the same seed gives the same design.
package anybox

import (
	"math"
	"math/rand/v2"

	"holt.example/box"
	"holt.example/joints"
)

// Kinds says what a design is made of, one of each axis.
type Kinds struct{ Footprint, Roof, Laps, Corner, Floor string }

// The axes of the product that the random designs cover.
var (
	Footprints = []string{"rectangle", "regular", "irregular"}
	Roofs      = []string{"flat", "pent", "gable front to back", "gable left to right", "hip"}
	Laps       = []string{"front and back", "sides", "pinwheel"}
	Corners    = []string{"butt", "mitre", "rebate", "comb"}
	Floors     = []string{"between", "rebated", "housed", "under", "none"}
)

// Design draws a design that a maker might state, of the given kinds:
// thicknesses 6 to 30, walls leaning -4 to 12 degrees, all sizes to a tenth.
func Design(r *rand.Rand, k Kinds) box.Design {
	between := func(lo, hi float64) box.MM { return box.MM(math.Round((lo+(hi-lo)*r.Float64())*10) / 10) }
	d := box.Design{Name: "random", Board: box.Board{Thickness: between(9, 24)}, Boards: map[box.Part]box.Board{}}
	var walls []box.Part
	height := between(120, 320)
	switch k.Footprint {
	case "rectangle":
		d.Size = box.Cavity{Width: between(110, 300), Depth: between(110, 300), Height: height}
		walls = []box.Part{box.Front, box.Right, box.Back, box.Left}
	case "regular":
		sides := 3 + r.IntN(6)
		d.Footprint = box.Regular{Sides: sides, Across: between(160, 300)}
		d.Size = box.Cavity{Height: height}
		for i := 0; i < sides; i++ {
			walls = append(walls, box.WallN(i+1))
		}
	case "irregular":
		sides := 4 + r.IntN(4)
		var pts []box.Point
		turn := -math.Pi/2 - math.Pi/float64(sides)
		for i := 0; i < sides; i++ {
			a := turn + (float64(i)+0.25*(r.Float64()-0.5))*2*math.Pi/float64(sides)
			rad := 150 + 25*r.Float64()
			pts = append(pts, box.Point{X: box.MM(rad * math.Cos(a)), Y: box.MM(rad * math.Sin(a))})
			walls = append(walls, box.WallN(i+1))
		}
		d.Footprint = box.Polygon{Points: pts}
		d.Size = box.Cavity{Height: height}
	}
	over := box.Overhangs{Front: between(0, 50), All: between(0, 40)}
	if k.Footprint == "rectangle" && r.IntN(2) == 0 {
		over = box.Overhangs{Front: between(0, 50), Left: between(0, 30), Right: between(0, 30)}
	}
	tops, ends := box.Tops(r.IntN(6)/5), box.RoofEnds(r.IntN(6)/5)
	switch k.Roof {
	case "flat":
		d.Roof = box.Flat{Over: over}
	case "pent":
		d.Roof = box.Pent{Pitch: box.Deg(between(3, 30)), Over: over, Tops: tops, Ends: ends}
	case "gable front to back":
		d.Roof = box.Gable{Pitch: box.Deg(between(15, 50)), Over: over, Tops: tops, Ridge: ridge(r)}
	case "gable left to right":
		d.Roof = box.Gable{Pitch: box.Deg(between(15, 50)), Over: over, Run: box.LeftToRight, Tops: tops, Ridge: ridge(r)}
	case "hip":
		d.Roof = box.Hip{Pitch: box.Deg(between(15, 50)), Over: box.Overhangs{Front: over.Front, All: over.Front}}
	}
	lean := r.IntN(3) == 0
	for _, w := range walls {
		if r.IntN(3) == 0 {
			if k.Corner == "mitre" { // of unlike boards a mitre soon reverses
				d.Boards[w] = box.Board{Thickness: d.Board.Thickness + between(-1.5, 1.5)}
			} else {
				d.Boards[w] = box.Board{Thickness: between(6, 30)}
			}
		}
		if lean {
			d.Walls = append(d.Walls, box.Wall{On: w, Lean: box.Deg(between(-4, 12))})
		}
	}
	if r.IntN(2) == 0 {
		d.Boards[box.AllRoof] = box.Board{Thickness: between(6, 30)}
	}
	if r.IntN(2) == 0 {
		d.Boards[box.Floor] = box.Board{Thickness: between(6, 22)}
	}
	switch k.Laps {
	case "front and back":
		d.Corners.Laps = box.FrontBack
	case "sides":
		d.Corners.Laps = box.Sides
	case "pinwheel":
		d.Corners.Laps = box.Pinwheel
	}
	switch k.Corner {
	case "mitre":
		d.Corners.Joint = joints.Mitre{}
	case "rebate":
		d.Corners.Joint = joints.Rebate{Through: r.IntN(4) == 0}
	case "comb":
		d.Corners.Joint = joints.Comb{}
	}
	switch k.Floor {
	case "between":
		d.Floor = box.FloorBetween{Raise: between(0, 30)}
	case "rebated":
		d.Floor = box.FloorBetween{Raise: between(0, 10), Joint: joints.Rebate{}}
	case "housed":
		d.Floor = box.FloorBetween{Raise: between(9, 30), Joint: joints.Housing{}}
	case "under":
		d.Floor = box.FloorUnder{Over: box.Overhangs{All: between(0, 20), Front: between(0, 20)}}
	case "none":
		d.Floor = box.NoFloor{}
	}
	if r.IntN(3) == 0 {
		d.Features = append(d.Features, box.Entrance{Shape: box.Round{Diameter: 25}, Above: between(30, 60)})
	}
	if k.Floor != "none" && r.IntN(3) == 0 {
		d.Features = append(d.Features, box.Drains{})
	}
	return d
}

func ridge(r *rand.Rand) joints.Joint {
	if r.IntN(2) == 0 {
		return joints.Mitre{}
	}
	return nil
}
