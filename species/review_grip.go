package species

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box"
	"holt.example/box/solid"
)

// smooth says that a part is known to be planed.
func (l *look) smooth(p *piece) bool {
	m := lower(p.Board.Material)
	return l.site.Planed || has(m, "planed", "dressed", "smooth") && !has(m, "unplaned")
}

// grips are the grooves for claws on a part.
func (p *piece) grips() []box.Op {
	var out []box.Op
	for _, op := range p.Panel.Ops {
		if op.Use == box.UseGrip {
			out = append(out, op)
		}
	}
	return out
}

func insideRough(l *look, r Rule) []box.Finding {
	if l.animal.Grip == NoGrip || l.animal.Key == "wood_duck" || l.animal.Key == "common_goldeneye" {
		return nil // ducks have a rule of their own
	}
	for i := range l.ways {
		if p := l.ways[i].on; l.smooth(p) && len(p.grips()) == 0 {
			f := r.finding(p.Part, l.ways[i].at, math.NaN())
			f.Why = fmt.Sprintf("%s is planed and has no grooves inside. %s", p.Part, r.Why)
			return []box.Finding{f}
		}
	}
	return nil
}

// deep is how deep a groove goes from the face on which it lies.
func deep(op box.Op) float64 { return float64(op.To - op.From) }

func grooveSize(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		for _, op := range l.pieces[i].grips() {
			if f := r.against(l.pieces[i].Part, box.Place{}, deep(op), math.NaN()); f != nil {
				return f // one for all: they are of one depth as a rule
			}
		}
	}
	return nil
}

func grooveStrength(l *look, r Rule) []box.Finding {
	for i := range l.pieces {
		p := &l.pieces[i]
		for _, op := range p.grips() {
			if f := r.against(p.Part, box.Place{}, p.leastThick()-deep(op), math.NaN()); f != nil {
				return f
			}
		}
	}
	return nil
}

// duckLadder measures the widest groove below the hole; a planed front without
// any has a ladder 0 wide.
func duckLadder(l *look, r Rule) []box.Finding {
	for i := range l.ways {
		p, wide := l.ways[i].on, 0.0
		for _, op := range p.grips() {
			if len(op.Region) > 0 {
				wide = math.Max(wide, op.Region.Extents().Width())
			}
			for _, s := range op.Strokes {
				wide = math.Max(wide, s.Extents().Width())
			}
		}
		if wide > 0 || l.smooth(p) {
			return r.against(p.Part, l.ways[i].at, wide, math.NaN())
		}
	}
	return nil
}

// batRough wants a hold on one of the two walls of a crevice at least.
func batRough(l *look, r Rule) []box.Finding {
	back := l.piece(box.Back)
	if back == nil || !l.smooth(back) || len(back.grips()) > 0 {
		return nil
	}
	f := r.finding(box.Back, box.Place{}, math.NaN())
	f.Why = "back is planed and has no grooves inside. " + r.Why
	return []box.Finding{f}
}

// ledge looks for rails and recesses in the wall of the entrance that claws could
// stand in: at least 5 deep from outside and 15 wide, within 150 mm below the
// hole and no farther aside than its edge.
func ledge(l *look, r Rule) []box.Finding {
	for i := range l.ways {
		w := &l.ways[i]
		for _, op := range w.on.Panel.Ops {
			switch {
			case op.Guest != "" || len(op.Region) == 0 || op.Use == box.UseEntrance || op.Use == box.UseVent || op.Use == box.UseGrip:
				continue
			case op.Side != box.SideThrough && (op.Side == box.SideMachined) == (w.on.Panel.Face == box.FromInner):
				continue // from inside
			case op.Side == box.SideEdge || deep(op) < 5:
				continue
			}
			q := w.on.way(op)
			aside := math.Hypot(float64(q.at.X-w.at.X), float64(q.at.Y-w.at.Y)) - q.w/2 - w.w/2
			if q.w >= 15 && q.lowest < w.lowest && q.highest > w.lowest-150 && aside < 0 {
				f := r.finding(w.on.Part, q.at, 1)
				f.Why = fmt.Sprintf("the %s opens %s below the entrance. %s", op.Source, w.on.Part, r.Why)
				return []box.Finding{f}
			}
		}
	}
	return nil
}

// holeJoint looks for cuts of joints near the hole, and for joints between strips
// that stay dry: those that are glued are as strong as the wood.
func holeJoint(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		least := l.toStrips(w)
		for _, op := range w.on.Panel.Ops {
			if op.Guest != "" && len(op.Region) > 0 {
				least = math.Min(least, op.Region.DistanceTo(w.region))
			}
		}
		if !math.IsInf(least, 1) {
			out = append(out, r.against(w.on.Part, w.at, least, math.NaN())...)
		}
	}
	return out
}

// toStrips is the least distance from a hole to a dry joint between strips of its
// wall: 0 where it runs through one, infinite where there is none.
func (l *look) toStrips(w *way) float64 {
	least := math.Inf(1)
	across, ok := w.on.across()
	k := slices.IndexFunc(l.wholes, func(x box.Whole) bool { return x.Part == w.on.Part && !x.Glued })
	if !ok || k < 0 {
		return least
	}
	lo, hi := -w.toward(across.Scale(-1)), w.toward(across)
	wallLo, wallHi := math.Inf(1), math.Inf(-1)
	for _, v := range w.on.corners {
		wallLo, wallHi = math.Min(wallLo, across.Dot(v)), math.Max(wallHi, across.Dot(v))
	}
	for i := range l.strips {
		p := &l.strips[i]
		if !slices.Contains(l.wholes[k].Strips, p.Part) || len(p.Panel.Silhouette) == 0 {
			continue
		}
		for _, v := range p.Panel.Silhouette[0] {
			// The ends of the wall are no joints, and a strip has two sides.
			x := across.Dot(p.Home.Out(solid.Vec{X: v.X, Y: v.Y}))
			if x > wallLo+1 && x < wallHi-1 {
				least = math.Min(least, math.Max(0, math.Max(lo-x, x-hi)))
			}
		}
	}
	return least
}

func ventTop(l *look, r Rule) []box.Finding {
	if l.height == 0 {
		return nil
	}
	for _, op := range l.use(box.UseVent, isWall) {
		w := op.on.way(op.Op)
		if f := r.against(op.on.Part, w.at, w.lowest/l.height, math.NaN()); f != nil {
			return f
		}
	}
	return nil
}
