package species

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"holt.example/box"
)

// drive gathers the fixings of the plan and of the site, and looks at them and at
// what the box hangs by.
func (l *look) drive() error {
	structural := l.mass() > heavy
	for _, r := range l.plan.Fixings() {
		l.fixings = append(l.fixings, l.driven(l.plan, r, structural))
	}
	for i, f := range l.site.Fixings { // by the caller's own count
		if err := f.ranges(fmt.Sprintf("Review.site.Fixings[%d]", i)); err != nil {
			return err
		}
	}
	l.fixings = append(l.fixings, l.site.Fixings...)
	var err error
	if l.fixed, err = l.checkFixings(l.plan, l.fixings); err != nil {
		return err
	}
	l.fixed = append(l.fixed, l.structural()...)
	hung, err := l.checkMounting(l.site.Mounting)
	l.fixed = append(l.fixed, hung...)
	return err
}

// fixed picks what is wrong with fixings by a rule.
func fixed(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for _, f := range l.fixed {
		if f.Code == r.Code {
			out = append(out, f)
		}
	}
	return out
}

// structural holds the fixings of a heavy box against the rules for load: how
// deep they go into the second piece, and how thick they are for its edge.
func (l *look) structural() []box.Finding {
	var out []box.Finding
	for _, f := range l.fixings {
		a, b := l.piece(f.Over), l.piece(f.Under)
		if !f.Structural || len(f.Places) == 0 || a == nil || b == nil {
			continue
		}
		f.measure(a, b)
		d := float64(f.With.Diameter)
		in := float64(f.With.Length-f.Held) / d
		code, need := "screw-penetration", 7.0
		if f.With.Kind == "nail" {
			code, need = "nail-penetration", 10 // at least, in whatever wood
			if w, ok := l.woodOf(b.Board.Material); ok {
				if gravity, ok := gravityOf(w); ok {
					need = deepEnough("nail", gravity)
				}
			}
		}
		if r, err := RuleOf(code); err == nil && in < need-tiny {
			g := r.finding(f.Over, f.Places[0], in)
			g.Lo, g.Hi = need, math.Inf(1)
			g.Why = fmt.Sprintf("%s: %s diameters deep, %s needed. %s", f, tenth(in), num(need), r.Why)
			out = append(out, g)
		}
		if r, err := RuleOf("into-edge"); err == nil && f.With.Kind == "screw" {
			if share := d / float64(f.Edge); share > r.Range.Hi+tiny {
				g := r.finding(f.Over, f.Places[0], math.Round(share*1e4)/1e4)
				g.Why = fmt.Sprintf("%s: %s mm is %s of the edge of %s mm, and %s is the most. %s", f, num(d), num(g.Got), tenth(float64(f.Edge)), num(r.Range.Hi), r.Why)
				out = append(out, g)
			}
		}
	}
	return out
}

// clout is the length in mm of the shortest clout nails that are usual for felt
// (common practice).
const clout = 13

// feltClouts holds the roof under a felt against the shortest clouts.
func feltClouts(l *look, r Rule) []box.Finding {
	for _, f := range l.fittings {
		if f.Cut == nil || !has(lower(f.What), "felt") {
			continue
		}
		for _, on := range f.Where {
			if p := l.piece(on); p != nil && isRoof(on) && p.leastThick() < clout-tiny {
				g := r.finding(on, box.Place{}, clout)
				g.Lo, g.Hi = 0, p.leastThick()
				g.Why = fmt.Sprintf("clouts of %d mm come through %s, which is %s thick: nail the felt at the edges and from below, or glue it. %s", clout, on, tenth(p.leastThick()), r.Why)
				return []box.Finding{g}
			}
		}
	}
	return nil
}

// tips looks at the nails and screws that the plan itself lists: those that come
// out on the far side.
func (l *look) tips(r Rule) []box.Finding {
	next := 0.0
	for _, f := range l.fittings {
		strip := next // what the line before is for
		if next = thickOf(f.What); next > 0 {
			continue
		}
		var through *piece
		room := 0.0
		switch {
		case f.What == "clout nail" && len(f.Where) > 0:
			// Of a roof at a wall only the roof is over the cavity.
			for _, on := range f.Where {
				p := l.piece(on)
				if p == nil || isWall(on) && isRoof(f.Where[0]) {
					continue
				}
				if through == nil || p.leastThick() < through.leastThick() {
					through = p
				}
			}
			if through != nil {
				room = strip + through.leastThick()
			}
		case f.What == "screw" && len(f.Where) == 2 && !isShell(f.Where[0]) && isShell(f.Where[1]) && !l.turns(f.Where[0]):
			a, b := l.piece(f.Where[0]), l.piece(f.Where[1])
			if a != nil && b != nil && l.liesOn(a, b) {
				through, room = b, a.leastThick()+b.leastThick()
			}
		}
		if through == nil || float64(f.Length) <= room+tiny {
			continue
		}
		g := r.finding(through.Part, box.Place{}, float64(f.Length))
		g.Lo, g.Hi, g.Unit = 0, room, "mm"
		g.Why = fmt.Sprintf("a %s of %s mm comes out of %s after %s. %s", f.What, num(float64(f.Length)), through.Part, tenth(room), r.Why)
		return []box.Finding{g}
	}
	return nil
}

// liesOn says that two parts lie on one another with their faces; a ledge, say,
// stands on its wall with an edge.
func (l *look) liesOn(a, b *piece) bool {
	for _, s := range l.seams {
		if over, under := l.piece(s.Over), l.piece(s.Under); s.Theta > 179 && (over == a && under == b || over == b && under == a) {
			return true
		}
	}
	return false
}

// turns says that a part turns or comes off on its screws, as a turn button does,
// whose screw may go into an end.
func (l *look) turns(p box.Part) bool {
	for _, w := range l.plan.Ways() {
		if w.Part == p {
			return true
		}
	}
	return false
}

// thickOf reads how thick a strip is that the plan lists, "rubber strip, 3 thick"; 0
// is any other thing.
func thickOf(what string) float64 {
	_, size, _ := strings.Cut(what, ", ")
	size, ok := strings.CutSuffix(size, " thick")
	t, err := strconv.ParseFloat(size, 64)
	if !ok || err != nil || !(t > 0 && t <= largest) {
		return 0
	}
	return t
}
