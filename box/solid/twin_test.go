package solid

import (
	"testing"

	"holt.example/box/outline"
)

// TestMeshTwinFaces: the two faces of a board with through holes are the same
// triangles seen from both sides; one pocket, and they are not.
func TestMeshTwinFaces(t *testing.T) {
	for axis := range 3 {
		// The plate lies square to x, y or z.
		turn := func(v Vec) Vec {
			for range axis {
				v = Vec{v.Z, v.X, v.Y}
			}
			return v
		}
		f := Frame{turn(Vec{}), turn(Vec{1, 0, 0}), turn(Vec{0, 1, 0}), turn(Vec{0, 0, 1})}
		b := turned(holes(36, 16), f)
		m := mustMesh(t, b, 0.05)
		onePerCorner(t, m)
		if m.Genus() != 36 {
			t.Errorf("%d holes", m.Genus())
		}
		type flat [3][2]float64
		faces := [2]map[flat]bool{{}, {}}
		for i, k := range m.Triangles {
			up := f.In(m.Surfaces[m.Surface[i]].N).Z
			if up < 0.5 && up > -0.5 {
				continue
			}
			side := 0
			if up > 0 {
				side = 1
				k[1], k[2] = k[2], k[1]
			}
			var c flat
			low := 0
			for j, v := range k {
				p := f.In(m.Vertices[v])
				c[j] = [2]float64{p.X, p.Y}
				if q := c[low]; c[j][0] < q[0] || c[j][0] == q[0] && c[j][1] < q[1] {
					low = j
				}
			}
			faces[side][flat{c[low], c[(low+1)%3], c[(low+2)%3]}] = true
		}
		if len(faces[0]) == 0 || len(faces[0]) != len(faces[1]) {
			t.Errorf("axis %d: %d and %d triangles", axis, len(faces[0]), len(faces[1]))
		}
		for c := range faces[0] {
			if !faces[1][c] {
				t.Fatalf("axis %d: %v is not in the other face", axis, c)
			}
		}
		b.Prisms = append(b.Prisms, Prism{f, circleAt(30, 30, 5), 5, 99})
		n := mustMesh(t, b, 0.05)
		onePerCorner(t, n)
		near(t, "pocket", m.Volume()-n.Volume(), 10*outline.Circle(outline.Point{}, 5).Area(), 1e-6)
	}
}
