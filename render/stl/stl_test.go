package stl

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/render/internal/sample"
)

func mustWrite(t *testing.T, plan *box.Plan, part box.Part, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	if part == "" {
		err = Write(&b, plan, o)
	} else {
		err = WritePart(&b, plan, part, o)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// readText is a text file as this test understands it: facets by solid.
func readText(t *testing.T, b []byte) (names []string, solids [][]facet) {
	t.Helper()
	w := func(line string, at, n int) solid.Vec {
		f := strings.Split(line, " ")
		if len(f) != n+3 {
			t.Fatalf("%q: want %d numbers", line, 3)
		}
		var x [3]float64
		for i := range x {
			v, err := strconv.ParseFloat(f[at+i], 64)
			_, d, _ := strings.Cut(f[at+i], ".")
			if err != nil || strings.ContainsAny(f[at+i], "eEnN") || f[at+i] == "-0" || len(d) > 4 {
				t.Fatalf("%q: %q is no plain number", line, f[at+i])
			}
			x[i] = v
		}
		return solid.Vec{X: x[0], Y: x[1], Z: x[2]}
	}
	lines := strings.Split(string(b), "\n")
	for i := 0; i < len(lines)-1; i++ {
		l := lines[i]
		switch {
		case strings.HasPrefix(l, "solid "):
			names = append(names, l[6:])
			solids = append(solids, nil)
		case strings.HasPrefix(l, "facet normal "):
			if lines[i+1] != "outer loop" || lines[i+5] != "endloop" || lines[i+6] != "endfacet" {
				t.Fatalf("line %d: %q", i, lines[i:i+7])
			}
			f := facet{w(l, 2, 2), w(lines[i+2], 1, 1), w(lines[i+3], 1, 1), w(lines[i+4], 1, 1)}
			solids[len(solids)-1] = append(solids[len(solids)-1], f)
			i += 6
		case l == "endsolid "+names[len(names)-1]:
		default:
			t.Fatalf("line %d: %q", i, l)
		}
	}
	return names, solids
}

// Each part of each sample is a closed surface, in binary and in text, with
// the volume of its mesh to the rounding; the assembly is all of them one
// after the other.
func TestPlans(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		var together []byte
		names, texts := readText(t, mustWrite(t, plan, "", Options{ASCII: true}))
		for i, p := range plan.Pieces() {
			b := mustWrite(t, plan, p.Part, Options{})
			fs := read(t, b)
			checkFacets(t, fs)
			together = append(together, b[84:]...)
			v, surface := volume(fs)
			m, err := plan.Mesh(p.Part)
			if err != nil {
				t.Fatal(err)
			}
			var exact []facet
			for _, k := range m.Triangles {
				exact = append(exact, facet{a: m.Vertices[k[0]], b: m.Vertices[k[1]], c: m.Vertices[k[2]]})
			}
			want, _ := volume(exact)
			// Coordinates below 512: half a step of single precision is 1.6e-5.
			if math.Abs(v-want) > 1.6e-5*math.Sqrt(3)*surface || math.Abs(v-want) > 1e-6*want {
				t.Errorf("%s, %s: volume %v, want %v", plan.Name(), p.Part, v, want)
			}
			// The mesh has the volume of the true shape: arcs are flattened
			// area-true.
			if math.Abs(v-p.Volume) > 1e-6*p.Volume {
				t.Errorf("%s, %s: volume %v, the plan says %v", plan.Name(), p.Part, v, p.Volume)
			}
			checkFacets(t, texts[i])
			if tv, _ := volume(texts[i]); names[i] != string(p.Part) || math.Abs(tv-want) > 5e-5*math.Sqrt(3)*surface {
				t.Errorf("text of %s: name %q, volume %v, want %v", p.Part, names[i], tv, want)
			}
		}
		b := mustWrite(t, plan, "", Options{})
		if !bytes.Equal(b[84:], together) {
			t.Errorf("%s: the assembly is not its parts", plan.Name())
		}
		if h := string(bytes.TrimRight(b[:80], "\x00")); !strings.HasPrefix(h, "mm, holt: "+plan.Name()[:5]) {
			t.Errorf("header %q", h)
		}
	}
}

// Flat: the machined face of every part is at z = 0 and the far one a
// thickness below; x and y span the silhouette.
func TestFlat(t *testing.T) {
	for _, plan := range sample.Plans(t) {
		for _, p := range plan.Pieces() {
			fs := read(t, mustWrite(t, plan, p.Part, Options{Flat: true}))
			checkFacets(t, fs)
			lo, hi := solid.Vec{X: 1e9, Y: 1e9, Z: 1e9}, solid.Vec{X: -1e9, Y: -1e9, Z: -1e9}
			for _, f := range fs {
				for _, q := range []solid.Vec{f.a, f.b, f.c} {
					lo = solid.Vec{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
					hi = solid.Vec{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
				}
			}
			e := p.Panel.Silhouette.Extents()
			for _, c := range [][2]float64{
				{lo.X, e.Min.X}, {lo.Y, e.Min.Y}, {lo.Z, -float64(p.Thickness)}, {hi.X, e.Max.X}, {hi.Y, e.Max.Y}, {hi.Z, 0},
			} {
				// Facets of round edges may stand 0.01 off them.
				if math.Abs(c[0]-c[1]) > 0.01 || len(p.Panel.Edges) > 0 && math.Abs(c[0]-c[1]) > 1e-4 {
					t.Errorf("%s, %s: spans %v to %v, the silhouette %v", plan.Name(), p.Part, lo, hi, e)
					break
				}
			}
		}
	}
}

// An open box shows its parts where their poses put them.
func TestPose(t *testing.T) {
	m := plank()
	p := box.Piece{Home: solid.World(), Pose: solid.Frame{
		O: solid.Vec{Z: 100}, U: solid.Vec{Y: 1}, V: solid.Vec{X: -1}, W: solid.Vec{Z: 1},
	}}
	got := place(m, p, Options{})
	// x goes to y and y to -x, 100 up.
	if got.Vertices[7] != (solid.Vec{X: -240, Y: 60, Z: 114.6}) {
		t.Errorf("the corner 60, 240, 14.6 went to %v", got.Vertices[7])
	}
	if m.Vertices[7] != (solid.Vec{X: 60, Y: 240, Z: 14.6}) {
		t.Error("the mesh itself was changed")
	}
	if q := place(m, p, Options{Flat: true}); q != m {
		t.Error("a part whose panel is the world was moved")
	}
}

func TestNames(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"front", "front"},
		{"ø\n<a>", `\u00f8\n<a>`},
		{"it's \\ \"x\"", `it's \\ "x"`},
		{"\xff", `\ufffd`},
	} {
		if got := name(c.in, 70); got != c.want {
			t.Errorf("%q: %q, want %q", c.in, got, c.want)
		}
	}
	for _, n := range []string{"solid", strings.Repeat("ø", 10_000), "a\r\nendsolid a", "\x00", "", "😀"} {
		var b, x bytes.Buffer
		s := []Solid{{n, plank()}}
		if err := Encode(&b, n, s, Options{}); err != nil {
			t.Fatal(err)
		}
		if h := b.Bytes()[:80]; !bytes.HasPrefix(h, []byte("mm, ")) || len(read(t, b.Bytes())) != 12 {
			t.Errorf("%.20q: header %q", n, h)
		}
		if err := Encode(&x, n, s, Options{ASCII: true}); err != nil {
			t.Fatal(err)
		}
		if names, solids := readText(t, x.Bytes()); len(names) != 1 || len(names[0]) > 70 || len(solids[0]) != 12 {
			t.Errorf("%.20q: %q, %d triangles", n, names, len(solids[0]))
		}
	}
}

func FuzzName(f *testing.F) {
	f.Add("front", 70)
	f.Add("\u202E\xff\n'\"", 5)
	f.Fuzz(func(t *testing.T, s string, most int) {
		if most < 0 || most > 1000 {
			return
		}
		n := name(s, most)
		if len(n) > most {
			t.Fatalf("%d bytes, want %d at most", len(n), most)
		}
		for _, c := range []byte(n) {
			if c < 0x20 || c > 0x7E {
				t.Fatalf("%q has the byte %#x", n, c)
			}
		}
	})
}

// failing takes n bytes.
type failing struct{ n int }

var errFull = errors.New("full")

func (f *failing) Write(b []byte) (int, error) {
	if len(b) > f.n {
		n := f.n
		f.n = 0
		return n, errFull
	}
	f.n -= len(b)
	return len(b), nil
}

func TestFailingWriter(t *testing.T) {
	s := []Solid{{"plank", plank()}}
	for _, o := range []Options{{}, {ASCII: true}} {
		var b bytes.Buffer
		if err := Encode(&b, "plank", s, o); err != nil {
			t.Fatal(err)
		}
		for n := range b.Len() {
			if err := Encode(&failing{n}, "plank", s, o); !errors.Is(err, errFull) {
				t.Fatalf("after %d of %d bytes: %v", n, b.Len(), err)
			}
		}
		if err := Encode(&failing{b.Len()}, "plank", s, o); err != nil {
			t.Errorf("room for all: %v", err)
		}
	}
}

func TestErrors(t *testing.T) {
	plan, err := sample.Orchard().Resolve()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	var p box.Problem
	if err := WritePart(&b, plan, "attic", Options{}); !errors.As(err, &p) || p.Code != "unknown-part" {
		t.Errorf("unknown part: %v", err)
	}
	for what, err := range map[string]error{
		"no plan":    Write(&b, nil, Options{}),
		"no plan 2":  WritePart(&b, nil, "front", Options{}),
		"flat":       Write(&b, plan, Options{Flat: true}),
		"nothing":    Encode(&b, "x", nil, Options{}),
		"no mesh":    Encode(&b, "x", []Solid{{"a", nil}}, Options{}),
		"empty mesh": Encode(&b, "x", []Solid{{"a", &solid.Mesh{}}}, Options{ASCII: true}),
	} {
		if err == nil {
			t.Errorf("%s is taken", what)
		}
	}
	if b.Len() > 0 {
		t.Errorf("%d bytes were written before the error", b.Len())
	}
}

func TestSameBytes(t *testing.T) {
	var was []byte
	for range 3 {
		plan, err := sample.Hip().Resolve()
		if err != nil {
			t.Fatal(err)
		}
		b := mustWrite(t, plan, "", Options{})
		if was != nil && !bytes.Equal(was, b) {
			t.Error("other bytes")
		}
		was = b
	}
}

// A triangle is 50 bytes, and the count says how many there are.
func TestCount(t *testing.T) {
	var b bytes.Buffer
	if err := Encode(&b, "two", []Solid{{"a", plank()}, {"b", plank()}}, Options{}); err != nil {
		t.Fatal(err)
	}
	if n := binary.LittleEndian.Uint32(b.Bytes()[80:]); n != 24 || b.Len() != 84+50*24 {
		t.Errorf("%d triangles in %d bytes", n, b.Len())
	}
}
