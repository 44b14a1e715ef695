package box_test

import (
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// wild reads a design from bytes. A number is either one that a maker might
// state or, where wide is set, any bits at all.
type wild struct {
	b    []byte
	wide bool
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

func (w *wild) number(lo, hi float64) float64 {
	if w.wide && w.pick(4) == 0 {
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

func (w *wild) part() box.Part {
	all := []box.Part{box.Front, box.Back, box.Left, box.Right, box.Floor, box.Roof, box.RoofFront, box.RoofLeft, box.WallN(1), box.WallN(2), box.InnerPart("p"), "", "lid"}
	return all[w.pick(len(all))]
}

func (w *wild) joint() joints.Joint {
	switch w.pick(7) {
	case 0:
		return joints.Butt{LapSquare: w.pick(2) == 0, EndSquare: w.pick(2) == 0}
	case 1:
		return joints.Mitre{}
	case 2:
		return joints.Rebate{Depth: w.mm(0, 10), Width: w.mm(0, 20), Through: w.pick(2) == 0}
	case 3:
		return joints.Housing{Depth: w.mm(0, 8), Play: w.mm(0, 1), Swell: w.mm(0, 1), Stop: w.mm(0, 20), StopFrom: w.mm(0, 9), StopTo: w.mm(0, 9), Dry: w.pick(2) == 0}
	case 4:
		return joints.Comb{Fingers: w.pick(12), Play: w.mm(0, 1), First: joints.Owner(w.pick(4))}
	case 5:
		return (*joints.Mitre)(nil)
	}
	return nil
}

func (w *wild) over() box.Overhangs {
	return box.Overhangs{Front: w.mm(0, 50), Back: w.mm(0, 20), Left: w.mm(0, 30), Right: w.mm(0, 30), All: w.mm(0, 10)}
}

func (w *wild) shape() box.Shape {
	switch w.pick(5) {
	case 0:
		return box.Round{Diameter: w.mm(5, 60)}
	case 1:
		return box.Rect{Width: w.mm(5, 60), Height: w.mm(5, 60), Corner: w.mm(0, 10)}
	case 2:
		return box.Slot{Width: w.mm(5, 60), Height: w.mm(5, 60)}
	case 3:
		c := make(outline.Contour, w.pick(8))
		for i := range c {
			c[i] = outline.Vertex{X: w.number(-30, 30), Y: w.number(-30, 30), Bulge: w.number(-1, 1)}
		}
		return box.Freeform{Outline: c}
	}
	return nil
}

func (w *wild) board() box.Board {
	b := box.Board{Thickness: w.mm(6, 30)}
	if w.pick(3) == 0 {
		b.Measured, b.Least, b.Most = w.mm(6, 30), w.mm(6, 30), w.mm(6, 30)
	}
	return b
}

func (w *wild) design() box.Design {
	d := box.Design{Name: "wild", Board: w.board()}
	polygon := w.pick(3) == 0
	switch w.pick(4) {
	case 0:
		d.Size = box.Outside{Width: w.mm(60, 400), Depth: w.mm(60, 400), Height: w.mm(60, 500)}
	case 1:
		d.Size = box.BoardWidth{Width: w.mm(60, 400), Sides: w.mm(0, 400), Height: w.mm(60, 500)}
	default:
		d.Size = box.Cavity{Width: w.mm(40, 400), Depth: w.mm(40, 400), Height: w.mm(40, 500)}
	}
	if polygon {
		d.Size = box.Cavity{Height: w.mm(40, 500)}
		if w.pick(2) == 0 {
			d.Footprint = box.Regular{Sides: w.pick(12), Across: w.mm(60, 400)}
		} else {
			n := 3 + w.pick(5)
			var ps []box.Point
			for i := range n {
				s, c := math.Sincos(2*math.Pi*float64(i)/float64(n) - 2)
				r := w.number(100, 130)
				ps = append(ps, box.Point{X: box.MM(r * c), Y: box.MM(r * s)})
			}
			d.Footprint = box.Polygon{Points: ps}
		}
	}
	for range w.pick(4) {
		d.Walls = append(d.Walls, box.Wall{On: w.part(), Lean: w.deg(-10, 25), Open: w.pick(4) == 0, Above: w.mm(0, 80), Below: w.mm(0, 80)})
	}
	if w.pick(3) == 0 {
		d.Boards = map[box.Part]box.Board{w.part(): w.board(), box.AllWalls: w.board()}
	}
	d.Corners = box.Corners{Joint: w.joint(), Laps: box.Laps(w.pick(4))}
	switch w.pick(4) {
	case 0:
		d.Floor = box.NoFloor{}
	case 1:
		d.Floor = box.FloorUnder{Over: w.over(), Joint: w.joint()}
	default:
		d.Floor = box.FloorBetween{Raise: w.mm(0, 40), Joint: w.joint()}
	}
	tops, ends := box.Tops(w.pick(3)), box.RoofEnds(w.pick(3))
	switch w.pick(6) {
	case 0:
		d.Roof = box.NoRoof{}
	case 1:
		d.Roof = box.Flat{Over: w.over(), Joint: w.joint()}
	case 2:
		d.Roof = box.Pent{Pitch: w.deg(0, 60), Over: w.over(), Tops: tops, Ends: ends}
	case 3:
		d.Roof = box.Gable{Pitch: w.deg(0, 70), Run: box.RidgeRun(w.pick(3)), Ridge: w.joint(), Over: w.over(), Tops: tops, Ends: ends}
	case 4:
		d.Roof = box.Gable{Rise: w.mm(5, 200), Ridge: joints.Mitre{}, Over: w.over(), Joint: w.joint()}
	default:
		d.Roof = box.Hip{Pitch: w.deg(0, 70), SidePitch: w.deg(0, 0), Level: w.pick(2) == 0, Hips: w.joint(), Over: w.over(), Tops: tops, Ends: ends}
	}
	for range w.pick(3) {
		d.Joints = append(d.Joints, box.Between{Over: w.part(), Under: w.part(), Joint: w.joint()})
	}
	if w.pick(4) == 0 {
		d.Inner = []box.Inner{box.Partition{Name: "p", Across: box.PartitionRun(w.pick(3)), At: w.mm(-60, 60), Height: w.mm(0, 300), Joint: w.joint()}}
	}
	for range w.pick(3) {
		switch w.pick(5) {
		case 0:
			d.Features = append(d.Features, box.Entrance{On: w.part(), Shape: w.shape(), Above: w.mm(0, 200), Right: w.mm(-40, 40)})
		case 1:
			d.Features = append(d.Features, box.Vents{Diameter: w.mm(0, 20), Count: w.pick(6), Below: w.mm(0, 50), Spacing: w.mm(0, 60)})
		case 2:
			d.Features = append(d.Features, box.Drains{Diameter: w.mm(0, 20), Inset: w.mm(0, 40), Count: w.pick(6)})
		case 3:
			d.Features = append(d.Features, box.CornerCuts{Size: w.mm(0, 40)})
		default:
			d.Features = append(d.Features, box.Cut{On: w.part(), At: box.Anchor{Right: w.mm(-60, 60), Up: w.mm(0, 200)}, Shape: w.shape(), Depth: w.mm(0, 12), From: box.CutSide(w.pick(3))})
		}
	}
	if w.pick(6) == 0 {
		f := box.Free{Name: "f", Board: w.board(), At: box.Place{X: w.mm(-500, 500), Y: w.mm(300, 500), Z: w.mm(-50, 50)}, Facing: box.Direction{X: w.number(-1, 1), Y: w.number(-1, 1), Z: w.number(-1, 1)}}
		if s, ok := w.shape().(box.Freeform); ok {
			f.Outline = s.Outline
		} else {
			f.Outline = outline.Slot(outline.Point{}, w.number(50, 200), w.number(10, 40))
		}
		d.Free = []box.Free{f}
	}
	return d
}

// FuzzResolve: whatever a design says, Resolve gives a plan or problems, never
// panics; and a plan has no overlap, finite volumes and closed meshes.
func FuzzResolve(f *testing.F) {
	f.Add([]byte{0, 0})
	f.Add([]byte("1 a first design in a dozen lines, and many letters for its numbers"))
	f.Add([]byte("\x01\xff\xff\xff\xff\xff\xff\xf0\x7f\x00\x00\x00\x00\x00\x00\xf8\x7f and nothing more to say, but for the rest of its numbers"))
	f.Add([]byte(strings.Repeat("\x7f\x03\x40\x11\x02", 40)))
	f.Add([]byte(strings.Repeat("\x80\x10\x05\x33\x0a\xc0\x21", 30)))
	f.Fuzz(func(t *testing.T, data []byte) {
		w := &wild{b: data}
		w.wide = w.byte()%2 == 1
		d := w.design()
		p, err := d.Resolve()
		if (p == nil) == (err == nil) {
			t.Fatalf("plan %v, error %v", p, err)
		}
		if err != nil {
			var ps box.Problems
			if !errors.As(err, &ps) || len(ps) == 0 {
				t.Fatalf("%T: %v", err, err)
			}
			for _, x := range ps {
				if e := goPath(x.Path); e != nil {
					t.Errorf("%v: %v", e, x)
				}
			}
			return
		}
		soundPlan(t, p)
	})
}

// soundPlan checks a plan from outside: finite, no overlap, closed meshes of
// the volume that the parts state.
func soundPlan(t *testing.T, p *box.Plan) {
	t.Helper()
	qs := p.Pieces()
	for i, q := range qs {
		if !(q.Volume > 0 && q.Length > 0 && q.Width > 0 && q.Volume < 1e12) {
			t.Errorf("%s: %v mm3, %v x %v", q.Part, q.Volume, q.Length, q.Width)
		}
		for _, o := range qs[i+1:] {
			// As Resolve counts it: the side test of 1e-7 mm over a large face.
			if v := solid.Overlap(q.Body, o.Body); v > 1e-2 {
				t.Errorf("%s and %s share %v mm3", q.Part, o.Part, v)
			}
		}
		m, err := p.Mesh(q.Part)
		if err != nil {
			t.Errorf("%s: %v", q.Part, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("%s: %v", q.Part, err)
		}
		if v := m.Volume(); !(math.Abs(v-q.Volume) <= 1e-9*q.Volume+1e-3) {
			t.Errorf("%s: mesh %v, part %v", q.Part, v, q.Volume)
		}
	}
}
