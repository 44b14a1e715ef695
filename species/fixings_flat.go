package species

import (
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// flatEdge stands for the edge of a part that is entered through its face, where
// nothing splits.
const flatEdge = 1000

// flat says that a row goes from board to board, through the face of both.
func (f Fixing) flat() bool { return f.Edge >= flatEdge }

// least is how long a fastener must be: a multiple of the wood held; of a board that
// lies on another as much as there is room for, to the 5 mm in which they are sold.
func (f Fixing) least() float64 {
	need := float64(f.multiple() * float64(f.Held))
	if f.flat() && f.deep > 0 {
		need = math.Min(need, float64(f.Held)+f.deep-7)
	}
	return need
}

// fixFlat works out a row for a part that lies with its face on another. The hold's
// note says through which of them it goes; the elements of a box that list their
// screws say how many.
func (l *look) fixFlat(plan *box.Plan, host, guest *piece, s box.Seam, h joints.Hold, with FixWith, structural bool, before []Fixing) (Fixing, bool) {
	a, b := host, guest
	if strings.Contains(h.Note, "through "+string(guest.Part)) {
		a, b = guest, host
	}
	if slices.ContainsFunc(a.Panel.Ops, func(op box.Op) bool { return op.Source == "screw hole" }) {
		return Fixing{}, false // it is drilled already
	}
	f := Fixing{Over: a.Part, Under: b.Part, Joint: s.Joint, Held: a.Thickness, Edge: flatEdge, Structural: structural, sheet: !b.solidWood(), deep: float64(b.Thickness)}
	way := -1.0
	face := a.inner
	if mid := b.min.Add(b.max).Scale(0.5); a.outward.Dot(mid) > a.inner+float64(a.Thickness)/2 {
		way, face, f.From = 1, a.inner+float64(a.Thickness), box.FromInner
	}
	into := a.outward.Scale(way)
	f.Into = box.Direction{X: float64(tidy(into.X)), Y: float64(tidy(into.Y)), Z: float64(tidy(into.Z))}
	f.With, _ = choose(f, with.Fasteners, 0)
	// Where the two lie on one another, in the panel of a.
	lo, hi := extentsIn(a, a), extentsIn(a, b)
	r := outline.Box{Min: outline.Point{X: math.Max(lo.Min.X, hi.Min.X), Y: math.Max(lo.Min.Y, hi.Min.Y)}, Max: outline.Point{X: math.Min(lo.Max.X, hi.Max.X), Y: math.Min(lo.Max.Y, hi.Max.Y)}}
	n := with.count
	for _, x := range plan.Fittings() {
		if n == 0 && x.What == "screw" && len(x.Where) == 2 && slices.Contains(x.Where, a.Part) && slices.Contains(x.Where, b.Part) {
			n = x.Count
		}
	}
	for _, q := range spread(r, n, float64(with.Spacing)) {
		p := a.Home.Out(solid.Vec{X: q.X, Y: q.Y})
		p = p.Add(a.outward.Scale(face - a.outward.Dot(p)))
		if f.blocked(a, b, p, into, float64(a.Thickness), before) {
			continue
		}
		right := q.X
		if a.Panel.Face == box.FromInner {
			right = -right
		}
		f.Right, f.Up = append(f.Right, tidy(right)), append(f.Up, tidy(q.Y))
		f.Places = append(f.Places, placeOf(p.Sub(into.Scale(float64(a.Thickness)))))
	}
	return f, len(f.Places) > 0
}

// extentsIn is the rectangle round a part in the panel of another.
func extentsIn(a, b *piece) outline.Box {
	e := outline.Box{Min: outline.Point{X: math.Inf(1), Y: math.Inf(1)}, Max: outline.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, v := range b.corners {
		q := a.Home.In(v)
		e.Min.X, e.Min.Y = math.Min(e.Min.X, q.X), math.Min(e.Min.Y, q.Y)
		e.Max.X, e.Max.Y = math.Max(e.Max.X, q.X), math.Max(e.Max.Y, q.Y)
	}
	return e
}

// spread puts n places, or as many as a spacing asks for, along the middle of a
// rectangle, or along both its sides where it is wide: 15 from its edges, a quarter
// of small ones (common practice).
func spread(r outline.Box, n int, spacing float64) []outline.Point {
	long, wide := r.Width(), r.Height()
	if !(long > 0 && wide > 0) {
		return nil
	}
	upright := wide > long
	if upright {
		long, wide = wide, long
	}
	end := math.Min(15, long/4)
	if n == 0 {
		n = 2 + int(math.Max(0, math.Min(mostInRow, math.Ceil((long-2*end)/spacing-1e-9)-1)))
	}
	n = min(n, mostInRow)
	lines := []float64{wide / 2}
	if wide >= 60 && n >= 4 && n%2 == 0 {
		lines = []float64{15, wide - 15}
	}
	each := n / len(lines)
	var out []outline.Point
	for _, y := range lines {
		for k := range each {
			x := long / 2
			if each > 1 {
				x = end + float64((long-2*end)*float64(k))/float64(each-1)
			}
			if upright {
				out = append(out, outline.Point{X: r.Min.X + y, Y: r.Min.Y + x})
			} else {
				out = append(out, outline.Point{X: r.Min.X + x, Y: r.Min.Y + y})
			}
		}
	}
	return out
}
