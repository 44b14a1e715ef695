package species

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
)

// holeTilt is how far a hole rises inwards: its axis is square to its wall, and
// the wall leans by itself or with the box. What leans the box towards its front
// turns a hole in the back the other way, and leaves one in a side level.
func holeTilt(l *look, r Rule) []box.Finding {
	var out []box.Finding
	sin, cos := math.Sincos(float64(l.site.Lean) * math.Pi / 180)
	for i := range l.ways {
		w := &l.ways[i]
		up := float64(w.on.outward.Z*cos) + float64(w.on.outward.Y*sin) // the front looks towards -Y
		rise := math.Asin(math.Max(-1, math.Min(1, -up))) * 180 / math.Pi
		out = append(out, r.against(w.on.Part, w.at, math.Round(rise*1e6)/1e6, math.NaN())...)
	}
	return out
}

// roofDrip wants a groove under solid roofs that stand out.
func roofDrip(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isRoof(p.Part) || !p.solidWood() || !l.standsOut(p) {
			continue
		}
		deepest := 0.0
		for _, op := range p.Panel.Ops {
			if op.Use == box.UseDrip {
				deepest = math.Max(deepest, deep(op))
			}
		}
		f := r.against(p.Part, box.Place{}, deepest, math.NaN())
		if f != nil && deepest == 0 {
			f[0].Why = fmt.Sprintf("%s has no drip groove under its edge. %s", p.Part, r.Why)
		}
		if f != nil {
			return f
		}
	}
	return nil
}

// standsOut says that a roof runs on past the wall at its lower edge.
func (l *look) standsOut(roof *piece) bool {
	down := solid.Vec{X: roof.outward.X, Y: roof.outward.Y}
	if down.Len() < 1e-6 {
		return true // level: all round
	}
	down = down.Scale(1 / down.Len())
	far, wall := math.Inf(-1), math.Inf(-1)
	for _, v := range roof.corners {
		far = math.Max(far, down.Dot(v))
	}
	for i := range l.pieces {
		if isWall(l.pieces[i].Part) {
			for _, v := range l.pieces[i].corners {
				wall = math.Max(wall, down.Dot(v))
			}
		}
	}
	return far > wall+5
}

// level is the slope in degrees below which an end lies flat in the rain (common
// practice).
const level = 15

// endGrain looks for ends of boards that lie flat and look up, with nothing over
// them.
func endGrain(l *look, r Rule) []box.Finding {
	if l.site.Sealed || l.site.Place == Indoors {
		return nil
	}
	var out []box.Finding
	for i := range l.pieces {
		p := &l.pieces[i]
		if !p.solidWood() || strings.HasPrefix(string(p.Part), "inner/") {
			continue
		}
		g := p.Home.U.Scale(p.Panel.Grain[0]).Add(p.Home.V.Scale(p.Panel.Grain[1]))
		for _, e := range p.Panel.Edges {
			dx, dy := e.To.X-e.From.X, e.To.Y-e.From.Y
			k := math.Hypot(dx, dy)
			if e.Neighbour != "" || k < 10 { // the part lies to the left of the edge
				continue
			}
			s, c := math.Sincos(float64(e.Bevel) * math.Pi / 180)
			n := p.Home.U.Scale(c * dy / k).Sub(p.Home.V.Scale(c * dx / k)).Sub(p.Home.W.Scale(s))
			if math.Abs(n.Dot(g)) < math.Sqrt2/2 || n.Z < math.Cos(level*math.Pi/180)+1e-9 {
				continue
			}
			mid := p.Home.Out(solid.Vec{X: (e.From.X + e.To.X) / 2, Y: (e.From.Y + e.To.Y) / 2, Z: -float64(p.Thickness) / 2})
			if l.sheltered(mid, p) {
				continue
			}
			f := r.finding(p.Part, placeOf(mid), math.NaN())
			f.Why = fmt.Sprintf("the upper end of %s lies flat in the rain: slope it, cap it or seal it. %s", p.Part, r.Why)
			out = append(out, f)
			break
		}
	}
	return out
}

// sheltered says that a part lies over a place.
func (l *look) sheltered(at solid.Vec, but *piece) bool {
	for i := range l.pieces {
		p := &l.pieces[i]
		if p != but && p.max.Z > at.Z+tiny && p.min.X < at.X && p.max.X > at.X && p.min.Y < at.Y && p.max.Y > at.Y {
			return true
		}
	}
	return false
}

