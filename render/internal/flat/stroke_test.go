package flat

import (
	"math"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
)

// A stroke is drawn once whichever way round it comes, a straight one as a line,
// one that closes as a contour or a circle; on the far face it is mirrored.
func TestStrokes(t *testing.T) {
	face := outline.Region{outline.Rectangle(-60, 0, 60, 100)}
	bent := outline.Path{{X: 10, Y: 10, Bulge: 0.3}, {X: 30, Y: 20}, {X: 40, Y: 20}}
	line := outline.Line(outline.Point{X: -10, Y: 5}, outline.Point{X: -30, Y: 5})
	op := box.Op{Kind: box.OpEngrave, Side: box.SideMachined, To: 2, Width: 3, Tool: box.Tool{VAngle: 60},
		Strokes: []outline.Path{bent, bent.Reverse(), line, line.Reverse(), outline.Circle(outline.Point{Y: 50}, 20).Path(), outline.Rectangle(0, 70, 20, 80).Path()}}
	far := op
	far.Side, far.From, far.To = box.SideFar, 13, 15
	m, turned, err := views(box.Panel{Thickness: 15, Machined: face, Far: face, Silhouette: face, Ops: []box.Op{op, far}})
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range []view{m, turned} {
		count := map[Shape]int{}
		for _, it := range v.items {
			if it.Layer.Kind != Engrave {
				continue
			}
			count[it.Shape]++
			if want := [...]string{"ENGRAVE_2.0", "TURNED_ENGRAVE_2.0"}[i]; it.Layer.Name() != want {
				t.Errorf("layer %s, want %s", it.Layer.Name(), want)
			}
			if x := it.extents(); it.Shape == Open && math.Abs(x.Max.X-[...]float64{40, -10}[i]) > 1e-9 {
				t.Errorf("the bent stroke reaches from %v to %v", x.Min.X, x.Max.X)
			}
		}
		if count[Open] != 1 || count[Line] != 1 || count[Disc] != 1 || count[Closed] != 1 {
			t.Errorf("view %d: %v", i, count)
		}
	}
	op.Strokes = []outline.Path{{{X: math.NaN()}, {X: 1}}}
	if _, _, err := views(box.Panel{Thickness: 15, Machined: face, Ops: []box.Op{op}}); err == nil {
		t.Error("a stroke that is no number is drawn")
	}
}
