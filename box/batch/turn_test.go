package batch

import (
	"math"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// Turning over twice gives every panel back; once, the faces change places, the
// edges lie on the face that is then up, and no work changes its place in the
// wood.
func TestTurnOver(t *testing.T) {
	bevelled := 0
	for k := range 3 {
		for _, q := range kind(t, k).Pieces() {
			p := q.Panel
			o := TurnOver(p)
			b := TurnOver(o)
			if o.Face == p.Face || b.Face != p.Face || b.Thickness != p.Thickness || len(b.Ops) != len(p.Ops) || len(o.Edges) != len(p.Edges) {
				t.Fatalf("%s: %+v", q.Part, b)
			}
			same(t, o.Machined, p.Far.Transform(outline.MirrorX()))
			same(t, b.Machined, p.Machined)
			same(t, b.Far, p.Far)
			same(t, b.Silhouette, p.Silhouette)
			if math.Abs(b.Grain[0]-p.Grain[0])+math.Abs(b.Grain[1]-p.Grain[1]) > 0 || o.Grain[0] != -p.Grain[0] {
				t.Errorf("%s: grain %v, %v", q.Part, o.Grain, b.Grain)
			}
			for i := range p.Ops {
				x, y, z := p.Ops[i], b.Ops[i], o.Ops[i]
				if x.Side != y.Side || math.Abs(float64(x.From-y.From)) > 1e-9 || math.Abs(float64(x.To-y.To)) > 1e-9 || len(x.Strokes) != len(y.Strokes) {
					t.Errorf("%s: %+v became %+v", q.Part, x, y)
				}
				// A place of depth d below the one face lies t - d below the other.
				if math.Abs(float64(x.From+z.To-p.Thickness)) > 1e-9 || x.Side == box.SideMachined && z.Side != box.SideFar {
					t.Errorf("%s: %+v, turned over %+v", q.Part, x, z)
				}
				if x.Region != nil {
					same(t, y.Region, x.Region)
				}
			}
			for i, e := range o.Edges {
				// Notches take corners and stretches away, so an edge's own line is asked:
				// the face lies to its left and comes to within its ends.
				if e.Bevel != 0 {
					bevelled++
				}
				mid := outline.Point{X: (e.From.X + e.To.X) / 2, Y: (e.From.Y + e.To.Y) / 2}
				if d := o.Machined.Distance(mid); d > 1e-6 && len(p.Ops) == 0 {
					t.Errorf("%s, edge %d: %v from the face", q.Part, i, d)
				}
				f := p.Edges[len(p.Edges)-1-i]
				if e.Neighbour != f.Neighbour || e.Bevel != -f.Bevel {
					t.Errorf("%s, edge %d: %+v, was %+v", q.Part, i, e, f)
				}
				g := b.Edges[len(b.Edges)-1-i]
				if math.Hypot(g.From.X-f.From.X, g.From.Y-f.From.Y) > 1e-9 || math.Hypot(g.To.X-f.To.X, g.To.Y-f.To.Y) > 1e-9 {
					t.Errorf("%s, edge %d: %v to %v, was %v to %v", q.Part, i, g.From, g.To, f.From, f.To)
				}
			}
		}
	}
	if bevelled < 4 {
		t.Errorf("%d bevelled edges are no proof", bevelled)
	}
}

// By hand: an upper edge of 100 at v = 50 that runs back by 10: on the far face it
// lies at 40, and the sides beside it are square, so it keeps its length.
func TestTurnEdges(t *testing.T) {
	at := func(x, y float64) outline.Point { return outline.Point{X: x, Y: y} }
	p := box.Panel{Thickness: 20, Edges: []box.PanelEdge{
		{From: at(0, 0), To: at(100, 0), Length: 100},
		{From: at(100, 0), To: at(100, 50), Length: 50},
		{From: at(100, 50), To: at(0, 50), Length: 100, Bevel: 26.565, Run: 10},
		{From: at(0, 50), To: at(0, 0), Length: 50},
	}}
	e := TurnOver(p).Edges
	want := []box.PanelEdge{
		{From: at(0, 0), To: at(0, 40), Length: 40},
		{From: at(0, 40), To: at(-100, 40), Length: 100, Bevel: -26.565, Run: -10},
		{From: at(-100, 40), To: at(-100, 0), Length: 40},
		{From: at(-100, 0), To: at(0, 0), Length: 100},
	}
	for i, w := range want {
		if e[i] != w {
			t.Errorf("edge %d: %+v, want %+v", i, e[i], w)
		}
	}
}

// And a right edge at u = 100 whose machined face falls short by 5: it lies at
// 105 on the far face, -105 mirrored.
func TestTurnUprightEdge(t *testing.T) {
	at := func(x, y float64) outline.Point { return outline.Point{X: x, Y: y} }
	p := box.Panel{Thickness: 10, Edges: []box.PanelEdge{{From: at(100, 0), To: at(100, 50), Length: 50, Bevel: -26.565, Run: -5, Neighbour: box.Right}}}
	want := box.PanelEdge{From: at(-105, 50), To: at(-105, 0), Length: 50, Bevel: 26.565, Run: 5, Neighbour: box.Right}
	if e := TurnOver(p).Edges[0]; e != want {
		t.Errorf("%+v, want %+v", e, want)
	}
}
