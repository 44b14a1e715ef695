package species

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"holt.example/box"
)

// floorPreset compares each side with the preset in per cent, the box turned
// whichever way suits.
func floorPreset(l *look, r Rule) []box.Finding {
	w, d := float64(l.animal.Inside.Width), float64(l.animal.Inside.Depth)
	if w == 0 || d == 0 || l.width == 0 || l.depth == 0 {
		return nil
	}
	width, depth := l.chamber()
	if l.animal.Form == Crevice { // the depth of one crevice is what is published
		for i, c := range l.crevices() {
			if i == 0 || c < depth {
				depth = c
			}
		}
	}
	compare := func(have, want float64) []box.Finding {
		f := r.against(box.Floor, box.Place{}, 100*(have/want-1), math.NaN())
		for i := range f {
			f[i].Why = fmt.Sprintf("a side of the floor is %s mm, %s mm are published. %s", tenth(have), num(want), r.Why)
		}
		return f
	}
	straight := append(compare(width, w), compare(depth, d)...)
	turned := append(compare(depth, w), compare(width, d)...)
	if len(turned) < len(straight) {
		return turned
	}
	return straight
}

// cavityHeight holds the height against the lowest and the highest in print, the
// preset's own among them; where one source alone has a height, it may be 10 % less
// and 30 % more, as for floors.
func cavityHeight(l *look, r Rule) []box.Finding {
	own := float64(l.animal.Inside.Height)
	if own == 0 || l.height == 0 {
		return nil
	}
	lo, hi := own, own
	if s, ok := l.animal.Spread(PrintedHeight); ok && s.Hi > s.Lo {
		lo, hi = math.Min(lo, float64(s.Lo)), math.Max(hi, float64(s.Hi))
	} else {
		lo, hi = 0.9*own, 1.3*own
	}
	r.Range = Between(math.Round(lo*10)/10, math.Round(hi*10)/10)
	f := r.against("", box.Place{}, l.height, own)
	for i := range f {
		f[i].Sources = slices.Clone(l.animal.Sources)
	}
	return f
}

func floorSides(l *look, r Rule) []box.Finding {
	if l.width == 0 {
		return nil
	}
	w, d := l.chamber()
	return r.against(box.Floor, box.Place{}, math.Min(w, d), published(min(l.animal.Inside.Width, l.animal.Inside.Depth)))
}

func floorWidth(l *look, r Rule) []box.Finding {
	if l.width == 0 {
		return nil
	}
	w, _ := l.chamber()
	return r.against(box.Floor, box.Place{}, w, published(l.animal.Inside.Width))
}

func floorArea(l *look, r Rule) []box.Finding {
	if l.width == 0 {
		return nil
	}
	w, d := l.chamber()
	return r.against(box.Floor, box.Place{}, float64(w*d), published(l.animal.Inside.Width*l.animal.Inside.Depth))
}

// walls reports the thinnest wall.
func walls(l *look, r Rule) []box.Finding {
	var thin *piece
	for i := range l.pieces {
		if p := &l.pieces[i]; isWall(p.Part) && (thin == nil || p.leastThick() < thin.leastThick()-tiny) {
			thin = p
		}
	}
	if thin == nil {
		return nil
	}
	return r.against(thin.Part, box.Place{}, thin.leastThick(), published(l.animal.WallLeast))
}

func onFloor(p box.Part) bool { return p == box.Floor }

func drainCount(l *look, r Rule) []box.Finding {
	if l.piece(box.Floor) == nil {
		return nil // open below: it drains
	}
	return r.against(box.Floor, box.Place{}, float64(len(l.use(box.UseDrain, onFloor))), math.NaN())
}

func drainDiameter(l *look, r Rule) []box.Finding {
	for _, op := range l.use(box.UseDrain, onFloor) {
		if _, d, ok := op.Region[0].IsCircle(1e-6); ok {
			if f := r.against(box.Floor, box.Place{}, d, math.NaN()); f != nil {
				return f // one for all: they are of one size as a rule
			}
		}
	}
	return nil
}

