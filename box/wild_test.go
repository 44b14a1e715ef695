package box_test

import (
	"encoding/binary"
	"math"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// wild reads a design from bytes. A number is either one that a maker might
// state or, where wide is set, any bits at all.
type wild struct {
	b       []byte
	wide    bool
	polygon bool
}

func (w *wild) byte() byte {
	if len(w.b) == 0 {
		return 0
	}
	x := w.b[0]
	w.b = w.b[1:]
	return x
}

func (w *wild) pick(n int) int { return int(w.byte()) % n }

// slip is now and then true: for choices that no maker would make.
func (w *wild) slip() bool { return w.byte() > 250 }

// some is a number that is mostly left out.
func (w *wild) some(lo, hi float64) box.MM {
	if w.pick(3) > 0 {
		return 0
	}
	return w.mm(lo, hi)
}

// choice is 0 to n-1, and n by a slip.
func (w *wild) choice(n int) int {
	if w.slip() {
		return n
	}
	return w.pick(n)
}

func (w *wild) number(lo, hi float64) float64 {
	if w.wide && w.pick(16) == 0 {
		var raw [8]byte
		for i := range raw {
			raw[i] = w.byte()
		}
		return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
	}
	return lo + (hi-lo)*float64(w.byte())/255
}

func (w *wild) mm(lo, hi float64) box.MM   { return box.MM(w.number(lo, hi)) }
func (w *wild) deg(lo, hi float64) box.Deg { return box.Deg(w.number(lo, hi)) }

// wall is a wall of the box, or by a slip any part at all.
func (w *wild) wall() box.Part {
	switch {
	case w.slip():
		return w.part()
	case w.polygon:
		return box.WallN(1 + w.pick(3))
	}
	return fourWalls[w.pick(4)]
}

func (w *wild) part() box.Part {
	all := []box.Part{box.Front, box.Back, box.Left, box.Right, box.Floor, box.Roof, box.RoofFront, box.RoofLeft, box.WallN(1), box.WallN(2), box.InnerPart("p"), "", "lid"}
	return all[w.pick(len(all))]
}

func (w *wild) joint() joints.Joint {
	switch w.pick(9) {
	case 0:
		return joints.Butt{LapSquare: w.pick(2) == 0, EndSquare: w.pick(2) == 0}
	case 1:
		return joints.Mitre{}
	case 2:
		return joints.Rebate{Depth: w.some(1, 8), Width: w.some(5, 20), Through: w.pick(2) == 0}
	case 3:
		return joints.Housing{Depth: w.some(1, 6), Play: w.some(0.1, 1), Swell: w.some(0.1, 1), Stop: w.some(1, 20), StopFrom: w.some(1, 9), StopTo: w.some(1, 9), Dry: w.pick(2) == 0}
	case 4:
		return joints.Comb{Fingers: w.pick(12), Play: w.some(0.1, 1), First: joints.Owner(w.choice(3))}
	case 5:
		return (*joints.Mitre)(nil)
	}
	return nil
}

func (w *wild) over() box.Overhangs {
	if w.polygon {
		return box.Overhangs{Front: w.mm(0, 50), All: w.mm(0, 10)}
	}
	return box.Overhangs{Front: w.mm(0, 50), Back: w.mm(0, 20), Left: w.mm(0, 30), Right: w.mm(0, 30), All: w.mm(0, 10)}
}

func (w *wild) shape() box.Shape {
	if w.slip() {
		return nil
	}
	switch w.pick(4) {
	case 0:
		return box.Round{Diameter: w.mm(5, 60)}
	case 1:
		return box.Rect{Width: w.mm(5, 60), Height: w.mm(5, 60), Corner: w.mm(0, 10)}
	case 2:
		return box.Slot{Width: w.mm(5, 60), Height: w.mm(5, 60)}
	}
	return box.Freeform{Outline: w.outline(25)}
}

// outline goes once round its origin, mostly.
func (w *wild) outline(size float64) outline.Contour {
	n := 3 + w.pick(6)
	if w.slip() {
		n = w.pick(3)
	}
	c := make(outline.Contour, n)
	for i := range c {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := w.number(size/3, size)
		c[i] = outline.Vertex{X: r * cos, Y: r * sin}
		if w.pick(3) == 0 {
			c[i].Bulge = w.number(-0.5, 0.5)
		}
	}
	return c
}

func (w *wild) board() box.Board {
	b := box.Board{Thickness: w.mm(6, 30)}
	if w.pick(3) == 0 {
		b.Measured = b.Thickness + w.mm(-1, 1)
		b.Least, b.Most = b.Measured-w.mm(0, 1), b.Measured+w.mm(0, 1)
	}
	return b
}

func (w *wild) design() box.Design {
	d := box.Design{Name: "wild", Board: w.board()}
	w.polygon = w.pick(3) == 0
	switch {
	case w.polygon:
		d.Size = box.Cavity{Height: w.mm(40, 500)}
		d.Footprint = w.footprint()
	case w.pick(4) == 0:
		d.Size = box.Outside{Width: w.mm(90, 400), Depth: w.mm(90, 400), Height: w.mm(90, 500)}
	case w.pick(4) == 0:
		d.Size = box.BoardWidth{Width: w.mm(90, 400), Sides: w.some(90, 400), Height: w.mm(60, 500)}
	default:
		d.Size = box.Cavity{Width: w.mm(40, 400), Depth: w.mm(40, 400), Height: w.mm(40, 500)}
	}
	for i := range w.pick(5) {
		on := fourWalls[i%4]
		if w.polygon {
			on = box.WallN(i%4 + 1)
		}
		if w.slip() {
			on = w.part()
		}
		x := box.Wall{On: on}
		switch w.pick(6) {
		case 0, 1:
			x.Lean = w.deg(-8, 20)
		case 2:
			x.Open = true
		case 3:
			x.Above, x.Below = w.mm(1, 80), w.mm(1, 80)
		case 4:
			x.Below = w.mm(1, 80)
		}
		d.Walls = append(d.Walls, x)
	}
	if w.pick(3) == 0 {
		d.Boards = map[box.Part]box.Board{w.wall(): w.board(), box.AllWalls: w.board(), box.AllRoof: w.board()}
	}
	d.Corners = box.Corners{Joint: w.joint(), Laps: box.Laps(w.choice(3))}
	switch w.pick(4) {
	case 0:
		d.Floor = box.NoFloor{}
	case 1:
		d.Floor = box.FloorUnder{Over: w.over(), Joint: w.joint()}
	default:
		d.Floor = box.FloorBetween{Raise: w.some(5, 40), Joint: w.joint()}
	}
	d.Roof = w.roof()
	for range w.pick(3) {
		d.Joints = append(d.Joints, box.Between{Over: w.wall(), Under: w.wall(), Joint: w.joint()})
		if w.pick(3) > 0 {
			d.Joints = nil
		}
	}
	if w.pick(4) == 0 && !w.polygon {
		d.Inner = []box.Inner{box.Partition{Name: "p", Across: box.PartitionRun(w.choice(2)), At: w.mm(-40, 40), Height: w.some(20, 300), Joint: w.joint()}}
	}
	for range w.pick(3) {
		d.Features = append(d.Features, w.feature())
	}
	if w.pick(6) == 0 {
		d.Free = []box.Free{{Name: "f", Board: w.board(), At: box.Place{X: w.mm(-500, 500), Y: w.mm(400, 600), Z: w.mm(-50, 50)},
			Facing: box.Direction{X: w.number(-1, 1), Y: w.number(-1, 1), Z: w.number(-1, 1)}, Outline: w.outline(100)}}
	}
	if w.pick(4) == 1 {
		d.Opens = []box.Opening{w.opening()}
	}
	if w.pick(3) == 1 {
		d.MadeUp = append(d.MadeUp, w.madeUp())
	}
	return d
}

// opening is a way in, or what shuts one.
func (w *wild) opening() box.Opening {
	switch w.pick(8) {
	case 0:
		return box.Pivoted{Part: w.wall(), Below: w.some(5, 60), Angle: w.deg(5, 90), Play: w.some(0, 3), Headroom: w.some(0, 10)}
	case 1:
		return box.Sliding{Part: w.wall(), Up: w.pick(2) == 0, Depth: w.some(1, 6), Beyond: w.some(5, 30)}
	case 2:
		return box.Removable{Part: w.part(), Screws: w.pick(4)}
	case 3:
		return box.Inspection{On: w.wall(), Width: w.some(20, 120), Height: w.some(20, 120), Sill: w.some(10, 100)}
	case 4:
		return box.Stopper{On: w.wall(), Left: w.pick(2) == 0}
	case 5:
		return box.TurnButton{Part: w.part(), At: w.wall()}
	}
	h := []box.Hinge{nil, box.Butts{}, box.Leather{}, box.Butts{Height: w.mm(10, 60), Thickness: w.mm(0.5, 3), Count: 3}}[w.pick(4)]
	return box.Hinged{Part: w.part(), At: w.wall(), Hinge: h, Angle: w.deg(5, 180), Play: w.some(0, 3)}
}

func (w *wild) madeUp() box.MadeUp {
	m := box.MadeUp{Of: w.wall(), Width: w.mm(40, 200), Least: w.some(10, 80)}
	switch w.pick(4) {
	case 0:
		m.Of = box.AllWalls
	case 1:
		m.Of = box.AllRoof
	case 2:
		m.Of = box.Floor
	}
	switch w.pick(6) {
	case 0:
		m.Joint = box.LooseTongue{Width: w.some(5, 20), Play: w.some(0.1, 0.5)}
	case 1:
		m.Joint = box.TongueGroove{Tongue: w.some(2, 12), Thickness: w.some(2, 8), Play: w.some(0.1, 0.5), Gap: w.some(0.5, 3), Dry: w.pick(2) == 0}
	case 2, 3:
		m.Joint = box.Shiplap{Lap: w.mm(3, 15), Gap: w.some(0.5, 3)}
	case 4:
		m.Joint = box.EdgeGlued{}
	}
	return m
}

func (w *wild) footprint() box.Footprint {
	if w.pick(2) == 0 {
		n := 3 + w.pick(9)
		if w.slip() {
			n = w.pick(200)
		}
		return box.Regular{Sides: n, Across: w.mm(60, 400)}
	}
	n := 3 + w.pick(5)
	var ps []box.Point
	for i := range n {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) - 2)
		r := w.number(100, 130)
		ps = append(ps, box.Point{X: box.MM(r * cos), Y: box.MM(r * sin)})
	}
	return box.Polygon{Points: ps}
}

