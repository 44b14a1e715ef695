package species

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// roofBack is for boxes on poles, whose back stands in the rain.
func roofBack(l *look, r Rule) []box.Finding {
	if l.site.Place != OnPole {
		return nil
	}
	roof, wall, on := math.Inf(-1), math.Inf(-1), box.Part("")
	for i := range l.pieces {
		switch p := &l.pieces[i]; {
		case isRoof(p.Part):
			if on == "" || p.max.Y > roof {
				on = p.Part
			}
			roof = math.Max(roof, p.max.Y)
		case isWall(p.Part):
			wall = math.Max(wall, p.max.Y)
		}
	}
	if on == "" || math.IsInf(wall, -1) {
		return nil
	}
	f := r.against(on, box.Place{}, roof-wall, math.NaN())
	if f != nil && roof < wall {
		f[0].Why = fmt.Sprintf("%s ends %s mm short of the back, %s past it are asked for. %s", on, tenth(wall-roof), r.allowed(), r.Why)
	}
	return f
}

// roofJoint leaves out a back that opens under the roof: rule door-gap has its gap.
func roofJoint(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for _, s := range l.seams {
		if isRoof(s.Over) && slices.ContainsFunc(l.doors, func(d door) bool { return d.Part == s.Under }) {
			continue
		}
		if ((s.Over == box.Back && isRoof(s.Under)) || (s.Under == box.Back && isRoof(s.Over))) && !l.covered(s) {
			out = append(out, r.against(s.Under, s.From, float64(s.Greatest), math.NaN())...)
		}
	}
	return out
}

// covered says that felt, a strip of sheet or rubber, or a cover strip lies over a
// seam of the roof.
func (l *look) covered(s box.Seam) bool {
	for _, f := range l.fittings {
		if f.Cut != nil && slices.Contains(f.Where, s.Over) && slices.Contains(f.Where, s.Under) {
			return true
		}
	}
	mid := vecOf(s.From).Add(vecOf(s.To)).Scale(0.5)
	for i := range l.pieces {
		p := &l.pieces[i]
		if strings.HasPrefix(string(p.Part), "free/") && p.max.Z > mid.Z && p.min.X < mid.X && p.max.X > mid.X && p.min.Y < mid.Y+tiny && p.max.Y > mid.Y-tiny {
			return true
		}
	}
	return false
}

// roofRidge looks for a mitre between two slopes without a free part, felt or a
// strip of sheet over it.
func roofRidge(l *look, r Rule) []box.Finding {
	for _, s := range l.seams {
		if s.Joint != "mitre" || !isRoof(s.Over) || !isRoof(s.Under) {
			continue
		}
		mid := vecOf(s.From).Add(vecOf(s.To)).Scale(0.5)
		if !l.covered(s) {
			f := r.finding(s.Over, placeOf(mid), math.NaN())
			f.Why = fmt.Sprintf("%s and %s meet in an open mitre. %s", s.Over, s.Under, r.Why)
			return []box.Finding{f}
		}
	}
	return nil
}

// roofIntoWall looks for slopes that fall towards a wall higher than they are.
func roofIntoWall(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isRoof(p.Part) {
			continue
		}
		for _, s := range l.seams {
			w := s.Over // the wall laps over the roof
			if s.Under != p.Part || !isWall(w) {
				continue
			}
			q := l.piece(w)
			if q != nil && float64(p.outward.X*q.outward.X)+float64(p.outward.Y*q.outward.Y) > 0.05 && q.max.Z > p.min.Z+5 {
				f := r.finding(p.Part, s.From, 1)
				f.Why = fmt.Sprintf("%s falls towards %s, which runs on above it. %s", p.Part, w, r.Why)
				return []box.Finding{f}
			}
		}
	}
	return nil
}

// onTop says that an operation lies on the weather side of a part.
func (p *piece) onTop(op box.Op) bool {
	return op.Side != box.SideEdge && (op.Side == box.SideThrough || (op.Side == box.SideMachined) == (p.Panel.Face == box.FromOuter))
}

