package species

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
)

// door is a way into the box for people.
type door struct {
	box.Way
	part *piece // what opens, or the wall that an inspection opening is in
	// wide and high are the clear opening, in mm.
	wide, high float64
	inspection bool
	held       bool // something keeps it shut
}

// doorsOf lists what opens for people; stoppers and turn buttons do not.
func doorsOf(l *look) []door {
	var out []door
	for _, w := range l.plan.Ways() {
		d := door{Way: w}
		switch {
		case strings.HasSuffix(w.Opening, ".Stopper") || strings.HasSuffix(w.Opening, ".TurnButton"):
			continue
		case strings.HasSuffix(w.Opening, ".Inspection"):
			d.inspection, d.held = true, true // by its two screws
			for i := range l.pieces {
				for _, op := range l.pieces[i].Panel.Ops {
					if op.Source == "inspection opening" && len(op.Region) > 0 && l.behind(w.Part, &l.pieces[i], op) {
						e := op.Region[0].Extents()
						d.part, d.wide, d.high = &l.pieces[i], e.Width(), e.Height()
					}
				}
			}
		default:
			d.part = l.piece(w.Part)
			if d.part != nil {
				d.wide, d.high = float64(d.part.Nominal[0]), float64(d.part.Nominal[1])
			}
			d.held = !w.Turns || l.caught(w)
		}
		if d.part != nil {
			out = append(out, d)
		}
	}
	return out
}

// behind says that an opening lies behind a cover.
func (l *look) behind(cover box.Part, wall *piece, op box.Op) bool {
	c := l.piece(cover)
	if c == nil {
		return false
	}
	mid := c.min.Add(c.max).Scale(0.5)
	at := vecOf(wall.way(op).at)
	off := mid.Sub(at)
	return off.Sub(wall.outward.Scale(off.Dot(wall.outward))).Len() < 1 && off.Dot(wall.outward) > 0
}

// caught says that a part that turns is kept shut: by a button that has to be
// turned aside before it opens, or by a hook.
func (l *look) caught(w box.Way) bool {
	for _, f := range l.fittings {
		if f.What == "hook and eye" && len(f.Where) > 0 && f.Where[0] == w.Part {
			return true
		}
	}
	open, err := l.plan.Opened(w.Part, box.Deg(w.Most))
	if err != nil {
		return false
	}
	for _, b := range open.Ways() {
		if b.At > 0 && strings.HasSuffix(b.Opening, ".TurnButton") {
			return true
		}
	}
	return false
}

// A way in works where a hand with an old nest goes through, and a part that
// turns leaves it room (common practice).
const (
	handWide = 80 // mm
	handTurn = 60 // degrees
)

// open says that a side of the box has no part at all: beside an open one the
// neighbours end at nothing.
func (l *look) open() bool {
	roof, floor, walls := false, false, 0
	for i := range l.pieces {
		switch p := &l.pieces[i]; {
		case isRoof(p.Part):
			roof = true
		case p.Part == box.Floor:
			floor = true
		case isWall(p.Part):
			walls++
			for _, e := range p.Panel.Edges {
				a, b := p.Home.Out(solid.Vec{X: e.From.X, Y: e.From.Y}), p.Home.Out(solid.Vec{X: e.To.X, Y: e.To.Y})
				if d := b.Sub(a); e.Neighbour == "" && math.Abs(d.Z) > 0.7*d.Len() {
					return true
				}
			}
		}
	}
	return !roof && !l.lid() || !floor || walls < 3
}

// lid says that a free part lies over the cavity.
func (l *look) lid() bool {
	for i := range l.pieces {
		p := &l.pieces[i]
		if strings.HasPrefix(string(p.Part), "free/") && p.min.Z > l.height-tiny && p.min.X < 0 && p.max.X > 0 && p.min.Y < 0 && p.max.Y > 0 {
			return true
		}
	}
	return false
}

func openBird(l *look, r Rule) []box.Finding {
	if l.open() {
		return nil
	}
	why := "nothing opens"
	for i := range l.doors {
		d := &l.doors[i]
		switch small := math.Min(d.wide, d.high); {
		case small < handWide-tiny:
			why = fmt.Sprintf("%s opens only %s by %s mm, and a hand with an old nest needs %d", d.Part, tenth(d.wide), tenth(d.high), handWide)
		case d.Turns && d.Most < handTurn-1e-6:
			why = fmt.Sprintf("%s turns by %s degrees only, and a hand needs %d", d.Part, tenth(d.Most), handTurn)
		default:
			return nil
		}
	}
	f := r.finding("", box.Place{}, 0)
	f.Lo, f.Unit = 1, "count"
	f.Why = "there is no way in for cleaning (roof, front or side): " + why + ". " + r.Why
	if len(l.doors) > 0 {
		f.Part = l.doors[0].Part
	}
	return []box.Finding{f}
}