// floorRecess is the height of the floor's underside above the lower edge of
// the highest wall.
func floorRecess(l *look, r Rule) []box.Finding {
	floor := l.piece(box.Floor)
	if floor == nil {
		return nil
	}
	edge := math.Inf(-1)
	for i := range l.pieces {
		if isWall(l.pieces[i].Part) {
			edge = math.Max(edge, l.pieces[i].min.Z)
		}
	}
	if math.IsInf(edge, -1) {
		return nil
	}
	return r.against(box.Floor, box.Place{}, floor.min.Z-edge, math.NaN())
}

func ventArea(l *look, r Rule) []box.Finding {
	if !l.site.HotSummers || l.animal.Key == "common_goldeneye" || l.animal.Key == "wood_duck" {
		return nil
	}
	area := 0.0
	for _, op := range l.use(box.UseVent, isWall) {
		area += math.Abs(op.Region.Area())
	}
	return r.against("", box.Place{}, area, math.NaN())
}

func ventCount(l *look, r Rule) []box.Finding {
	return r.against("", box.Place{}, float64(len(l.use(box.UseVent, isWall))), math.NaN())
}

// ventHigh wants every vent above the top of the entrance.
func ventHigh(l *look, r Rule) []box.Finding {
	if len(l.ways) == 0 {
		return nil
	}
	top := math.Inf(-1)
	for i := range l.ways {
		top = math.Max(top, l.ways[i].highest)
	}
	for _, op := range l.use(box.UseVent, isWall) {
		if w := op.on.way(op.Op); w.lowest < top-tiny {
			f := r.finding(op.on.Part, w.at, w.lowest)
			f.Lo, f.Unit = top, "mm"
			f.Why = fmt.Sprintf("a vent stands %s mm above the floor and the hole reaches up to %s. %s", num(w.lowest), num(top), r.Why)
			return []box.Finding{f}
		}
	}
	return nil
}

// roofOver measures the overhang from the outermost point of a wall to that of
// the roof.
func roofOver(l *look, r Rule) []box.Finding {
	var roof, wall []*piece
	for i := range l.pieces {
		switch p := &l.pieces[i]; {
		case isRoof(p.Part):
			roof = append(roof, p)
		case isWall(p.Part):
			wall = append(wall, p)
		}
	}
	if len(roof) == 0 || len(wall) == 0 {
		return nil
	}
	reach := func(of []*piece, dir int) float64 {
		out := math.Inf(-1)
		for _, p := range of {
			out = math.Max(out, [3]float64{-p.min.Y, -p.min.X, p.max.X}[dir])
		}
		return out
	}
	if r.Code == "roof-front" {
		// Where sides run on past a front that slides, the front still counts.
		if p := l.front(); p != nil {
			wall = []*piece{p}
		}
		front := reach(roof, 0) - reach(wall, 0)
		return r.against(roof[0].Part, box.Place{}, front, math.NaN())
	}
	return r.against(roof[0].Part, box.Place{}, math.Min(reach(roof, 1)-reach(wall, 1), reach(roof, 2)-reach(wall, 2)), math.NaN())
}

func roofSlope(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.pieces {
		if p := &l.pieces[i]; isRoof(p.Part) {
			level := math.Hypot(p.outward.X, p.outward.Y)
			slope := math.Atan2(level, math.Abs(p.outward.Z)) * 180 / math.Pi
			out = append(out, r.against(p.Part, box.Place{}, math.Round(slope*1e6)/1e6, math.NaN())...)
		}
	}
	return out
}

// gaps are the clear widths that inner parts parallel to a wall leave between it
// and the wall opposite, so far away, from that wall on. Only parts count that run
// over half of the other way and over half of the height.
func (l *look) gaps(wall *piece, far, along float64) []float64 {
	if wall == nil {
		return []float64{far}
	}
	type slab struct{ near, far float64 } // from the wall, square to it
	list := []slab{{0, 0}}
	for i := range l.pieces {
		p := &l.pieces[i]
		if !strings.HasPrefix(string(p.Part), "inner/") || math.Abs(p.outward.Dot(wall.outward)) < 0.99 {
			continue
		}
		if math.Max(p.max.X-p.min.X, p.max.Y-p.min.Y) < along/2 || p.max.Z-p.min.Z < l.height/2 {
			continue
		}
		s := slab{math.Inf(1), math.Inf(-1)}
		for _, v := range p.corners {
			x := wall.inner - wall.outward.Dot(v)
			s.near, s.far = math.Min(s.near, x), math.Max(s.far, x)
		}
		list = append(list, s)
	}
	sort.Slice(list, func(i, k int) bool { return list[i].near < list[k].near })
	list = append(list, slab{near: far})
	var out []float64
	for i := 1; i < len(list); i++ {
		if w := list[i].near - list[i-1].far; w > 1 { // else a lining that lies on a wall
			out = append(out, math.Round(w*1e6)/1e6)
		}
	}
	return out
}