// roofLines looks for lines on top of a roof that run more across its fall than
// along it, for 10 mm or more, and for pockets so wide.
func roofLines(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isRoof(p.Part) {
			continue
		}
		// The fall in the panel's own directions; none on a level roof.
		down := outline.Point{X: p.Home.U.Z, Y: p.Home.V.Z}
		k := math.Hypot(down.X, down.Y)
		if k < 1e-9 {
			continue
		}
		for _, op := range p.Panel.Ops {
			if !p.onTop(op) {
				continue
			}
			across := pocketAcross(op, down.X/k, down.Y/k)
			for _, s := range op.Strokes {
				across = across || acrossFall(s, down.X/k, down.Y/k)
			}
			if across {
				f := r.finding(p.Part, box.Place{}, 1)
				f.Why = fmt.Sprintf("the %s lies across the fall of %s. %s", op.Source, p.Part, r.Why)
				return []box.Finding{f}
			}
		}
	}
	return nil
}

// pocketAcross says that an operation is a pocket that holds water.
func pocketAcross(op box.Op, x, y float64) bool {
	if op.Guest != "" || op.Side == box.SideThrough || op.InOutline {
		return false
	}
	for _, c := range op.Region {
		// Square to the fall: from the one support to the other.
		if c.Support(-y, x)+c.Support(y, -x) >= 10 {
			return true
		}
	}
	return false
}

// acrossFall looks at the sides of a stroke, chord by chord.
func acrossFall(s outline.Path, x, y float64) bool {
	for i := 1; i < len(s); i++ {
		dx, dy := s[i].X-s[i-1].X, s[i].Y-s[i-1].Y
		along, athwart := math.Abs(float64(dx*x)+float64(dy*y)), math.Abs(float64(dx*y)-float64(dy*x))
		if athwart >= 10 && athwart > along {
			return true
		}
	}
	return false
}

// screwHole is the widest hole, in mm, that a screw or a nail fills.
const screwHole = 6

func roofHole(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isRoof(p.Part) {
			continue
		}
		for _, op := range p.Panel.Ops {
			if op.Guest != "" || op.Side != box.SideThrough || op.InOutline || len(op.Region) == 0 {
				continue
			}
			if _, d, round := op.Region[0].IsCircle(1e-6); round && d <= screwHole {
				continue
			}
			f := r.finding(p.Part, p.way(op).at, 1)
			f.Why = fmt.Sprintf("the %s goes through %s. %s", op.Source, p.Part, r.Why)
			return []box.Finding{f}
		}
	}
	return nil
}

// batDraught looks at gaps between walls, and of walls and roof.
func batDraught(l *look, r Rule) []box.Finding {
	worst := -1
	for i, s := range l.seams {
		if worst < 0 || s.Greatest > l.seams[worst].Greatest {
			worst = i
		}
	}
	if worst < 0 {
		return nil
	}
	s := l.seams[worst]
	return r.against(s.Over, s.From, float64(s.Greatest), math.NaN())
}

// sharp is the angle in degrees below which a corner injures (common practice).
const sharp = 60

// points looks for nails and screws that come out, and for sharp corners of free
// and inner parts in the cavity.
func points(l *look, r Rule) []box.Finding {
	if f := fixed(l, r); f != nil {
		return f
	}
	if f := l.tips(r); f != nil {
		return f
	}
	if f := l.blade(r); f != nil {
		return f
	}
	for i := range l.pieces {
		p := &l.pieces[i]
		if isShell(p.Part) || len(p.Panel.Silhouette) == 0 {
			continue
		}
		c := p.Panel.Silhouette[0]
		for k := range c {
			a, b, d := c[(k+len(c)-1)%len(c)], c[k], c[(k+1)%len(c)]
			if a.Bulge != 0 || b.Bulge != 0 {
				continue
			}
			u, v := outline.Point{X: a.X - b.X, Y: a.Y - b.Y}, outline.Point{X: d.X - b.X, Y: d.Y - b.Y}
			turn := float64(v.X*u.Y) - float64(v.Y*u.X)
			angle := math.Atan2(turn, float64(u.X*v.X)+float64(u.Y*v.Y)) * 180 / math.Pi
			at := p.Home.Out(solid.Vec{X: b.X, Y: b.Y, Z: -float64(p.Thickness) / 2})
			if angle > 0 && angle < sharp && l.inCavity(at) {
				f := r.finding(p.Part, placeOf(at), 1)
				f.Why = fmt.Sprintf("%s has a corner of %s degrees inside. %s", p.Part, tenth(angle), r.Why)
				return []box.Finding{f}
			}
		}
	}
	return nil
}