func (w *wild) roof() box.RoofForm {
	tops, ends := box.Tops(w.choice(2)), box.RoofEnds(w.choice(2))
	switch w.pick(6) {
	case 0:
		return box.NoRoof{}
	case 1:
		return box.Flat{Over: w.over(), Joint: w.joint()}
	case 2:
		return box.Pent{Pitch: w.deg(1, 50), Over: w.over(), Tops: tops, Ends: ends}
	case 3:
		return box.Gable{Pitch: w.deg(5, 60), Run: box.RidgeRun(w.choice(2)), Ridge: w.joint(), Over: w.over(), Tops: tops, Ends: ends}
	case 4:
		return box.Gable{Rise: w.mm(20, 200), Ridge: joints.Mitre{}, Over: w.over(), Joint: w.joint()}
	}
	return box.Hip{Pitch: w.deg(5, 60), SidePitch: box.Deg(w.some(5, 60)), Level: w.pick(2) == 0, Over: w.over(), Tops: tops, Ends: ends}
}

func (w *wild) feature() box.Feature {
	switch w.pick(5) {
	case 0:
		return box.Entrance{On: w.wall(), Shape: w.shape(), Above: w.mm(10, 150), Right: w.mm(-20, 20)}
	case 1:
		return box.Vents{On: []box.Part{w.wall()}, Diameter: w.some(3, 20), Count: w.pick(5), Below: w.some(5, 50), Spacing: w.some(10, 60)}
	case 2:
		return box.Drains{Diameter: w.some(3, 20), Inset: w.some(4, 40), Count: w.pick(5)}
	case 3:
		return box.CornerCuts{Size: w.some(3, 40)}
	}
	return box.Cut{On: w.wall(), At: box.Anchor{Right: w.mm(-40, 40), Up: w.mm(10, 150)}, Shape: w.shape(), Depth: w.some(1, 8), From: box.CutSide(w.choice(2))}
}