// openInspect wants a way to look in from above or from the side.
func openInspect(l *look, r Rule) []box.Finding {
	if l.open() || len(l.doors) == 0 {
		return nil // open, or openBird says so
	}
	for i := range l.doors {
		if l.doors[i].part.Part != box.Floor {
			return nil
		}
	}
	f := r.finding(box.Floor, box.Place{}, 0)
	f.Lo, f.Unit = 1, "count"
	f.Why = "only the floor opens, and with it the nest drops out. " + r.Why
	return []box.Finding{f}
}

func openSecure(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.doors {
		if d := &l.doors[i]; !d.held {
			f := r.finding(d.Part, d.On, 0)
			f.Lo, f.Unit = 1, "count"
			f.Why = fmt.Sprintf("%s opens, and neither a hook nor a button keeps it shut. %s", d.Part, r.Why)
			out = append(out, f)
		}
	}
	return out
}

func openBat(l *look, r Rule) []box.Finding {
	if len(l.doors) == 0 {
		return nil
	}
	f := r.finding(l.doors[0].Part, box.Place{}, float64(len(l.doors)))
	f.Why = fmt.Sprintf("%s opens. %s", l.doors[0].Part, r.Why)
	return []box.Finding{f}
}

// licence is for what opens on a box that only licensed people may open.
func licence(l *look, r Rule) []box.Finding {
	if len(l.doors) == 0 {
		return nil
	}
	f := r.finding(l.doors[0].Part, box.Place{}, float64(len(l.doors)))
	f.Lo, f.Hi, f.Unit = math.Inf(-1), math.Inf(1), "count"
	f.Why = fmt.Sprintf("%s opens. %s Leave it shut unless you hold the licence that the law asks for.", l.doors[0].Part, r.Why)
	return []box.Finding{f}
}

// doorGap looks at the gaps where an opening part ends at a neighbour. A seam
// with a hinge needs none, and over a wall that turns there is the room that its
// top needs. What slides may lie against one side, so both its gaps count
// together.
func doorGap(l *look, r Rule) []box.Finding {
	var out []box.Finding
	add := func(d *door, at box.Place, got, across float64, where string) {
		lo, hi := r.Range.Lo+swells(across, l.site.swing()), r.Range.Hi+swells(across, math.Max(mostSwing, l.site.swing()))
		if got >= lo-tiny && got <= hi+tiny {
			return
		}
		f := r.finding(d.Part, at, got)
		f.Lo, f.Hi = lo, hi
		f.Why = fmt.Sprintf("the gap of %s %s is %s mm, and %s to %s are asked for, what its wood moves included: a tighter part sticks, and a looser one rattles and lets draughts in.", d.Part, where, tenth(got), tenth(lo), tenth(hi))
		out = append(out, f)
	}
	for i := range l.doors {
		d := &l.doors[i]
		if d.inspection {
			continue
		}
		slide, wide, n := 0.0, 0.0, 0
		var first box.Place
		for _, s := range l.seams {
			q := l.piece(s.Over)
			if q == nil || l.piece(s.Under) != d.part || q == d.part || len(s.Holds) > 0 && s.Holds[0].Kind == "hinge" {
				continue
			}
			if isRoof(q.Part) && (d.Turns || s.Greatest == 0) {
				continue
			}
			w := d.part.acrossTo(q)
			if s.Joint == "housing" {
				slide, wide, n = slide+q.channel(d.Part)-q.reach(d.part), w, n+1
				first = s.From
				continue
			}
			add(d, s.From, float64(s.Least), w/2, "at "+string(q.Part))
		}
		if n > 1 {
			add(d, first, slide, wide, "between its two grooves")
		}
	}
	return out
}

// acrossTo is how wide a part of solid wood is across the grain towards a
// neighbour; 0 where the grain runs that way, or there is none.
func (p *piece) acrossTo(q *piece) float64 {
	across, ok := p.across()
	if c := across.Dot(q.outward); !ok || c*c < 0.5 {
		return 0
	}
	return float64(p.Width)
}

// across is the direction in the face of a part square to its grain; ok is false
// for sheet stock.
func (p *piece) across() (solid.Vec, bool) {
	return p.Home.U.Scale(-p.Panel.Grain[1]).Add(p.Home.V.Scale(p.Panel.Grain[0])), p.solidWood()
}
