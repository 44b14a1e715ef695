package boxtest

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
)

// crumb is the volume in mm3 below which an overlap or a void comes of the
// arithmetic: 1e-7 mm over faces of a tenth of a square metre.
const crumb = 1e-2

// Fits asserts that no two parts fill the same place, that parts with a joint
// touch, that every void has an owner, and, in a box closed on all sides, that
// what the parts leave between the outer planes is what the plan declares.
func Fits(t T, p *box.Plan) {
	t.Helper()
	report(t, p, CheckFits(p))
}

// CheckFits is Fits as an error.
func CheckFits(p *box.Plan) error {
	if p == nil {
		return errNoPlan
	}
	return fits(p.Pieces(), p.Seams(), p.Voids())
}

func fits(pieces []box.Piece, seams []box.Seam, voids []box.Void) error {
	var errs []error
	bad := func(format string, args ...any) { errs = append(errs, fmt.Errorf(format, args...)) }
	for i := range pieces {
		for j := range pieces[:i] {
			if v := solid.Overlap(pieces[i].Body, pieces[j].Body); !(v <= crumb) {
				bad("%s and %s fill the same place: %.4f mm3", pieces[j].Part, pieces[i].Part, v)
			}
		}
	}
	// A square end touches along an arris only.
	square := map[string]bool{}
	declared := 0.0
	for _, v := range voids {
		if v.Owner == "" {
			bad("a void of %.4f mm3 at %.1f, %.1f, %.1f has no owner", v.Volume, v.At.X, v.At.Y, v.At.Z)
		}
		if v.Kind == "square" {
			square[v.Owner] = true
		}
		if v.Kind != "feature" {
			declared += v.Volume
		}
	}
	whole := wholes(pieces)
	for _, s := range seams {
		if !(s.Contact > 0) && !square[string(whole(s.Over))+"/"+string(whole(s.Under))] {
			bad("%s and %s do not touch", s.Over, s.Under)
		}
	}
	if v, ok := empty(pieces, seams); ok && !(math.Abs(v-declared) <= crumb) {
		bad("the parts leave %.4f mm3 between the outer planes, and the plan owns up to %.4f", v, declared)
	}
	return errors.Join(errs...)
}

// covers reports whether a part stands on a face of the cavity.
func covers(q *box.Piece) bool { return q.Nominal != [2]box.MM{} }

// wholes names, for a strip, the made-up part that it belongs to, and any other
// part itself.
func wholes(pieces []box.Piece) func(box.Part) box.Part {
	of := map[box.Part]box.Part{}
	for i := range pieces {
		if q := &pieces[i]; q.Of != "" {
			of[q.Part] = q.Of
		}
	}
	return func(p box.Part) box.Part {
		if w, ok := of[p]; ok {
			return w
		}
		return p
	}
}

// inner is the cavity's side of a part that covers a face of it.
func inner(q *box.Piece) solid.Plane {
	n, d := q.Home.W, 0.0
	if q.Panel.Face == box.FromOuter { // Home lies on the outer face
		d = n.Dot(q.Home.O) - float64(q.Thickness)
	} else {
		n = n.Scale(-1)
		d = n.Dot(q.Home.O)
	}
	return solid.NewPlane(n, d)
}

// empty is the volume that the parts leave between the inner and the outer
// planes; false where a side is open, so that there is no telling.
func empty(pieces []box.Piece, seams []box.Seam) (float64, bool) {
	var in, out []solid.Plane
	var names []box.Part
	whole := wholes(pieces)
	for i := range pieces {
		if q := &pieces[i]; covers(q) {
			h := inner(q)
			in, out, names = append(in, h), append(out, h.Shift(float64(q.Thickness))), append(names, whole(q.Part))
		}
	}
	if len(in) < 4 {
		return 0, false
	}
	rest := solid.Intersect(out)
	// Closed: every edge between the parts' inner planes is one of the cavity, and
	// so has a joint. Leaning walls may meet somewhere below a box without a floor.
	joined := map[[2]box.Part]bool{}
	for _, s := range seams {
		a, b := whole(s.Over), whole(s.Under)
		joined[[2]box.Part{a, b}], joined[[2]box.Part{b, a}] = true, true
	}
	for _, f := range solid.Intersect(in).Faces {
		for _, next := range f.Next {
			if f.ID < 0 || next < 0 || !joined[[2]box.Part{names[f.ID], names[next]}] {
				return 0, false
			}
		}
	}
	var cells []solid.Convex
	for i, h := range in {
		if c := rest.Clip(h.Flip(), -30-2*i); !c.Empty() {
			cells = append(cells, c)
		}
		if rest = rest.Clip(h, -31-2*i); rest.Empty() {
			break
		}
	}
	for i := range pieces {
		b := pieces[i].Body
		b.Prisms = nil // a hole in a part is the part's own
		cells = solid.Subtract(cells, b)
	}
	return solid.VolumeOf(cells), true
}

