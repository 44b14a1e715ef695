package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
)

// Keyhole is a hole to hang by: the screw's head goes in at the round head below,
// and the box drops until the shank sits in the end of the slot above. Its origin
// is where the shank sits.
type Keyhole struct {
	Head MM // diameter of the round hole
	Slot MM // width of the slot, less than Head
	Drop MM // from the shank's seat down to the middle of the round hole, at least half of Head
}

func (Keyhole) shape() {}

// keyholeOutline is the slot's half circle, its sides, and what is left of the
// head's circle: of the sweep 360 less twice asin(Slot/Head), in two arcs.
func keyholeOutline(c *collector, path string, k Keyhole) (outline.Contour, bool) {
	n := len(c.ps)
	c.length(path+".Head", k.Head, "diameter of a keyhole's head")
	if len(c.ps) == n {
		c.within(path+".Slot", float64(k.Slot), minLength, float64(k.Head)*0.95, "mm", "width of a keyhole's slot: the head of the screw must not slip through")
		c.within(path+".Drop", float64(k.Drop), float64(k.Head)/2, maxLength, "mm", "drop of a keyhole")
	}
	if len(c.ps) > n {
		return nil, false
	}
	r, h, d := float64(k.Head)/2, float64(k.Slot)/2, float64(k.Drop)
	sn := h / r
	cs := math.Sqrt(1 - float64(sn*sn))
	b := (1 + cs) / sn                          // tan of a quarter of the whole sweep
	half := b / (1 + math.Sqrt(1+float64(b*b))) // of half of it
	y := -d + float64(r*cs)
	return settled(outline.Contour{{X: h, Y: y}, {X: h, Bulge: 1}, {X: -h}, {X: -h, Y: y, Bulge: half}, {X: 0, Y: -d - r, Bulge: half}}), true
}

// Hang makes the holes by which a box hangs on its long back.
type Hang struct {
	On    Part  // "" means the back; on a polygon it must be said
	Shape Shape // Round, Slot, Keyhole ...; nil means a round hole of 6
	// Heights of the shapes' origins over the cavity floor, along the wall. nil
	// means the middles of what the wall runs on by, above the roof and below the
	// floor.
	Heights []MM
	Apart   MM // two beside one another at each height, so far apart; 0 is one in the middle
	By      Hanger
}

func (Hang) feature() {}

func (f Hang) on(s *shell) []onPart { return []onPart{{".On", s.backOr(f.On)}} }

func (f Hang) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	shape := f.Shape
	if shape == nil {
		shape = Round{Diameter: 6}
	}
	o, _ := shapeOutline(s.c, path+".Shape", shape)
	for i, h := range f.Heights {
		s.c.offset(fmt.Sprintf("%s.Heights[%d]", path, i), h, "height of a hole over the cavity floor")
	}
	s.c.atLeast0(path+".Apart", f.Apart, "distance of two holes; 0 is one")
	f.By.check(s.c, path+".By", narrowest(shape))
	p := by[s.backOr(f.On)]
	if len(s.c.ps) > n || p == nil {
		return
	}
	heights := make([]float64, 0, len(f.Heights))
	for _, h := range f.Heights {
		heights = append(heights, float64(h))
	}
	if f.Heights == nil {
		_, cl := sincos(p.face.lean)
		b := p.wallBox()
		if p.face.above > 0 {
			heights = append(heights, b.Max.Y-p.face.above/cl/2)
		}
		if p.face.below > 0 {
			heights = append(heights, b.Min.Y+p.face.below/cl/2)
		}
		if len(heights) == 0 {
			s.c.add(Problem{Path: path + ".Heights", Code: "no-room", Got: string(p.face.part), Why: fmt.Sprintf("%s runs on neither above the roof nor below the floor: say at which heights the holes are", p.face.part), Try: "Walls: []box.Wall{{On: box.Back, Above: 80, Below: 60}}"})
			return
		}
	}
	xs := []float64{0}
	if f.Apart > 0 {
		xs = []float64{-float64(f.Apart) / 2, float64(f.Apart) / 2}
	}
	for _, y := range heights {
		for _, x := range xs {
			p.feats = append(p.feats, feat{path: path, source: "hanging hole", use: UseOpening, outline: settled(o.Transform(outline.Shift(x, y)))})
		}
	}
	s.hang(len(heights)*len(xs), f.By, size(o), "screw or nail to hang the box by", []Part{p.face.part}, "through the long back into the tree or wall", "; of aluminium in a living tree")
}