// feather is the angle in degrees up to which an arris is a blade (as Edging has
// it, common practice).
const feather = 45

// blade finds a feather edge of an inner or free part in the cavity that is
// neither blunted nor rounded.
func (l *look) blade(r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		if isShell(p.Part) {
			continue
		}
		for _, e := range p.Panel.Edges {
			for k, a := range e.Arrises {
				if e.Neighbour != "" || !(float64(a.Angle) > 0 && float64(a.Angle) <= feather) || a.Blunt > 0 || a.Round > 0 {
					continue
				}
				z := 0.0
				if k == 1 {
					z = -float64(p.Thickness)
				}
				at := p.Home.Out(solid.Vec{X: (e.From.X + e.To.X) / 2, Y: (e.From.Y + e.To.Y) / 2, Z: z})
				if l.inCavity(at) {
					f := r.finding(p.Part, placeOf(at), 1)
					f.Why = fmt.Sprintf("%s has an edge of %s degrees inside. %s", p.Part, tenth(float64(a.Angle)), r.Why)
					return []box.Finding{f}
				}
			}
		}
	}
	return nil
}

// inCavity says that a place is behind the inner faces of all walls, floor and
// roof.
func (l *look) inCavity(v solid.Vec) bool {
	n := 0
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isWall(p.Part) && !isRoof(p.Part) && p.Part != box.Floor {
			continue
		}
		n++
		if p.outward.Dot(v) > p.inner-tiny {
			return false
		}
	}
	return n > 3
}

// housingDepth looks at boards with a grain in housings and grooves.
func housingDepth(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		for _, op := range p.Panel.Ops {
			g := l.piece(op.Guest)
			if g == nil || !g.solidWood() || (op.Kind != box.OpHousing && op.Kind != box.OpGroove) {
				continue
			}
			if f := r.against(p.Part, box.Place{}, deep(op)/float64(p.Thickness), math.NaN()); f != nil {
				return f
			}
		}
	}
	return nil
}

// mostSheet is the widest of the sheets that are long enough, against the short side
// of a part; or if none is, the longest against its long side.
func mostSheet(sheets []timber.Stock, long, short float64) (limit, got float64, what string) {
	longest, wide := 0.0, 0.0
	for _, s := range sheets {
		longest = math.Max(longest, float64(s.Length))
		if long <= float64(s.Length)+tiny {
			wide = math.Max(wide, float64(s.Width))
		}
	}
	if wide == 0 {
		return longest, long, "longest sheet"
	}
	return wide, short, "widest sheet of that length"
}

// noStock holds the blanks against the widest board and the largest sheet of the
// tables, of the animal's region where it has sizes of its own.
func noStock(l *look, r Rule) []box.Finding {
	kinds, source := []timber.StockKind{timber.SawnEU, timber.PlanedEU}, "en1313-1"
	if l.animal.Region == NorthAmerica {
		kinds, source = []timber.StockKind{timber.LumberUS}, "engtoolbox-lumber"
	}
	widest := 0.0
	for _, k := range kinds {
		list, _ := timber.StockOf(k)
		for _, s := range list {
			widest = math.Max(widest, float64(s.Width))
		}
	}
	sheets, _ := timber.StockOf(timber.SheetSize)
	var out []box.Finding
	for i := range l.strips {
		p := &l.strips[i]
		limit, got, what, from := widest, float64(p.Width), "widest board", source
		if !p.solidWood() {
			from = "birch-datasheet"
			limit, got, what = mostSheet(sheets, math.Max(float64(p.Length), float64(p.Width)), math.Min(float64(p.Length), float64(p.Width)))
		}
		if got <= limit+tiny {
			continue
		}
		f := r.finding(p.Part, box.Place{}, got)
		f.Lo, f.Hi = 0, limit
		f.Why = fmt.Sprintf("%s is %s mm long and %s wide, and the %s in the tables is %s. %s", p.Part, tenth(float64(p.Length)), tenth(float64(p.Width)), what, num(limit), r.Why)
		f.Sources = []string{from}
		out = append(out, f)
	}
	return out
}
