package box_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/boxtest"
	"holt.example/box/outline"
	"holt.example/joints"
)

// Each joint between strips has its sample: two strips that show 80 (four times
// the thickness of 20) and are 60 long.
func TestTestPiecesOfStrips(t *testing.T) {
	d := box.Design{Name: "strips", Board: box.Board{Thickness: 20, Width: 120},
		Size: box.Cavity{Width: 300, Depth: 260, Height: 220}, Floor: box.FloorUnder{}, Roof: box.Flat{},
		MadeUp: []box.MadeUp{
			{Of: box.Front, Joint: box.TongueGroove{Tongue: 8}}, {Of: box.Back, Joint: &box.TongueGroove{Tongue: 8}},
			{Of: box.Left, Joint: box.LooseTongue{Width: 18}}, {Of: box.Right, Joint: box.Shiplap{Lap: 12}}, {Of: box.Roof},
		}}
	p := testPieces(t, d, 0, 0.3)
	require.NoError(t, boxtest.CheckMeshes(p))
	require.NoError(t, boxtest.CheckOutlines(p))
	var whole []string
	for _, w := range p.Wholes() {
		whole = append(whole, strings.TrimPrefix(string(w.Part), "free/"))
		assert.Len(t, w.Strips, 2)
		assert.InDelta(t, 80, float64(w.Cover), 1e-6)
	}
	// The back has the front's joint, so there are four of each clearance or one;
	// the samples of butts at the corners come first.
	n := 0
	for _, q := range p.Pieces() {
		if q.Of == "" {
			var k int
			_, err := fmt.Sscanf(string(q.Part), "free/%d", &k)
			require.NoError(t, err)
			n = max(n, k)
		}
	}
	assert.Equal(t, []string{
		fmt.Sprint(n+1, " tongue and groove 0 front"), fmt.Sprint(n+1, " tongue and groove 0.3 front"),
		fmt.Sprint(n+2, " shiplap right"), // the next in the ring
		fmt.Sprint(n+3, " loose tongue 0 left"), fmt.Sprint(n+3, " loose tongue 0.3 left"),
		fmt.Sprint(n+4, " edge-glued roof"),
	}, whole)
	// A tongue is a third of 20, to half a millimetre: 6.5 thick and 8 long, its
	// groove 6.5 + c thick and 8 + c deep. So the strips hold 80 x 20 x 60 each,
	// the first its tongue besides, and the second less the groove.
	for _, c := range []float64{0, 0.3} {
		name := fmt.Sprintf("free/%d tongue and groove %v front", n+1, c)
		a, b := piece(t, p, box.Part(name+"/1")), piece(t, p, box.Part(name+"/2"))
		assert.InDelta(t, 80*20*60+6.5*8*60, a.Volume, 0.1)
		assert.InDelta(t, 80*20*60-(6.5+c)*(8+c)*60, b.Volume, 0.1)
		assert.InDelta(t, 60, float64(a.Length), 1e-6)
	}
	// The groove for half a loose tongue of 18: 9 + c deep. It is 6 thick, which is what
	// housings 6.5 deep leave of 20, with 0.5 on either side.
	for _, c := range []float64{0, 0.3} {
		name := fmt.Sprintf("free/%d loose tongue %v left", n+3, c)
		a := piece(t, p, box.Part(name+"/1"))
		assert.InDelta(t, 80*20*60-(6+c)*(9+c)*60, a.Volume, 0.1)
		tongue := piece(t, p, box.Part(name+"/tongue/1"))
		assert.InDelta(t, 6*18*60, tongue.Volume, 1e-6)
	}
	a, err := p.Assembly()
	assert.NoError(t, err)
	assert.NotEmpty(t, a.Steps)
}

// Every joint that a design has gives its sample, those of inner parts, floors and
// what slides too.
func TestEveryJointHasASample(t *testing.T) {
	d := box.Design{Name: "all", Board: thick(18), Size: box.Cavity{Width: 300, Depth: 260, Height: 220},
		Corners: box.Corners{Joint: joints.Comb{Fingers: 7}},
		Floor:   box.FloorBetween{Raise: 20, Joint: joints.Housing{Dry: true}}, Roof: box.Gable{Pitch: 40, Ridge: joints.Mitre{}, Over: box.Overhangs{All: 20}},
		Joints: []box.Between{{Over: box.Back, Under: box.Left, Joint: joints.Rebate{}}},
		Inner:  []box.Inner{box.Shelf{Name: "s", Above: 80, Joint: joints.Housing{Depth: 4}}},
		MadeUp: []box.MadeUp{{Of: box.RoofLeft, Joint: box.Shiplap{Lap: 10}, Width: 110}}}
	p := testPieces(t, d)
	want := map[string]bool{}
	full := resolve(t, d)
	for _, m := range full.Seams() {
		want[m.Joint] = true
	}
	got := map[string]bool{}
	for _, m := range p.Seams() {
		got[m.Joint] = true
	}
	assert.Equal(t, want, got)
	assert.Len(t, want, 6, "%v", want) // comb, housing, rebate, butt, mitre, shiplap
}

// The marks tell the clearances apart: each host carries its own lines, which lie
// wholly on it and clear of the joint; very thin boards have none.
func TestMarksOfTestPieces(t *testing.T) {
	p := testPieces(t, orchard)
	lines := map[string]string{}
	marked := 0
	for _, q := range p.Pieces() {
		for _, o := range q.Panel.Ops {
			if o.Kind != box.OpEngrave {
				continue
			}
			marked++
			key := fmt.Sprint(o.Strokes)
			assert.Empty(t, lines[key], "%s has the marks of another", q.Part)
			lines[key] = string(q.Part)
			assert.InDelta(t, 0.6, float64(o.Width), 1e-9) // a tenth of 6
			for _, s := range o.Strokes {
				for _, v := range s {
					assert.Equal(t, outline.Inside, q.Panel.Machined[0].Contains(v.At(), 0))
					assert.Greater(t, q.Panel.Machined[0].Distance(v.At()), 2.0)
				}
			}
		}
	}
	assert.Equal(t, 3+5, marked, "one offcut of each sample") // rebates at three clearances, five butts
	thin := orchard.With(func(d *box.Design) { d.Board = thick(2.5); d.Corners.Joint = joints.Butt{} })
	for _, q := range testPieces(t, thin).Pieces() {
		assert.Empty(t, q.Panel.Ops)
	}
}