// crevices are the clear widths of the crevices, from the front.
func (l *look) crevices() []float64 {
	return l.gaps(l.piece(box.Front), l.depth, l.width)
}

// chamber is the width and depth of the largest room between partitions.
func (l *look) chamber() (width, depth float64) {
	for _, w := range l.gaps(l.piece(box.Left), l.width, l.depth) {
		width = math.Max(width, w)
	}
	for _, d := range l.gaps(l.piece(box.Front), l.depth, l.width) {
		depth = math.Max(depth, d)
	}
	return width, depth
}

func batGap(l *look, r Rule) []box.Finding {
	if l.depth == 0 {
		return nil
	}
	var out []box.Finding
	for _, w := range l.crevices() {
		out = append(out, r.against(box.Front, box.Place{}, w, published(l.animal.Entry.Height))...)
	}
	return out
}

// batVent looks for a slot in the front or the sides of a house in a hot place:
// its lower edge 152 mm above that of the front, within 6 (half of the slot), and
// 12 to 13 high.
func batVent(l *look, r Rule) []box.Finding {
	front := l.front()
	if !l.site.HotSummers || front == nil {
		return nil
	}
	nearest, high, at := math.NaN(), 0.0, box.Place{}
	for _, op := range l.use(box.UseVent, isWall) {
		w := op.on.way(op.Op)
		if up := w.lowest - front.min.Z; math.IsNaN(nearest) || math.Abs(up-r.Range.Lo) < math.Abs(nearest-r.Range.Lo) {
			nearest, high, at = up, w.h, w.at
		}
	}
	f := r.finding(front.Part, at, nearest)
	switch {
	case math.IsNaN(nearest):
		f.Why = "there is no vent slot in front or at the sides, and one 152 mm above the lower edge is asked for. " + r.Why
	case math.Abs(nearest-r.Range.Lo) > 6:
	case high < 12-tiny || high > 13+tiny:
		f.Got, f.Lo, f.Hi = high, 12, 13
		f.Why = fmt.Sprintf("the vent slot is %s mm high. %s", tenth(high), r.Why)
	default:
		return nil
	}
	return []box.Finding{f}
}

// batLanding is how far the back runs on below the front.
func batLanding(l *look, r Rule) []box.Finding {
	back, front := l.piece(box.Back), l.piece(box.Front)
	if back == nil || front == nil {
		return nil
	}
	return r.against(box.Back, box.Place{Z: box.MM(back.min.Z)}, front.min.Z-back.min.Z, math.NaN())
}

func batSize(l *look, r Rule) []box.Finding {
	return r.against("", box.Place{}, l.outside[2], published(l.animal.Inside.Height))
}

func height(l *look, r Rule) []box.Finding {
	if l.site.Above == 0 {
		return nil
	}
	if r.Code == "height-small" && (!l.animal.Hole.HasHi || l.animal.Hole.Hi > 40) {
		return nil // for small holes
	}
	own := math.NaN()
	if m := l.animal.Mount; m.HasLo && l.site.Above < r.Range.Lo {
		own = m.Lo
	} else if m.HasHi && l.site.Above > r.Range.Hi {
		own = m.Hi
	}
	return r.against("", box.Place{}, l.site.Above, own)
}

func batTree(l *look, r Rule) []box.Finding {
	if l.site.Place != OnTree {
		return nil
	}
	f := r.finding("", box.Place{}, 1)
	f.Why = "it hangs on a tree. " + r.Why
	return []box.Finding{f}
}