// Cavity asserts the size of the inside: width and depth at the floor, height
// from the floor to the lowest inner eaves, to a millionth of a millimetre; of a
// polygon over all, corners included. And that no part of the shell reaches into it.
func Cavity(t T, p *box.Plan, width, depth, height box.MM) {
	t.Helper()
	report(t, p, CheckCavity(p, width, depth, height))
}

// overCorners says so where the walls of a polygon have no side that is square to a
// width (0) or a depth (1): a hexagon 150 from side to side is 173.2 wide.
func overCorners(pieces []box.Piece, axis int) string {
	polygon := false
	for i := range pieces {
		q := &pieces[i]
		if !covers(q) || !strings.HasPrefix(string(q.Part), "wall/") {
			continue
		}
		polygon = true
		n := inner(q).N
		if x := [3]float64{n.X, n.Y, 1}[axis]; math.Abs(x) > 1-1e-6 {
			return ""
		}
	}
	if !polygon {
		return ""
	}
	return " over the corners"
}

// CheckCavity is Cavity as an error.
func CheckCavity(p *box.Plan, width, depth, height box.MM) error {
	if p == nil {
		return errNoPlan
	}
	w, d, h := p.Inside()
	return cavity(p.Pieces(), [3]box.MM{w, d, h}, [3]box.MM{width, depth, height})
}

// cavity compares the size that the plan says with the one wanted, and with the
// parts.
func cavity(pieces []box.Piece, says, want [3]box.MM) error {
	var errs []error
	bad := func(format string, args ...any) { errs = append(errs, fmt.Errorf(format, args...)) }
	same := func(a, b float64) bool { return math.Abs(a-b) <= 1e-6 }
	for k, what := range [3]string{"wide", "deep", "high"} {
		if got, want := float64(says[k]), float64(want[k]); !same(got, want) {
			bad("the cavity is %s %s%s, want %s", number(got, 6), what, overCorners(pieces, k), number(want, 6))
		}
	}
	w, d, h := says[0], says[1], says[2]
	// Measured on the parts, within a room that is larger every way.
	room := 2*float64(w+d) + 1
	hs := []solid.Plane{
		solid.NewPlane(solid.Vec{Z: -1}, 0), solid.NewPlane(solid.Vec{Z: 1}, float64(h)),
		solid.NewPlane(solid.Vec{X: -1}, room), solid.NewPlane(solid.Vec{X: 1}, room),
		solid.NewPlane(solid.Vec{Y: -1}, room), solid.NewPlane(solid.Vec{Y: 1}, room),
	}
	for i := range pieces {
		if q := &pieces[i]; covers(q) && math.Abs(inner(q).N.Z) < 1-1e-9 { // level ones are z = 0 and z = h
			hs = append(hs, inner(q))
		}
	}
	inside := solid.Intersect(hs)
	open := inside.Empty()
	for k := 2; k < 6; k++ {
		_, reached := inside.FaceOf(k)
		open = open || reached
	}
	if floor, ok := inside.FaceOf(0); ok && !open {
		lo, hi := solid.Convex{Faces: []solid.Face{floor}}.Bounds()
		if !same(hi.X-lo.X, float64(w)) || !same(hi.Y-lo.Y, float64(d)) {
			bad("the parts leave %s x %s at the floor, and the plan says %s x %s", number(hi.X-lo.X, 6), number(hi.Y-lo.Y, 6), number(float64(w), 6), number(float64(d), 6))
		}
	}
	for i := range pieces {
		q := &pieces[i]
		if !covers(q) || inside.Empty() {
			continue
		}
		if v := solid.Overlap(q.Body, solid.Body{Base: hs}); !(v <= crumb) {
			bad("%s reaches into the cavity: %.4f mm3", q.Part, v)
		}
	}
	return errors.Join(errs...)
}
