package solid

import (
	"errors"
	"math"
	"testing"

	"holt.example/box/outline"
)

func mustMesh(t *testing.T, b Body, chord float64) *Mesh {
	t.Helper()
	m, err := b.Mesh(chord)
	if err != nil {
		t.Fatalf("Mesh: %v", err)
	}
	if err := m.Check(); err != nil {
		t.Fatalf("Check: %v", err)
	}
	return m
}

// through is a through hole square to z.
func through(c outline.Contour) Prism {
	return Prism{World(), c, math.Inf(-1), math.Inf(1)}
}

func pocket(c outline.Contour, top, depth float64) Prism {
	f := World()
	f.O.Z = top
	return Prism{f, c, -depth, math.Inf(1)}
}

func TestMeshBoardWithHole(t *testing.T) {
	b := Body{Base: cuboid(0, 0, 0, 200, 150, 15)}
	m := mustMesh(t, b, 0.01)
	if len(m.Triangles) != 12 || len(m.Vertices) != 8 {
		t.Errorf("cuboid: %d triangles, %d corners", len(m.Triangles), len(m.Vertices))
	}
	near(t, "volume", m.Volume(), 200*150*15, 1e-9)
	for _, chord := range []float64{0.1, 0.05, 0.01, 0.001} {
		n := outline.CircleSteps(16, chord)
		b.Prisms = []Prism{through(outline.Circle(outline.Point{X: 90, Y: 70}, 32))}
		m := mustMesh(t, b, chord)
		if len(m.Triangles) != 4*(4+n) {
			t.Errorf("%d-gon hole: %d triangles, want 4(4+%d)", n, len(m.Triangles), n)
		}
		// The area of the circle is kept whatever the chord.
		near(t, "volume", m.Volume(), (200*150-math.Pi*256)*15, 1e-9*450000)
		if g := m.Genus(); g != 1 {
			t.Errorf("genus %d", g)
		}
	}
}

func TestMeshRandomBodies(t *testing.T) {
	r := random(11)
	for i := 0; i < 400; i++ {
		b := randomBody(r)
		if i%2 == 1 {
			b = turned(b, anyFrame(r))
		}
		want := VolumeOf(b.Pieces())
		m, err := b.Mesh(0.01)
		if err != nil {
			if want < 1 && errors.Is(err, ErrEmpty) {
				continue
			}
			t.Errorf("body %d: %v", i, err)
			continue
		}
		if err := m.Check(); err != nil {
			t.Errorf("body %d: %v", i, err)
			continue
		}
		near(t, "volume", m.Volume(), want, 1e-9*want)
	}
}
