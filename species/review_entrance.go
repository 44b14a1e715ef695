package species

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

func wayIn(p Preset) bool { return p.Form == Hole || p.Form == SlotForm || p.Form == Tube }

// holeSize holds the entrance against the animal's range, and names the slip
// of radius and diameter.
func holeSize(l *look, r Rule) []box.Finding {
	hole := l.animal.Hole
	if hole.Empty() {
		return nil
	}
	r.Range = hole
	if l.animal.Group == Insect {
		return boreSize(l, r)
	}
	var out []box.Finding
	for i := range l.ways {
		w := l.ways[i].gate
		small, large := math.Min(w.w, w.h), math.Max(w.w, w.h)
		got := large
		if small < hole.Lo-tiny {
			got = small
		} else if !hole.HasHi || large <= hole.Hi+tiny {
			continue
		}
		f := r.finding(w.on.Part, w.at, got)
		f.Unit = "mm"
		switch {
		case hole.HasLo && hole.HasHi && w.round && slip(got/2, hole):
			f.Why += " It is twice a size that fits: was a diameter meant as a radius?"
		case hole.HasLo && hole.HasHi && w.round && slip(got*2, hole):
			f.Why += " It is half a size that fits: was a radius given for a diameter?"
		case got > hole.Lo && w.round:
			if in := Admits(box.MM(got), l.animal.Region, l.animal.Key); len(in) > 0 {
				f.Why += " It also admits " + strings.Join(commonNames(in), ", ") + "."
			}
		}
		out = append(out, f)
	}
	return out
}

// slip allows a tenth of a millimetre, for sizes that were rounded.
func slip(x float64, s Span) bool { return x >= s.Lo-0.1 && x <= s.Hi+0.1 }

func holeAbove(l *look, r Rule) []box.Finding {
	own := math.NaN()
	if a, ok := l.animal.Entry.Lowest(); ok {
		own = float64(a)
	}
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		out = append(out, r.against(w.on.Part, w.at, w.lowest, own)...)
	}
	return out
}

func holeSide(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		if d, ok := l.beside(&l.ways[i]); ok {
			out = append(out, r.against(l.ways[i].on.Part, l.ways[i].at, d, math.NaN())...)
		}
	}
	return out
}

func holeTop(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		if d, ok := l.over(&l.ways[i]); ok {
			out = append(out, r.against(l.ways[i].on.Part, l.ways[i].at, d, math.NaN())...)
		}
	}
	return out
}

func holeRoom(l *look, r Rule) []box.Finding {
	return append(holeSide(l, r), holeTop(l, r)...)
}

// holeEdge measures the wood to the free edges of the board; where it meets
// another part the margins of the cavity count. An open front has no wood
// beside it and is left out.
func holeEdge(l *look, r Rule) []box.Finding {
	if !wayIn(l.animal) {
		return nil
	}
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		least := math.Inf(1)
		for _, e := range w.on.Panel.Edges {
			if e.Neighbour == "" {
				least = math.Min(least, outline.Polygon(e.From, e.To).DistanceTo(w.region[0]))
			}
		}
		if !math.IsInf(least, 1) {
			out = append(out, r.against(w.on.Part, w.at, least, math.NaN())...)
		}
	}
	return out
}

// perch looks for free parts, and a floor that runs out, before the entrance's wall
// that an enemy could stand on: within 150 mm below the hole and no farther aside
// than its edge (common practice).
func perch(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		for k := range l.pieces {
			q := &l.pieces[k]
			if !strings.HasPrefix(string(q.Part), "free/") && q.Part != box.Floor {
				continue
			}
			if _, tunnel := l.tunnelOf(q.Part); tunnel || slices.Contains(w.plates, q) {
				continue // the way in goes through it
			}
			// The corner of its extent farthest out from the wall.
			face := w.on.inner + float64(w.on.Thickness)
			far := math.Max(w.on.outward.X*q.min.X, w.on.outward.X*q.max.X) + math.Max(w.on.outward.Y*q.min.Y, w.on.outward.Y*q.max.Y)
			if far < face+5 { // does not stand out from it by what claws could use
				continue
			}
			aside := w.w / 2
			level := q.max.Z > w.lowest-150 && q.min.Z < w.highest
			near := q.min.X < float64(w.at.X)+aside && q.max.X > float64(w.at.X)-aside
			if math.Abs(w.on.outward.X) > math.Abs(w.on.outward.Y) {
				near = q.min.Y < float64(w.at.Y)+aside && q.max.Y > float64(w.at.Y)-aside
			}
			if level && near {
				f := r.finding(q.Part, box.Place{X: box.MM(q.max.X), Y: box.MM(q.min.Y), Z: box.MM(q.max.Z)}, 1)
				f.Why = fmt.Sprintf("%s stands out below the entrance and serves as a perch. %s", q.Part, r.Why)
				out = append(out, f)
			}
		}
	}
	return out
}

func slotHeight(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		w := l.ways[i].gate
		out = append(out, r.against(w.on.Part, w.at, math.Min(w.w, w.h), published(l.animal.Entry.Height))...)
	}
	return out
}

func starling(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		if w := l.ways[i].gate; w.round {
			out = append(out, r.against(w.on.Part, w.at, w.diameter, published(l.animal.Entry.Width))...)
		}
	}
	return out
}

// frontLip is the height of the front board: up to the opening cut into it,
// or that of the board before an open front.
func frontLip(l *look, r Rule) []box.Finding {
	own := published(l.animal.Entry.Above)
	var out []box.Finding
	for i := range l.ways {
		out = append(out, r.against(l.ways[i].on.Part, l.ways[i].at, l.ways[i].lowest, own)...)
	}
	if len(l.ways) > 0 || l.front() != nil {
		return out
	}
	for i := range l.pieces {
		// A free part whose inner face closes the front of the cavity.
		p := &l.pieces[i]
		if strings.HasPrefix(string(p.Part), "free/") && math.Abs(p.max.Y+l.depth/2) < tiny && p.min.X < 0 && p.max.X > 0 && p.max.Z > 0 && p.max.Z < l.height {
			out = append(out, r.against(p.Part, box.Place{Y: box.MM(p.min.Y), Z: box.MM(p.max.Z)}, p.max.Z, own)...)
		}
	}
	return out
}

func entranceSides(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.ways {
		w := &l.ways[i]
		got := math.Max(w.w, w.h)
		if s := math.Min(w.w, w.h); s < r.Range.Lo-tiny {
			got = s
		}
		out = append(out, r.against(w.on.Part, w.at, got, published(l.animal.Entry.Width))...)
	}
	return out
}
