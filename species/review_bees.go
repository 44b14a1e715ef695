package species

import (
	"math"

	"holt.example/box"
)

// bore is a hole for one line of cells.
type bore struct {
	on       *piece
	at       box.Place
	diameter float64
	deep     float64 // 0 if it goes through
}

// bores are the round holes of blocks and other inner and free parts, without
// those for screws.
func (l *look) bores() []bore {
	var out []bore
	for i := range l.pieces {
		p := &l.pieces[i]
		if isShell(p.Part) {
			continue
		}
		for _, op := range p.Panel.Ops {
			if len(op.Region) == 0 || op.Side == box.SideEdge || op.Use == box.UseScrew || op.Use == box.UseHinge {
				continue
			}
			if _, d, ok := op.Region[0].IsCircle(1e-6); ok {
				b := bore{on: p, at: p.way(op).at, diameter: d}
				if op.Side != box.SideThrough {
					b.deep = deep(op)
				}
				out = append(out, b)
			}
		}
	}
	return out
}

// beeClosed reports the first bore that is too short, too long or open behind.
func beeClosed(l *look, r Rule) []box.Finding {
	for _, b := range l.bores() {
		if b.deep == 0 {
			f := r.finding(b.on.Part, b.at, 0)
			f.Why = "a hole goes through " + string(b.on.Part) + " and is open behind. " + r.Why
			return []box.Finding{f}
		}
		if f := r.against(b.on.Part, b.at, b.deep, published(l.animal.Inside.Depth)); f != nil {
			return f
		}
	}
	return nil
}

func beeDiameter(l *look, r Rule) []box.Finding {
	for _, b := range l.bores() {
		if f := r.against(b.on.Part, b.at, b.diameter, published(l.animal.Entry.Width)); f != nil {
			return f
		}
	}
	return nil
}

// beeSpacing is the least distance between the middles of two holes of a part.
func beeSpacing(l *look, r Rule) []box.Finding {
	list := l.bores()
	least, at := math.Inf(1), bore{}
	for i, b := range list {
		for _, o := range list[:i] {
			if o.on != b.on {
				continue
			}
			if d := vecOf(b.at).Sub(vecOf(o.at)).Len(); d < least {
				least, at = d, b
			}
		}
	}
	if math.IsInf(least, 1) {
		return nil
	}
	return r.against(at.on.Part, at.at, math.Round(least*1e4)/1e4, math.NaN())
}

// boreSize holds the bores of an insect's block against its range.
func boreSize(l *look, r Rule) []box.Finding {
	for _, b := range l.bores() {
		if !l.animal.Hole.Has(b.diameter) {
			f := r.finding(b.on.Part, b.at, b.diameter)
			f.Unit = "mm"
			return []box.Finding{f}
		}
	}
	return nil
}
