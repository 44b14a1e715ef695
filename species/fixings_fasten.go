package species

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/species/timber"
)

// Fasten gives a design the screws and nails that Fixings proposes for it, as rows of
// its Fixings, and says the class of its Glue where seams are glued: it is listed
// with the area of their faces. So the holes are cut and drawn, everything is among
// Plan.Fittings, and the seams say what holds them. The fixings of the whole box
// come with it, the rows that the design had already first; CheckFixings holds them
// against the rules.
//
// A pair of parts that has a row keeps it, and glue that is said stays: to fasten a
// fastened design changes nothing. To start afresh set Fixings to nil. A row whose
// holes would run into other work is there without them: they are drilled when the
// parts are together.
//
// Errors are those of Resolve and of Fixings. Where FixWith names Fasteners and none
// of them finds a place in a seam that asks for screws or nails, a box.Problem of code
// seam-unfixed says so for each such seam, with the lengths that would; the design
// comes with it, fastened as far as that goes. Where none of any length would, there
// is no row and no error: CheckFixings names the seam.
func Fasten(design box.Design, with FixWith) (box.Design, []Fixing, error) {
	plan, err := design.Resolve()
	if err != nil {
		return box.Design{}, nil, err
	}
	fs, err := Fixings(plan, with)
	if err != nil {
		return box.Design{}, nil, err
	}
	left := misfits(plan, fs, with)
	if with.Glue == 0 {
		with.Glue = timber.GlueFor(true)
	}
	had := len(design.Fixings)
	out := design.With(func(d *box.Design) {
		for _, f := range fs[had:] {
			d.Fixings = append(d.Fixings, f.Row())
		}
		if d.Glue == "" && slices.ContainsFunc(plan.Seams(), box.Seam.Glued) {
			d.Glue = "class " + with.Glue.String() + " (EN 204)"
		}
	})
	for range 2 { // first the holes that are in the way, then whatever they meet
		if _, err = out.Resolve(); err == nil {
			return out, fs, left
		}
		if !undrilled(&out, err, had) {
			break
		}
	}
	if _, err = out.Resolve(); err != nil {
		return box.Design{}, nil, err
	}
	return out, fs, left
}

// misfits are the seams for which the fasteners that were named are at fault.
func misfits(plan *box.Plan, fs []Fixing, with FixWith) error {
	if with.Fasteners == nil {
		return nil
	}
	l, err := survey(plan, Preset{}, Site{})
	if err != nil {
		return err
	}
	var ps box.Problems
	for _, u := range l.unfixed(plan, fs, with.Fasteners, with.Load+l.mass() > heavy) {
		if u.lo > 0 {
			ps = append(ps, u.problem())
		}
	}
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// undrilled leaves out the holes of the rows from had on that a problem names, and
// says whether there are any.
func undrilled(d *box.Design, err error, had int) bool {
	var ps box.Problems
	if !errors.As(err, &ps) {
		return false
	}
	found := false
	for i := had; i < len(d.Fixings); i++ {
		path := fmt.Sprintf("Fixings[%d]", i)
		for _, p := range ps {
			if p.Path == path || strings.HasPrefix(p.Path, path+".") {
				d.Fixings[i].Hole, d.Fixings[i].Pilot, found = 0, 0, true
			}
		}
	}
	return found
}

// driven is a row of the design as a fixing, measured on the plan.
func (l *look) driven(plan *box.Plan, r box.FixingRow, structural bool) Fixing {
	f := Fixing{Over: r.Over, Under: r.Under, From: r.From, Slant: r.Slant, Into: r.Into, Places: r.Places, Structural: structural,
		With: Fastener{Kind: r.What, Diameter: r.Diameter, Length: r.Length, Pilot: r.Pilot, Stainless: keeps(r.Metal)}}
	a, b := l.piece(r.Over), l.piece(r.Under)
	if a == nil || b == nil || len(r.Places) == 0 {
		return f
	}
	w := solid.Vec{X: r.Into.X, Y: r.Into.Y, Z: r.Into.Z}
	f.Held, f.sheet, f.EndGrain = r.Held[0], !b.solidWood(), b.endGrain(w)
	ends := math.Inf(1)
	for i, p := range r.Places {
		q := vecOf(p).Add(w.Scale(float64(r.Held[i])))
		end := math.Inf(-1) // of the seam that it is in the midst of: strips have many
		for _, s := range l.seams {
			if over, under := l.whole(plan, s.Over), l.whole(plan, s.Under); over == a && under == b || over == b && under == a {
				x, y := vecOf(s.From), vecOf(s.To)
				along := y.Sub(x).Unit()
				end, f.Joint = math.Max(end, math.Min(along.Dot(q.Sub(x)), along.Dot(y.Sub(q)))), s.Joint
			}
		}
		ends = math.Min(ends, end)
	}
	if !math.IsInf(ends, 0) {
		f.End = max(0, tidy(ends)) // one past the end of the seam is at it
	}
	for i, p := range r.Places {
		at := a.Home.In(vecOf(p))
		right := at.X
		if a.Panel.Face == box.FromInner {
			right = -right
		}
		f.Right, f.Up = append(f.Right, tidy(right)), append(f.Up, tidy(at.Y))
		f.Held = max(f.Held, r.Held[i])
		// How far the axis misses the middle of an edge, at the worst.
		if math.Abs(b.outward.Dot(w)) < 0.9 {
			enter := vecOf(p).Add(w.Scale(float64(r.Held[i])))
			off := b.outward.Dot(enter) - b.inner - float64(b.Thickness)/2
			f.Off = max(f.Off, tidy(math.Abs(off)))
		}
	}
	f.Edge = min(box.MM(b.leastThick()), b.Thickness)
	f.deep = b.wood(a, f.From)
	if f.From == box.FromOuter {
		f.deep += a.channel(b.Part)
	}
	if f.Slant {
		c := a.outward.Dot(b.outward)
		f.deep /= math.Sqrt(1 - float64(c*c))
	}
	if math.Abs(b.outward.Dot(w)) > 0.9 { // into a face: no edge to split
		f.Edge, f.deep, f.End = flatEdge, float64(b.Thickness), 0
	}
	return f
}

// keeps says that a metal is left alone by damp wood with tannins.
func keeps(metal string) bool {
	m := strings.ToLower(metal)
	return strings.Contains(m, "stainless") || strings.Contains(m, "brass") || strings.Contains(m, "alumin") || strings.Contains(m, "bronze")
}
