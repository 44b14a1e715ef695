package box_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
	"holt.example/box/boxtest/anybox"
	"holt.example/joints"
)

// Why is the left wall narrower than the box is deep, and by how much? The
// orchard box is 120 + 2 x 14.6 = 149.2 deep outside; the sides enter rebates
// of 7 in front and back, so they are 134 wide: 15.2 narrower, 7.6 at each.
func TestWhyTheLeftWallIsNarrower(t *testing.T) {
	p := resolve(t, orchard)
	for _, name := range []box.Part{box.Left, box.Right} {
		words := strings.Join(p.Explain(name), " ")
		assert.Contains(t, words, "134.0 wide")
		assert.Contains(t, words, "Outside, the box measures 149.2 here")
		assert.Contains(t, words, fmt.Sprintf("%s is 15.2 narrower", name))
		assert.Contains(t, words, "front takes 7.6")
		assert.Contains(t, words, "back takes 7.6")
		assert.Contains(t, words, "enters the rebate of front by 7: 7.0 added")
	}
	// The front is as wide as the box: it laps over both sides.
	words := strings.Join(p.Explain(box.Front), " ")
	assert.Contains(t, words, "as wide here as front: 149.2")
	assert.Contains(t, words, "laps over left by its thickness 14.6: 14.6 added")
	assert.NotContains(t, words, "narrower")
	// Four unlike boards: each end says its own share. 15 - 5 = 10 of the
	// front's, 20 - 5 = 15 of the back's.
	words = strings.Join(resolve(t, orchard.With(func(d *box.Design) {
		d.Walls, d.Corners.Joint = nil, joints.Rebate{Depth: 5}
		d.Boards = map[box.Part]box.Board{box.Front: thick(15), box.Back: thick(20)}
	})).Explain(box.Left), " ")
	for _, s := range []string{"Outside, the box measures 155.0 here", "left is 25.0 narrower", "front takes 10.0", "back takes 15.0", "130.0 wide"} {
		assert.Contains(t, words, s)
	}
}

// What every part says: its board, its cavity face, each edge with its joint
// and what was added, bevels, free ends.
func TestExplainSaysWhatABenchNeeds(t *testing.T) {
	p := resolve(t, orchard)
	for part, says := range map[box.Part][]string{
		// 435.0 long: 360.4 above the floor, 74.6 below. Sold as 15, measured 14.6.
		box.Back: {"435.0 long and 149.2 wide", "sold as 15 and measured 14.6", "grain up", "120.0 across and 265.5 up", "runs on above the roof", "runs on by 60"},
		// The floor lies with its grain side to side and ends at the walls.
		box.Floor: {"120.0 long and 120.0 wide", "grain side to side", "ends at the inner face of left: nothing added"},
		// The roof is bevelled 12 degrees at its plumb ends: 14.6 tan 12 = 3.1.
		box.Roof: {"181.6 long and 189.2 wide", "bevelled 12 degrees (3.1 over the thickness)", "runs on by 20"},
		// Front: bevelled top.
		box.Front: {"274.6 long", "bevelled 12 degrees (3.1 over the thickness)"},
	} {
		words := strings.Join(p.Explain(part), "\n")
		for _, s := range says {
			assert.Contains(t, words, s, "%s", part)
		}
	}
	// Each edge is a sentence that names its neighbour and its joint once.
	words := strings.Join(p.Explain(box.Left), "\n")
	assert.Contains(t, words, "\nIt enters the rebate of back by 7: 7.0 added.")
	assert.Contains(t, words, "\nWith a butt it ends at the inner face of roof: nothing added.")
	hexagon := resolve(t, box.Design{Name: "hexagon", Board: thick(12), Footprint: box.Regular{Sides: 6, Across: 160}, Size: box.Cavity{Height: 220},
		Corners: box.Corners{Joint: joints.Mitre{}}, Floor: box.NoFloor{}, Roof: box.NoRoof{}})
	assert.Contains(t, strings.Join(hexagon.Explain(box.WallN(1)), "\n"), "\nIt is mitred with wall/2 at 30 degrees: nothing added, bevelled 30 degrees (6.9 over the thickness).") // 12 tan 30
	assert.Equal(t, []string{`The plan has no part "lid"; it has front, back, left, right, floor, roof.`}, p.Explain("lid"))
	words = strings.Join(resolve(t, orchard.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Front, Open: true}}
		d.Features = nil
		d.Board = uneven
		d.Board.Material = "larch"
	})).Explain(box.Left), "\n")
	assert.Contains(t, words, "At its free end it ends at the open side.")
	assert.Contains(t, words, "larch sold as 15 and measured 14.3 to 14.9")
}

// In any box the words are whole sentences and their figures are the plan's.
func TestWordsAgreeWithThePlan(t *testing.T) {
	t.Parallel()
	narrower := regexp.MustCompile(`is ([0-9.]+) narrower`)
	first := regexp.MustCompile(`^\S+ is ([0-9.]+) long and ([0-9.]+) wide, cut from `)
	seen := 0
	someDesigns(300, 9, func(i int, k anybox.Kinds, d box.Design) {
		if i%2 == 0 {
			d.Walls = nil // upright
		}
		p, err := d.Resolve()
		if err != nil {
			return
		}
		_, deep, _ := p.Outside()
		for _, q := range p.Pieces() {
			lines := p.Explain(q.Part)
			if !assert.NotEmpty(t, lines, "%v: %s", k, q.Part) {
				continue
			}
			if m := first.FindStringSubmatch(lines[0]); assert.NotNil(t, m, lines[0]) {
				assert.Equal(t, fmt.Sprintf("%.1f %.1f", q.Length, q.Width), m[1]+" "+m[2], "%v: %s", k, q.Part)
			}
			for _, l := range lines {
				assert.Regexp(t, `^[a-zA-Z].*\.$`, l)
				assert.NotRegexp(t, `-0\b|e[+-][0-9]|NaN|Inf|%!`, l)
				if m := narrower.FindStringSubmatch(l); m != nil && q.Part == box.Left && len(d.Walls) == 0 {
					seen++
					assert.Equal(t, fmt.Sprintf("%.1f", deep-q.Width), m[1], "%v", k)
				}
			}
		}
	})
	assert.Greater(t, seen, 8)
}
