package boxtest

import (
	"errors"
	"fmt"

	"holt.example/box"
)

// T is a test; *testing.T is one. Resolve also calls FailNow if there is one.
type T interface {
	Helper()
	Errorf(format string, args ...any)
}

var errNoPlan = errors.New("there is no plan")

// report passes an error on to the test, a line for each that is joined in it.
func report(t T, p *box.Plan, err error) {
	t.Helper()
	if err == nil {
		return
	}
	name := ""
	if p != nil {
		name = p.Name() + ": "
	}
	t.Errorf("%s%v", name, err)
}

// Resolve makes the plan of a design. If there are problems it reports every one
// and ends the test there with its FailNow. Where T has none it returns nil, and the
// other assertions then report that there is no plan.
func Resolve(t T, d box.Design) *box.Plan {
	t.Helper()
	p, err := d.Resolve()
	if err != nil {
		t.Errorf("%s cannot be made:\n%v", d.Name, err)
		if t, ok := t.(interface{ FailNow() }); ok {
			t.FailNow() // or the next line of the test panics on a nil plan
		}
		return nil
	}
	return p
}

// Sound asserts all that holds of any plan: Fits, Outlines, Meshes and
// GoesTogether.
func Sound(t T, p *box.Plan) {
	t.Helper()
	report(t, p, CheckSound(p))
}

// CheckSound is Sound as an error.
func CheckSound(p *box.Plan) error {
	if p == nil {
		return errNoPlan
	}
	return errors.Join(CheckFits(p), CheckOutlines(p), CheckMeshes(p), CheckGoesTogether(p))
}

// GoesTogether asserts that every part goes home by one straight move, alone or
// with others.
func GoesTogether(t T, p *box.Plan) {
	t.Helper()
	report(t, p, CheckGoesTogether(p))
}

// CheckGoesTogether is GoesTogether as an error: the Problems of
// box.Plan.Assembly, wrapped.
func CheckGoesTogether(p *box.Plan) error {
	if p == nil {
		return errNoPlan
	}
	if _, err := p.Assembly(); err != nil {
		return fmt.Errorf("it does not go together: %w", err)
	}
	return nil
}
