package sample

import (
	"testing"

	"holt.example/box"
)

// The boxes must go on having what the tests of the writers rely on.
func TestPlansCover(t *testing.T) {
	kinds := map[box.OpKind]int{}
	sides := map[box.OpSide]int{}
	bevels, bottoms, second, inOutline := 0, 0, 0, 0
	for _, p := range Plans(t) {
		for _, q := range p.Pieces() {
			if q.Panel.SecondFace {
				second++
			}
			for _, e := range q.Panel.Edges {
				if e.Bevel != 0 {
					bevels++
				}
			}
			for _, o := range q.Panel.Ops {
				kinds[o.Kind]++
				sides[o.Side]++
				if o.Bottom != nil {
					bottoms++
				}
				if o.InOutline {
					inOutline++
				}
			}
		}
	}
	t.Log(kinds, sides, bevels, bottoms, second, inOutline)
	for _, k := range []box.OpKind{box.OpBore, box.OpOpening, box.OpPocket, box.OpRebate, box.OpHousing, box.OpNotch} {
		if kinds[k] == 0 {
			t.Errorf("no %s", k)
		}
	}
	for _, s := range []box.OpSide{box.SideMachined, box.SideFar, box.SideThrough} {
		if sides[s] == 0 {
			t.Errorf("no work on the side %s", s)
		}
	}
	if bevels == 0 || bottoms == 0 || second == 0 || inOutline == 0 {
		t.Errorf("%d bevels, %d bottoms, %d parts worked on both faces, %d notches in outlines", bevels, bottoms, second, inOutline)
	}
}
