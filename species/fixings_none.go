package species

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"holt.example/box"
	"holt.example/joints"
)

// unfixed is a seam that asks for screws or nails and has none.
type unfixed struct {
	seam        box.Seam // of the whole parts
	over, under *piece
	hold        joints.Hold
	kind        string   // that may be taken
	diameters   []box.MM // that may, the best first
	lo, hi      box.MM   // the lengths that would do, to the 5 mm in which they are sold; 0 is none
	diameter    box.MM   // of those
	others      bool     // the rows that there are would have to be shorter
}

// propose works out the row of one seam. Where what is chosen finds no place, the
// next best at hand that keeps every rule is tried.
func (l *look) propose(plan *box.Plan, a, b *piece, s box.Seam, h joints.Hold, with FixWith, structural bool, before []Fixing) (Fixing, bool) {
	for again := false; ; again = true {
		f, ok := fix(a, b, s, with, structural, before)
		if math.Abs(a.outward.Dot(b.outward)) > 1-1e-6 {
			f, ok = l.fixFlat(plan, a, b, s, h, with, structural, before)
		}
		if ok && !(again && len(f.check(false)) > 0) {
			return f, true
		}
		with.Fasteners = slices.DeleteFunc(slices.Clone(with.Fasteners), func(x Fastener) bool { return x == f.With })
		if f.With.Length == 0 || len(with.Fasteners) == 0 {
			return f, false
		}
	}
}

// unfixed finds the seams that ask for screws or nails, and whose parts no row
// joins: neither one of those given nor one of the plan's, nor screws that an element
// lists itself. The kinds and diameters that would do are looked for among some.
func (l *look) unfixed(plan *box.Plan, fixings []Fixing, among []Fastener, structural bool) []unfixed {
	var out []unfixed
	var rows [][2]*piece
	for _, f := range fixings {
		rows = append(rows, [2]*piece{l.whole(plan, f.Over), l.whole(plan, f.Under)})
	}
	for _, f := range plan.Fixings() {
		rows = append(rows, [2]*piece{l.whole(plan, f.Over), l.whole(plan, f.Under)})
	}
	for _, f := range plan.Fittings() {
		if len(f.Where) == 2 && (f.What == "screw" || f.What == "nail") {
			rows = append(rows, [2]*piece{l.whole(plan, f.Where[0]), l.whole(plan, f.Where[1])})
		}
	}
	for _, s := range plan.Seams() {
		a, b := l.whole(plan, s.Over), l.whole(plan, s.Under)
		k := slices.IndexFunc(s.Holds, func(h joints.Hold) bool { return h.Kind == "screw" || h.Kind == "nail" })
		if a == nil || b == nil || a == b || k < 0 || slices.Contains(rows, [2]*piece{a, b}) || slices.Contains(rows, [2]*piece{b, a}) {
			continue
		}
		rows = append(rows, [2]*piece{a, b}) // told once
		s.Over, s.Under = a.Part, b.Part
		u := unfixed{seam: s, over: a, under: b, hold: s.Holds[k]}
		u.sold(among)
		out = append(out, u)
	}
	l.lengths(plan, out, fixings, structural)
	return out
}

// sold gathers the kind and the diameters that a seam may take: the thickest up to
// 4 mm first, then those that are thicker than a small box needs.
func (u *unfixed) sold(among []Fastener) {
	u.kind = u.hold.Kind
	if !slices.ContainsFunc(among, func(f Fastener) bool { return f.Kind == u.kind }) && len(among) > 0 {
		u.kind = among[0].Kind
	}
	for _, f := range among {
		if d := f.Diameter; f.Kind == u.kind && u.hold.Diameter == 0 && !slices.Contains(u.diameters, d) {
			u.diameters = append(u.diameters, d)
		}
	}
	if u.hold.Diameter > 0 {
		u.kind, u.diameters = u.hold.Kind, []box.MM{u.hold.Diameter}
	}
	rank := func(d box.MM) box.MM {
		if d > 4 {
			return d
		}
		return -d
	}
	sort.Slice(u.diameters, func(i, k int) bool { return rank(u.diameters[i]) < rank(u.diameters[k]) })
}