// standoff is how far what is fixed behind a wall keeps it off, in mm.
func (l *look) standoff(wall *piece) float64 {
	out := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		if !strings.HasPrefix(string(p.Part), "free/") {
			continue
		}
		near, far := math.Inf(1), math.Inf(-1)
		for _, v := range p.corners {
			x := wall.outward.Dot(v) - wall.inner - float64(wall.Thickness)
			near, far = math.Min(near, x), math.Max(far, x)
		}
		if near > -tiny { // it lies behind
			out = math.Max(out, far)
		}
	}
	return out
}

func backBatten(l *look, r Rule) []box.Finding {
	back := l.piece(box.Back)
	if back == nil || l.site.Place != OnTree && !l.site.WetWall {
		return nil
	}
	return r.against(box.Back, box.Place{}, l.standoff(back), math.NaN())
}

// dormouseBack wants the hole in the back, and bars behind it.
func dormouseBack(l *look, r Rule) []box.Finding {
	for i := range l.ways {
		w := &l.ways[i]
		if w.on.Part != box.Back {
			f := r.finding(w.on.Part, w.at, 0)
			f.Why = fmt.Sprintf("the hole is in %s and not in the back. %s", w.on.Part, r.Why)
			return []box.Finding{f}
		}
		if f := r.against(box.Back, w.at, l.standoff(w.on), math.NaN()); f != nil {
			return f
		}
	}
	return nil
}

// metals are words for a plate that no beak opens.
var metals = []string{"metal", "steel", "zinc", "brass", "copper", "aluminium", "aluminum", "tin", "iron"}

// holePlate wants metal at the hole where woodpeckers or squirrels widen small
// ones.
func holePlate(l *look, r Rule) []box.Finding {
	if !l.site.Peckers {
		return nil
	}
	for i := range l.ways {
		w := &l.ways[i]
		if math.Min(w.gate.w, w.gate.h) > smallHole {
			continue
		}
		metal := false
		for _, p := range w.plates {
			metal = metal || hasWord(p.Board.Material, metals...)
		}
		if !metal {
			f := r.finding(w.on.Part, w.at, math.NaN())
			f.Why = "there is no metal plate round the hole. " + r.Why
			return []box.Finding{f}
		}
	}
	return nil
}

// smallHole is the size in mm up to which a hole counts as small (common
// practice: those of tits and sparrows).
const smallHole = 40

// frontThick adds up the wood along the way in: wall, plates and tunnel.
func frontThick(l *look, r Rule) []box.Finding {
	if !l.site.Martens {
		return nil
	}
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		sum := float64(w.on.Thickness)
		for _, p := range w.plates {
			sum += float64(p.Thickness)
		}
		out = append(out, r.against(w.on.Part, w.at, sum+l.tunnel(w), math.NaN())...)
	}
	return out
}

// tunnel is the length of a tunnel at an entrance: of its top, which lies square
// to the wall over the middle of the hole.
func (l *look) tunnel(w *way) float64 {
	long := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		if _, ok := l.tunnelOf(p.Part); !ok || !strings.HasSuffix(string(p.Part), " top") {
			continue
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range p.corners {
			x := w.on.outward.Dot(v)
			lo, hi = math.Min(lo, x), math.Max(hi, x)
		}
		off := p.min.Add(p.max).Scale(0.5).Sub(vecOf(w.at))
		off.Z = 0
		if off.Sub(w.on.outward.Scale(off.Dot(w.on.outward))).Len() < w.w/2+tiny {
			long = math.Max(long, hi-lo)
		}
	}
	return long
}

// tunnelOf is the name of the tunnel that a part belongs to.
func (l *look) tunnelOf(p box.Part) (box.Part, bool) {
	for _, end := range []string{" top", " bottom", " left", " right"} {
		if name, ok := strings.CutSuffix(string(p), end); ok {
			return box.Part(name), l.piece(box.Part(name+" top")) != nil && l.piece(box.Part(name+" left")) != nil && l.piece(box.Part(name+" right")) != nil
		}
	}
	return "", false
}

// thinHot looks at what walls are made of.
func thinHot(l *look, r Rule) []box.Finding {
	n, first := 0, (*piece)(nil)
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isWall(p.Part) || !hasWord(p.Board.Material, append([]string{"plastic", "pvc", "acrylic", "polycarbonate", "ceramic", "clay", "terracotta", "glass"}, metals...)...) {
			continue
		}
		if first == nil {
			first = p
		}
		n++
	}
	if n == 0 {
		return nil
	}
	f := r.finding(first.Part, box.Place{}, float64(n))
	f.Why = fmt.Sprintf("%s is of %.80q. %s", first.Part, first.Board.Material, r.Why)
	return []box.Finding{f}
}
