// Package outside runs readers written by others, for the tests of the files
// that the library writes. What they say is compared with the plan: a reader
// never decides alone.
//
// On a machine without one of them a test is skipped, and says so; with
// HOLT_STRICT set it fails.
package outside

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// python is Debian's own: another one first in the path may lack ezdxf.
const python = "/usr/bin/python3"

// missing skips the test, or fails it where everything must run.
func missing(t testing.TB, format string, args ...any) {
	t.Helper()
	if os.Getenv("HOLT_STRICT") != "" {
		t.Fatalf(format, args...)
	}
	t.Skipf(format, args...)
}

// Tool is the path of a program.
func Tool(t testing.TB, name string) string {
	t.Helper()
	p, err := exec.LookPath(name)
	if err != nil {
		missing(t, "outside reader %s is not installed", name)
	}
	return p
}

// root is the folder of the module.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test")
		}
		dir = up
	}
}

// reader is the path of a script of ours.
func reader(t testing.TB, name string) string {
	t.Helper()
	p := filepath.Join(root(t), ".ci", "readers", name)
	if _, err := os.Stat(p); err != nil {
		missing(t, "the script %s is not there: %v", name, err)
	}
	return p
}

// run returns what a program prints and fails the test if it fails.
func run(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	c := exec.Command(name, args...)
	var out, say bytes.Buffer
	c.Stdout, c.Stderr = &out, &say
	if err := c.Run(); err != nil {
		t.Fatalf("%s %q: %v\n%s", name, args, err, say.Bytes())
	}
	return out.Bytes()
}

// File puts bytes into a file of the test's own and returns its path.
func File(t testing.TB, name string, b []byte) string {
	t.Helper()
	p := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(p, b, 0o644); err != nil {
		t.Fatal(err)
	}
	return p
}

// DXF is what ezdxf finds in a drawing.
type DXF struct {
	Version            string
	Units, Measurement *int
	Min, Max           []float64
	Errors, Fixes      []string
	Layers             map[string]DXFLayer
	Other              map[string]int
}

// DXFLayer is what ezdxf finds on a layer. A circle is x, y and radius, a line
// its two ends.
type DXFLayer struct {
	Colour     int
	Line       string
	Undeclared bool
	Contours   []DXFContour
	Circles    [][3]float64
	Lines      [][4]float64
	Texts      []DXFText
}

// DXFContour is a polyline, a vertex x, y and bulge.
type DXFContour struct {
	Vertices     [][3]float64
	Closed       bool
	RepeatsFirst bool `json:"repeats_first"`
	Area, Length float64
	Box          [4]float64
}

// DXFText is a line of text.
type DXFText struct {
	Text          string
	At            [2]float64
	Height, Angle float64
	Middle        bool
}

// ReadDXF reads drawings with ezdxf.
func ReadDXF(t testing.TB, drawings ...[]byte) []DXF {
	t.Helper()
	ds := make([]DXF, len(drawings))
	for i, line := range DXFJSON(t, drawings...) {
		decode(t, line, &ds[i])
	}
	return ds
}

// DXFJSON is the same as the script prints it, one for each drawing.
func DXFJSON(t testing.TB, drawings ...[]byte) [][]byte {
	t.Helper()
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		missing(t, "outside reader ezdxf is not installed for %s: %v", python, err)
	}
	args := []string{reader(t, "dxf.py")}
	for _, b := range drawings {
		args = append(args, File(t, "drawing.dxf", b))
	}
	lines := bytes.Split(bytes.TrimSpace(run(t, python, args...)), []byte("\n"))
	if len(lines) != len(drawings) {
		t.Fatalf("%d drawings gave %d lines", len(drawings), len(lines))
	}
	return lines
}

// Sheet is what shapely finds in a drawing of a sheet: how near its profiles
// come to each other and to the edge, arcs flattened within 0.001 mm.
type Sheet struct {
	Stocks, Parts         int
	Stock                 []float64 // left, bottom, right, top
	Valid                 bool
	Area, Overlap, Margin float64
	Least                 *float64 // nil where there are not two parts
}

// Apart measures drawings of sheets with ezdxf and shapely.
func Apart(t testing.TB, drawings ...[]byte) []Sheet {
	t.Helper()
	if err := exec.Command(python, "-c", "import ezdxf, shapely").Run(); err != nil {
		missing(t, "outside readers ezdxf and shapely are not installed for %s: %v", python, err)
	}
	args := []string{reader(t, "apart.py")}
	for _, b := range drawings {
		args = append(args, File(t, "sheet.dxf", b))
	}
	lines := bytes.Split(bytes.TrimSpace(run(t, python, args...)), []byte("\n"))
	if len(lines) != len(drawings) {
		t.Fatalf("%d drawings gave %d lines", len(drawings), len(lines))
	}
	out := make([]Sheet, len(lines))
	for i, line := range lines {
		decode(t, line, &out[i])
	}
	return out
}

// Mesh is what manifold-3d finds in an STL file.
type Mesh struct {
	File                           string
	Triangles, Open, Genus, Pieces int
	Status                         string
	Volume, Area                   float64
	Min, Max                       [3]float64
}

// Meshes is what it finds in several, and what each two have in common.
type Meshes struct {
	Parts  []Mesh
	Shared []struct {
		A, B   int
		Volume float64
	}
}

// ReadSTL reads meshes with manifold-3d.
func ReadSTL(t testing.TB, files ...string) Meshes {
	t.Helper()
	var m Meshes
	decode(t, Node(t, "mesh.mjs", files...), &m)
	return m
}

// Node runs a script of ours that needs the pinned packages.
func Node(t testing.TB, script string, args ...string) []byte {
	t.Helper()
	node := Tool(t, "node")
	if _, err := os.Stat(filepath.Join(root(t), ".ci", "node", "node_modules", "manifold-3d")); err != nil {
		missing(t, "outside reader manifold-3d is not installed: run npm ci --ignore-scripts in .ci/node")
	}
	return run(t, node, append([]string{reader(t, script)}, args...)...)
}

// Admesh is what admesh prints about an STL file.
func Admesh(t testing.TB, file string) string {
	t.Helper()
	Tool(t, "admesh")
	return string(run(t, "/bin/sh", reader(t, "stl.sh"), file))
}

// Paint checks an SVG file with xmllint and paints it with rsvg-convert, as
// PNG of so many dots an inch.
func Paint(t testing.TB, file, dpi string) []byte {
	t.Helper()
	Tool(t, "xmllint")
	Tool(t, "rsvg-convert")
	return run(t, "/bin/sh", reader(t, "svg.sh"), file, dpi)
}

func decode(t testing.TB, b []byte, to any) {
	t.Helper()
	if err := json.Unmarshal(b, to); err != nil {
		t.Fatalf("%v in %.500s", err, b)
	}
}