// lengths finds, for all seams together, the lengths that find a place, hold, and do
// not come out, where those that are there already are no longer either: what is too
// long is as often in the way of others as in its own.
func (l *look) lengths(plan *box.Plan, us []unfixed, fixings []Fixing, structural bool) {
	most := 0
	for _, u := range us {
		most = max(most, len(u.diameters))
	}
	for rank := range most {
		var open []int
		for i, u := range us {
			if u.lo == 0 && rank < len(u.diameters) {
				open = append(open, i)
			}
		}
		for length := box.MM(15); length <= 150 && len(open) > 0; length += 5 {
			before := slices.Clone(fixings)
			for i := range before {
				before[i].With.Length = min(before[i].With.Length, length)
			}
			for _, i := range open {
				u := &us[i]
				x := Fastener{Kind: u.kind, Diameter: u.diameters[rank], Length: length, Pilot: pilotFor(u.kind, u.diameters[rank])}
				h := joints.Hold{Kind: u.kind, Note: u.hold.Note, Count: u.hold.Count, Spacing: u.hold.Spacing}
				f, ok := l.propose(plan, u.over, u.under, u.seam, h, FixWith{Fasteners: []Fastener{x}, Spacing: 100}.of(h), structural, before)
				if !ok {
					continue
				}
				before = append(before, f)
				if slices.ContainsFunc(f.check(false), func(g box.Finding) bool { return lengthCodes[g.Code] }) {
					continue
				}
				switch {
				case u.lo == 0:
					u.lo, u.hi, u.diameter = length, length, x.Diameter
				case u.diameter == x.Diameter && u.hi == length-5:
					u.hi = length
				}
				u.others = slices.ContainsFunc(fixings, func(f Fixing) bool { return f.With.Length > u.hi })
			}
		}
	}
}

// lengthCodes are what a fastener of another length would mend.
var lengthCodes = map[string]bool{"fastener-length": true, "fastener-endgrain": true, "points": true}

// names are those of its parts.
func (u unfixed) names() string { return fmt.Sprintf("%s on %s", u.over.Part, u.under.Part) }

// would says what would do.
func (u unfixed) would() string {
	if u.lo == 0 {
		return fmt.Sprintf("no %s of a usual length goes through one part into the other there: they lie too far from square, meet over too little, or other work is in the way; glue it, or put a batten in the corner", u.kind)
	}
	s := fmt.Sprintf("%ss %s mm thick and %s", u.kind, num(float64(u.diameter)), num(float64(u.lo)))
	if u.hi > u.lo {
		s += " to " + num(float64(u.hi))
	}
	s += " long would do"
	if u.others {
		s += ", with the others no longer either"
	}
	return s
}

// finding tells of it.
func (u unfixed) finding() box.Finding {
	f := box.Finding{Code: "seam-unfixed", Severity: box.Warning, Part: u.over.Part, Where: u.seam.From, Got: math.NaN(), Lo: float64(u.lo), Hi: float64(u.hi), Unit: "mm",
		Why:     fmt.Sprintf("the seam of %s asks for %ss and has none; %s.", u.names(), u.hold.Kind, u.would()),
		Sources: []string{"common practice"}}
	if u.lo == 0 {
		f.Severity = box.Advice
		f.Lo, f.Hi, f.Unit = math.Inf(-1), math.Inf(1), ""
	}
	return f
}

// problem says that of all that is at hand none finds a place.
func (u unfixed) problem() box.Problem {
	p := box.Problem{Path: "FixWith.Fasteners", Code: "seam-unfixed", Lo: float64(u.lo), Hi: float64(u.hi), Unit: "mm",
		Why: fmt.Sprintf("nothing at hand finds a place in the seam of %s, which asks for %ss: too short, too long, or in the way of others; %s", u.names(), u.hold.Kind, u.would())}
	if u.hold.Length > 0 { // the seam's own word, not what is at hand
		p.Path, p.Got = "Joints", num(float64(u.hold.Length))
	}
	return p
}
