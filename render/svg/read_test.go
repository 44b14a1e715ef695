package svg

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// picture is a file as this test understands it: the contours and circles by
// layer, in a frame with y up and the origin at the lower left.
type picture struct {
	w, h     float64
	title    string
	contours map[string]outline.Region
	circles  map[string][]flat.Circle
	lines    map[string]int
	texts    []string
	places   map[string]outline.Point // of texts, by what they say
	titles   []string
}

// plain is a number as all readers take it: no exponent, at most four
// decimals, no negative zero, nothing left out before the point.
var plain = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]{0,3}[1-9])?$`)

func number(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || !plain.MatchString(s) || s == "-0" {
		t.Fatalf("%q is no plain number", s)
	}
	return x
}

func parse(t *testing.T, b []byte) picture {
	t.Helper()
	p := picture{contours: map[string]outline.Region{}, circles: map[string][]flat.Circle{}, lines: map[string]int{}, places: map[string]outline.Point{}}
	d := xml.NewDecoder(bytes.NewReader(b))
	d.Strict = true
	var layers []string
	var text *string
	var at outline.Point
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return p
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			a := map[string]string{}
			for _, x := range e.Attr {
				a[x.Name.Local] = x.Value
			}
			layer := ""
			if len(layers) > 0 {
				layer = layers[len(layers)-1]
			}
			switch e.Name.Local {
			case "svg":
				box := strings.Split(a["viewBox"], " ")
				if len(box) != 4 || box[0] != "0" || box[1] != "0" || a["width"] != box[2]+"mm" || a["height"] != box[3]+"mm" {
					t.Fatalf("size %s x %s, view box %s", a["width"], a["height"], a["viewBox"])
				}
				p.w, p.h = number(t, box[2]), number(t, box[3])
			case "g":
				if l := a["data-layer"]; l != "" {
					layer = l
				}
				layers = append(layers, layer)
			case "path":
				p.contours[layer] = append(p.contours[layer], p.path(t, a["d"]))
			case "circle":
				p.circles[layer] = append(p.circles[layer], flat.Circle{X: number(t, a["cx"]), Y: p.h - number(t, a["cy"]), R: number(t, a["r"])})
			case "line":
				for _, k := range []string{"x1", "y1", "x2", "y2"} {
					number(t, a[k])
				}
				p.lines[layer]++
			case "text":
				at = outline.Point{X: number(t, a["x"]), Y: p.h - number(t, a["y"])}
				number(t, a["font-size"])
				text = new(string)
			case "title", "desc":
				text = new(string)
			default:
				t.Fatalf("an element <%s>", e.Name.Local)
			}
		case xml.CharData:
			if text != nil {
				*text += string(e)
			}
		case xml.EndElement:
			switch e.Name.Local {
			case "g":
				layers = layers[:len(layers)-1]
			case "text":
				p.texts = append(p.texts, *text)
				p.places[*text] = at
				text = nil
			case "title":
				if p.title == "" && len(p.titles) == 0 {
					p.title = *text
				}
				p.titles = append(p.titles, *text)
				text = nil
			case "desc":
				text = nil
			}
		}
	}
}

// path reads M, L, A and Z with a space between any two words.
func (p picture) path(t *testing.T, d string) outline.Contour {
	t.Helper()
	w := strings.Split(d, " ")
	if len(w) < 4 || w[0] != "M" || w[len(w)-1] != "Z" {
		t.Fatalf("path %q", d)
	}
	at := func(i int) outline.Point {
		return outline.Point{X: number(t, w[i]), Y: p.h - number(t, w[i+1])}
	}
	start := at(1)
	c := outline.Contour{{X: start.X, Y: start.Y}}
	for i := 3; i < len(w)-1; {
		last := &c[len(c)-1]
		switch w[i] {
		case "L":
			q := at(i + 1)
			c = append(c, outline.Vertex{X: q.X, Y: q.Y})
			i += 3
		case "A":
			rx, ry := number(t, w[i+1]), number(t, w[i+2])
			if rx != ry || w[i+3] != "0" || w[i+4] != "0" || w[i+5] != "0" && w[i+5] != "1" {
				t.Fatalf("arc %q: want a small circle arc", w[i:i+8])
			}
			q := at(i + 6)
			chord := math.Hypot(q.X-last.X, q.Y-last.Y)
			s := 2 * math.Asin(math.Min(1, chord/(2*rx)))
			// Ends and radius are rounded: near 90 degrees the sweep is known to
			// about a step over the radius.
			if s > math.Pi/2+4*flat.Step/rx {
				t.Errorf("an arc of %v degrees: want 90 at most", s*180/math.Pi)
			}
			last.Bulge = math.Tan(s / 4)
			if w[i+5] == "1" { // turns clockwise on the screen
				last.Bulge = -last.Bulge
			}
			c = append(c, outline.Vertex{X: q.X, Y: q.Y})
			i += 8
		default:
			t.Fatalf("path %q: %q", d, w[i])
		}
	}
	if n := len(c); c[0].At() == c[n-1].At() {
		c = c[:n-1] // an arc that closes the path
	}
	return c
}
