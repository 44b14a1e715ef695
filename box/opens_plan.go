package box

import (
	"fmt"
	"slices"

	"holt.example/box/solid"
)

// planWay is how a part of a plan opens.
type planWay struct {
	part  Part
	path  string
	kind  wayKind
	axis  motion
	most  float64
	moved []Part
	aside []int   // turn buttons that are turned away when it opens
	at    float64 // how far it is open
}

// Way is how a part opens.
type Way struct {
	Part    Part
	Opening string    // its place in the design, as in problems: "Opens[0].Hinged"
	Turns   bool      // about an axis, by an angle: Plan.Opened; else it is drawn, by mm: Plan.Drawn
	On      Place     // a place on the axis; zero of a part that is drawn
	Along   Direction // of the axis, so that a positive angle is a turn to the right seen along it; or the way out
	Most    float64   // degrees or mm that are proved free
	Moves   []Part    // what moves with it, itself first
	At      float64   // how far it is open in this plan
}

func (s *shell) planWays(p *Plan) {
	for _, w := range s.ways {
		if w.axis.none() {
			continue
		}
		v := planWay{part: w.part, path: w.path, kind: w.kind, axis: w.axis, most: w.most}
		v.moved = append(v.moved, w.part)
		in := s.moved(w)
		for i := range p.pieces {
			if q := &p.pieces[i]; in[q.Part] && q.Part != w.part || q.Of != "" && in[q.Of] {
				v.moved = append(v.moved, q.Part)
			}
		}
		p.ways = append(p.ways, v)
	}
	for _, w := range s.ways {
		k := p.wayOf(w.part)
		if k < 0 {
			continue
		}
		for _, a := range w.aside {
			if b := p.wayOf(a.part); b >= 0 {
				p.ways[k].aside = append(p.ways[k].aside, b)
			}
		}
	}
}

func (p *Plan) wayOf(part Part) int {
	for k := range p.ways {
		if p.ways[k].part == part {
			return k
		}
	}
	return -1
}

// Ways lists what opens, in the order of Design.Opens, parts of the shell first.
func (p *Plan) Ways() []Way {
	var out []Way
	for _, w := range p.ways {
		v := Way{Part: w.part, Opening: w.path, Turns: w.kind == turning, Along: Direction{w.axis.d.X + 0, w.axis.d.Y + 0, w.axis.d.Z + 0}, Most: w.most, Moves: slices.Clone(w.moved), At: w.at}
		if v.Turns {
			v.On = place(w.axis.o)
		}
		out = append(out, v)
	}
	return out
}

// Opened is the plan with a hinged or pivoted part, a stopper or a turn button
// turned by an angle from its closed place: 0 shuts it again. Only poses change,
// those of the part, of what moves with it, and of the turn buttons that keep it
// shut, which are turned aside. Other parts stay open or shut as they are. A
// problem says what cannot be: a part that does not turn (code "fixed"), or an
// angle beyond what is proved free (code "range").
func (p *Plan) Opened(part Part, angle Deg) (*Plan, error) {
	return p.posed(part, float64(angle), true)
}

// Drawn is the plan with a sliding or removable part, or a cover, drawn out by a
// distance from its closed place; otherwise as Opened.
func (p *Plan) Drawn(part Part, by MM) (*Plan, error) {
	return p.posed(part, float64(by), false)
}

func (p *Plan) posed(part Part, x float64, turn bool) (*Plan, error) {
	k := p.wayOf(part)
	if k < 0 {
		pr := Problem{Path: fmt.Sprintf("%.60s", string(part)), Code: "fixed", Why: "this part does not open"}
		switch part {
		case Front, Back, Left, Right, Floor, Roof: // those that need say no more
			pr.Try = fmt.Sprintf("Opens: []box.Opening{box.Hinged{Part: %q}}", part)
			if !turn {
				pr.Try = fmt.Sprintf("Opens: []box.Opening{box.Removable{Part: %q}}", part)
			}
		}
		if _, ok := p.Piece(part); !ok {
			pr.Code, pr.Try, pr.Why = "unknown-part", "", "the plan has no such part"
		}
		return nil, pr
	}
	w := &p.ways[k]
	unit, what := "mm", "how far it comes out"
	if w.kind == turning {
		unit, what = "deg", "angle to which it is proved to open"
	}
	if turn != (w.kind == turning) {
		pr := Problem{Path: string(part), Code: "fixed", Why: "this part turns: open it by an angle with Opened"}
		if turn {
			pr.Why = "this part is drawn out: open it by a distance with Drawn"
		}
		return nil, pr
	}
	if !(x >= 0 && x <= w.most) {
		return nil, Problem{Path: string(part), Code: "range", Got: num(x), Lo: 0, Hi: w.most, Unit: unit, Why: what}
	}
	q := *p
	q.ways = slices.Clone(p.ways)
	q.ways[k].at = x
	for _, a := range w.aside {
		q.ways[a].at = 0
		if x > 0 {
			q.ways[a].at = q.ways[a].most
		}
	}
	q.pieces = slices.Clone(p.pieces)
	for i := range q.pieces {
		q.pieces[i].Pose = q.pose(q.pieces[i].Part, q.pieces[i].Home)
	}
	q.wholes = slices.Clone(p.wholes)
	for i := range q.wholes {
		q.wholes[i].Pose = q.pose(q.wholes[i].Part, q.wholes[i].Home)
	}
	return &q, nil
}

// pose is where a part is: its own move first, then that of what carries it.
func (p *Plan) pose(part Part, home solid.Frame) solid.Frame {
	f := home
	own := p.wayOf(part)
	if own >= 0 {
		f = p.ways[own].axis.frame(f, p.ways[own].at)
	}
	for k := range p.ways {
		if k != own && slices.Contains(p.ways[k].moved, part) {
			f = p.ways[k].axis.frame(f, p.ways[k].at)
		}
	}
	return f
}
