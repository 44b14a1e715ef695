package joints_test

import (
	"testing"

	"holt.example/joints"
)

// Every joint of this package, those of made-up parts, and one's own, in a sentence.
func TestSaid(t *testing.T) {
	for name, want := range map[string]string{
		"butt": "a butt joint", "rebate": "a rebate joint", "housing": "a housing joint", "mitre": "a mitre joint", "comb": "a comb joint",
		"edge-glued": "an edge-glued joint", "loose tongue": "a loose tongue joint", "tongue and groove": "a tongue and groove joint",
		"shiplap": "a shiplap joint", "dovetail joint": "a dovetail joint", "Joint": "a Joint", " open half-lap ": "an open half-lap joint", "": "a joint",
	} {
		if got := joints.Said(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	for _, j := range []joints.Joint{joints.Butt{}, joints.Rebate{}, joints.Housing{}, joints.Mitre{}, joints.Comb{}} {
		c := joints.Corner{TA: 15, TB: 15, Theta: 90, Length: 200, ReachA: 200, ReachB: 200}
		if _, ok := j.(joints.Housing); ok {
			c.RunOn = 20
		}
		s, err := j.Section(c)
		if err != nil {
			t.Errorf("%T: %v", j, err)
		} else if said := joints.Said(s.Name); said != "a "+s.Name+" joint" {
			t.Errorf("%T: %q", j, said)
		}
	}
}
