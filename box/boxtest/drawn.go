package boxtest

import (
	"errors"
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// Outlines asserts that every panel can be cut as drawn: contours that close,
// cross nothing and enclose something, the cut line and the far face within the
// silhouette, length and width those of the silhouette, every cut within the
// thickness and on the panel.
func Outlines(t T, p *box.Plan) {
	t.Helper()
	report(t, p, CheckOutlines(p))
}

// CheckOutlines is Outlines as an error.
func CheckOutlines(p *box.Plan) error {
	if p == nil {
		return errNoPlan
	}
	var errs []error
	for _, q := range p.Pieces() {
		for _, err := range outlinesOf(&q) {
			errs = append(errs, fmt.Errorf("%s: %w", q.Part, err))
		}
	}
	return errors.Join(errs...)
}

func outlinesOf(q *box.Piece) (errs []error) {
	bad := func(format string, args ...any) { errs = append(errs, fmt.Errorf(format, args...)) }
	pn := &q.Panel
	for _, x := range []struct {
		what string
		r    outline.Region
	}{{"cut line", pn.Machined}, {"far face", pn.Far}, {"silhouette", pn.Silhouette}} {
		if err := x.r.Check(); err != nil {
			bad("%s: %w", x.what, err)
			continue
		}
		if !(x.r.Area() > 0) {
			bad("%s: it encloses nothing", x.what)
		}
		if out, err := outline.Subtract(x.r, pn.Silhouette); err != nil || !(out.Area() <= 1e-3) {
			bad("%s: it reaches out of the silhouette by %.4f mm2 (%v)", x.what, out.Area(), err)
		}
	}
	e := pn.Silhouette.Extents()
	a, b := float64(q.Length), float64(q.Width)
	const close = 1e-6
	if !(math.Abs(math.Max(a, b)-math.Max(e.Width(), e.Height())) <= close && math.Abs(math.Min(a, b)-math.Min(e.Width(), e.Height())) <= close) {
		bad("it is %s x %s, and drawn %s x %s", number(a, 4), number(b, 4), number(e.Width(), 4), number(e.Height(), 4))
	}
	for i := range pn.Ops {
		o := &pn.Ops[i]
		if !o.InSolid { // a line to engrave encloses nothing
			continue
		}
		name := string(o.Kind) + " for " + o.Source
		if err := o.Region.Check(); err != nil {
			bad("%s: %w", name, err)
			continue
		}
		if !(o.From >= -close && o.To > o.From && float64(o.To) <= float64(pn.Thickness)+close) {
			bad("%s: it goes from %s to %s of %s", name, number(float64(o.From), 4), number(float64(o.To), 4), number(float64(pn.Thickness), 4))
		}
		b := o.Region.Extents()
		if b.Min.X > e.Max.X || b.Max.X < e.Min.X || b.Min.Y > e.Max.Y || b.Max.Y < e.Min.Y {
			bad("%s: it lies beside the panel", name)
		}
	}
	return errs
}

// Meshes asserts that every part is a closed solid, has the volume that the plan
// says, and is as thick as its panel.
func Meshes(t T, p *box.Plan) {
	t.Helper()
	report(t, p, CheckMeshes(p))
}

// CheckMeshes is Meshes as an error.
func CheckMeshes(p *box.Plan) error {
	if p == nil {
		return errNoPlan
	}
	var errs []error
	for _, q := range p.Pieces() {
		m, err := p.Mesh(q.Part)
		if err == nil {
			err = meshOf(&q, m)
		}
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", q.Part, err))
		}
	}
	return errors.Join(errs...)
}

func meshOf(q *box.Piece, m *solid.Mesh) error {
	if err := m.Check(); err != nil {
		return err
	}
	if v := m.Volume(); !(math.Abs(v-q.Volume) <= 1e-9*q.Volume+1e-3) {
		return fmt.Errorf("the mesh encloses %.4f mm3, and the plan says %.4f", v, q.Volume)
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range m.Vertices {
		w := q.Home.In(v).Z
		lo, hi = math.Min(lo, w), math.Max(hi, w)
	}
	if t := float64(q.Thickness); !(math.Abs(lo+t) <= 1e-4 && math.Abs(hi) <= 1e-4) {
		return fmt.Errorf("the solid lies from %s to %s over its machined face, and the panel is %s thick", number(lo, 4), number(hi, 4), number(t, 4))
	}
	return nil
}
