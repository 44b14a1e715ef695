package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"holt.example/box"
	"holt.example/box/solid"
)

func draw(t testing.TB, name string, o Options) *Picture {
	t.Helper()
	s := gable()
	if o.Exploded {
		Explode(s, 1)
	}
	p, err := Draw(name, "sketch", s, nil, o)
	require.NoError(t, err)
	return p
}

// An isometric view has d along (1, -1, 1)/sqrt 3: the slope to the left, with
// n = (-1, 0, 1)/sqrt 2, is exactly edge-on (geometry).
func TestChoose(t *testing.T) {
	isometric := View{"isometric", 45, 35.26438968}
	left := solid.Vec{X: -1, Z: 1}.Unit()
	assert.InDelta(t, 0, left.Dot(isometric.axes().d), 1e-9)
	// Trimetric 20/35: d = (sin20 cos35, -cos20 cos35, sin35) = (0.2802, -0.7698, 0.5736),
	// so n.d = (0.5736-0.2802)/sqrt 2 = 0.2075.
	assert.InDelta(t, 0.2075, left.Dot(views[0].axes().d), 1e-4)
	assert.Equal(t, views[0], choose(append([]View{isometric}, views...), []solid.Vec{left}, nil, nil))
	// An entrance in the left wall is behind in the first view, in sight in
	// the second: n.d = -(sin -20 cos35) = 0.2802.
	assert.Equal(t, views[1], choose(views, nil, targets(nil, []solid.Vec{{X: -1}}), nil))
	// And one in the back.
	assert.Equal(t, "trimetric from behind", choose(views, nil, targets(nil, []solid.Vec{{Y: 1}}), nil).Name)
	// Faces all round: none will do, the best is taken.
	var round []solid.Vec
	for i := range 72 {
		s, c := math.Sincos(float64(i) * math.Pi / 36)
		round = append(round, solid.Vec{X: c, Y: s})
	}
	assert.Contains(t, views, choose(views, round, nil, nil))
}

func TestAxes(t *testing.T) {
	for _, v := range append(Views(), View{"front", 0, 0}, View{"top", 0, 90}) {
		a := v.axes()
		assert.InDelta(t, 1, a.r.Len(), 1e-10)
		assert.InDelta(t, 1, a.u.Len(), 1e-10)
		assert.InDelta(t, 0, a.r.Cross(a.u).Sub(a.d).Len(), 1e-10, v.Name)
	}
	// From the front, x is to the right, z up, and the viewer stands at -y.
	assert.Equal(t, axes{solid.Vec{X: 1}, solid.Vec{Z: 1}, solid.Vec{Y: -1}}, axes{
		View{}.axes().r.Add(solid.Vec{}), View{}.axes().u.Add(solid.Vec{}), View{}.axes().d.Add(solid.Vec{}),
	})
	// From above, y is up on the page.
	assert.InDelta(t, 0, View{Up: 90}.axes().u.Sub(solid.Vec{Y: 1}).Len(), 1e-9)
}

func TestFrontElevation(t *testing.T) {
	p := draw(t, "orchard gable", Options{Views: []View{{Name: "front"}}, Plain: true})
	// The gable from the front is 200 wide over the roof boards, from z = -60
	// (the batten) up to the ridge: the upper face of the roof, 15 out along
	// the normal, meets x = 0 at z = 275+15 sqrt 2 = 296.2, but the right
	// board's top end is square to the slope, 15 further along it, at
	// z = 275 + 15/sqrt 2 + 15/sqrt 2 = 296.2 too.
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{}
	for _, l := range p.Lines {
		for _, q := range [2]Point{l.From, l.To} {
			lo = Point{math.Min(lo.X, q.X), math.Min(lo.Y, q.Y)}
			hi = Point{math.Max(hi.X, q.X), math.Max(hi.Y, q.Y)}
		}
	}
	assert.InDelta(t, 200, (hi.X-lo.X)/p.Scale, 0.01)
	assert.InDelta(t, 60+275+15*math.Sqrt2, (hi.Y-lo.Y)/p.Scale, 0.01)
	// It fills the page but for 2 mm.
	assert.InDelta(t, 2, math.Min(lo.X, lo.Y), 0.01)
}

// No line lies on another, however many parts share an edge.
func TestNothingTwice(t *testing.T) {
	for _, apart := range []bool{false, true} {
		p := draw(t, "x", Options{Exploded: apart, Unseen: true})
		for i, a := range p.Lines {
			for _, b := range p.Lines[:i] {
				if a.Class > Unseen || b.Class > Unseen {
					continue
				}
				if v, ok := shared(a, b, a.Length()); ok {
					assert.Less(t, (v.b-v.a)*a.Length(), 3*near, "%v\n%v", a, b)
				}
			}
		}
	}
}

func TestClean(t *testing.T) {
	line := func(c Class, x0, x1 float64) Line {
		return Line{Class: c, From: Point{x0, 5}, To: Point{x1, 5}}
	}
	// The same twice; a bold one over the middle of a fine one; one that
	// reaches beyond.
	assert.Equal(t, []Line{line(Edge, 0, 10)}, clean([]Line{line(Edge, 0, 10), line(Edge, 10, 0)}))
	assert.Equal(t,
		[]Line{line(Edge, 0, 4), line(Edge, 6, 10), line(Contour, 4, 6)},
		clean([]Line{line(Edge, 0, 10), line(Contour, 4, 6)}))
	assert.Equal(t,
		[]Line{line(Edge, 0, 10), line(Edge, 10, 12)},
		clean([]Line{line(Edge, 0, 10), line(Edge, 7, 12)}))
	// Lines that cross or only touch stay.
	up := Line{Class: Edge, From: Point{10, 5}, To: Point{10, 9}}
	assert.Len(t, clean([]Line{line(Edge, 0, 10), up}), 2)
}

func TestStrokesKeepLength(t *testing.T) {
	p := draw(t, "x", Options{Exploded: true, Tint: true})
	want, got := map[Class]float64{}, map[Class]float64{}
	for _, l := range p.Lines {
		want[l.Class] += l.Length()
	}
	strokes := p.Strokes()
	for _, s := range strokes {
		for i := 1; i < len(s.Points); i++ {
			got[s.Class] += dist(s.Points[i-1], s.Points[i])
		}
		if s.Closed {
			got[s.Class] += dist(s.Points[len(s.Points)-1], s.Points[0])
		}
	}
	for c, l := range want {
		// Ends are joined on 0.001 mm.
		assert.InDelta(t, l, got[c], 0.002*float64(len(p.Lines)), c.String())
	}
	assert.Less(t, len(strokes), len(p.Lines))
}

// Dashes keep to the pen: 10 mm with dashes of 3 and gaps of 1 are 0-3, 4-7
// and 8-10, also where the line bends on its way.
func TestDashes(t *testing.T) {
	s := Stroke{Points: []Point{{0, 0}, {5, 0}, {5, 5}}}
	assert.Equal(t, [][]Point{
		{{0, 0}, {3, 0}},
		{{4, 0}, {5, 0}, {5, 2}},
		{{5, 3}, {5, 5}},
	}, s.Dashes(Pen{Dash: []float64{3, 1}}))
	assert.Equal(t, [][]Point{s.Points}, s.Dashes(Pen{}))
	s.Closed = true
	assert.Equal(t, [][]Point{{{0, 0}, {5, 0}, {5, 5}, {0, 0}}}, s.Dashes(Pen{}))
	// No pen can make it run for ever.
	assert.NotEmpty(t, s.Dashes(Pen{Dash: []float64{1, 0}}))
}

func TestPensFollowThePage(t *testing.T) {
	small, large := draw(t, "x", Options{Width: 60}), draw(t, "x", Options{})
	assert.InDelta(t, 0.5, large.Pen(Contour).Width, 1e-12)
	assert.InDelta(t, 0.5/3, small.Pen(Contour).Width, 1e-12)
	assert.InDelta(t, Trace.Pen().Dash[0]/3, small.Pen(Trace).Dash[0], 1e-12)
	assert.Nil(t, small.Pen(Edge).Dash)
}

// In an exploded picture every part can be pointed at, and the roof is up.
func TestExplodeShowsAll(t *testing.T) {
	p := draw(t, "x", Options{Exploded: true})
	assert.Empty(t, p.Hidden)
	for _, s := range gable() {
		m := p.Moved(s.Part)
		switch s.Part {
		case "roof/left":
			assert.Greater(t, m.Z, 0.0)
			assert.Less(t, m.X, 0.0)
		case "floor":
			assert.Less(t, m.Z, 0.0)
		case "free/batten":
			assert.Greater(t, m.Y, p.Moved("back").Y)
		default:
			assert.Greater(t, m.Dot(s.Out), 0.0, s.Part)
		}
	}
	// Closed, left, floor and batten are out of sight; of the left there is
	// the equal right to see, so the key says it of the other two.
	p = draw(t, "x", Options{})
	assert.Equal(t, []box.Part{"left", "floor", "free/batten"}, p.Hidden)
	var keys []string
	for _, x := range p.Texts {
		keys = append(keys, x.S)
	}
	assert.Contains(t, keys, "floor (out of sight)")
	assert.Contains(t, keys, "left, right")
}

// read parses the SVG as XML and gives its texts and titles.
func read(t require.TestingT, data []byte) (texts []string) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.Strict = true
	in := ""
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return texts
		}
		require.NoError(t, err)
		switch v := tok.(type) {
		case xml.StartElement:
			require.Contains(t, []string{"svg", "title", "desc", "rect", "g", "path", "circle", "text"}, v.Name.Local)
			in = v.Name.Local
			for _, a := range v.Attr {
				require.False(t, strings.HasPrefix(a.Name.Local, "on"))
			}
		case xml.EndElement:
			in = ""
		case xml.CharData:
			if in == "text" || in == "title" {
				texts = append(texts, string(v))
			}
		}
	}
}

func TestHostileNames(t *testing.T) {
	for _, name := range []string{
		`</title><script>alert(1)</script>`, `"><rect onload='x'>`, "a\x00b\x1bc", "]]>&amp;", "line\nbreak", strings.Repeat("very long ", 60),
		"Łąka ß 箱", "\ufffe\uffff", string([]byte{0xff, 0xfe}),
	} {
		s := gable()
		for i := range s {
			s[i].Key = name
		}
		p, err := Draw(name, name, s, nil, Options{})
		require.NoError(t, err)
		pageLaws(t, p)
		var b bytes.Buffer
		require.NoError(t, p.WriteSVG(&b))
		texts := read(t, b.Bytes())
		if strings.HasPrefix(name, "</title>") {
			assert.Contains(t, texts, name)
		}
		if len(name) > 500 {
			assert.Contains(t, texts, name) // whole, in the title of the shortened text
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p, err := Draw(rapid.String().Draw(t, "name"), rapid.String().Draw(t, "note"), gable()[:1], nil, Options{})
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, p.WriteSVG(&b))
		read(t, b.Bytes())
	})
}

func TestSVG(t *testing.T) {
	p := draw(t, "orchard gable", Options{Exploded: true, Tint: true, Unseen: true})
	var a, b bytes.Buffer
	require.NoError(t, p.WriteSVG(&a))
	require.NoError(t, draw(t, "orchard gable", Options{Exploded: true, Tint: true, Unseen: true}).WriteSVG(&b))
	assert.Equal(t, a.String(), b.String())
	s := a.String()
	assert.Contains(t, s, `width="180mm"`)
	assert.Contains(t, s, `viewBox="0 0 180 `)
	assert.Contains(t, read(t, a.Bytes()), "orchard gable")
	// Numbers: four decimals at most, no exponent, no -0.
	d := regexp.MustCompile(` d="([^"]*)"`)
	n := 0
	for _, m := range d.FindAllStringSubmatch(s, -1) {
		assert.Regexp(t, `^(M-?\d+(\.\d{1,4})? -?\d+(\.\d{1,4})?(L(-?\d+(\.\d{1,4})? ?)+)?Z?)+$`, m[1])
		n++
	}
	assert.Greater(t, n, 10)
	assert.NotRegexp(t, `[ "]-0[ "]`, s)
}

func TestNum(t *testing.T) {
	for _, c := range []struct {
		x float64
		s string
	}{{0, "0"}, {-0.00001, "0"}, {math.Copysign(0, -1), "0"}, {1.5, "1.5"}, {-2, "-2"}, {1e6, "1000000"}, {0.12345, "0.1235"}, {100, "100"}} {
		assert.Equal(t, c.s, num(c.x))
	}
}

type failing struct{ after int }

func (f *failing) Write(b []byte) (int, error) {
	f.after--
	if f.after < 0 {
		return 0, errors.New("disk full")
	}
	return len(b), nil
}

func TestFailingWriter(t *testing.T) {
	assert.ErrorContains(t, draw(t, "x", Options{}).WriteSVG(&failing{}), "disk full")
}

func TestOptions(t *testing.T) {
	nan := math.NaN()
	for _, o := range []Options{
		{Width: nan}, {Width: -1}, {Width: 39}, {Width: 2001}, {Width: math.Inf(1)},
		{Height: nan}, {Height: 39}, {Height: math.Inf(1)},
		{Spread: nan}, {Spread: 0.01}, {Spread: 11},
		{Views: []View{}}, {Views: []View{{Round: nan}}}, {Views: []View{{Up: 91}}}, {Views: []View{{Round: -361}}},
	} {
		_, err := Draw("x", "y", gable(), nil, o)
		assert.ErrorContains(t, err, "want", "%+v", o)
	}
	_, err := New(nil, Options{})
	assert.ErrorContains(t, err, "no plan")
	assert.Error(t, WriteSVG(io.Discard, nil, Options{}))
	// Nothing to draw is a page without a drawing.
	p, err := Draw("x", "y", nil, nil, Options{Tint: true})
	require.NoError(t, err)
	pageLaws(t, p)
	p, err = Draw("x", "y", []Solid{{Part: "ghost"}}, nil, Options{Tint: true})
	require.NoError(t, err)
	assert.Len(t, p.Hidden, 1)
}

func TestPlainIsTheDrawingAlone(t *testing.T) {
	p := draw(t, "x", Options{Plain: true, Exploded: true})
	assert.Empty(t, p.Texts)
	assert.Empty(t, p.Circles)
	for _, l := range p.Lines {
		assert.LessOrEqual(t, l.Class, Edge)
	}
}

func TestUnseenLines(t *testing.T) {
	count := func(o Options) map[Class]int {
		n := map[Class]int{}
		for _, l := range draw(t, "x", o).Lines {
			n[l.Class]++
		}
		return n
	}
	with, without := count(Options{Unseen: true}), count(Options{})
	assert.Zero(t, without[Unseen])
	assert.Greater(t, with[Unseen], 20)
	assert.Equal(t, without[Contour], with[Contour])
	assert.Equal(t, without[Edge], with[Edge])
}

// The same design twice as large makes the same picture.
func TestPictureDoesNotDependOnSize(t *testing.T) {
	a, err := Draw("x", "y", gable(), nil, Options{})
	require.NoError(t, err)
	b, err := Draw("x", "y", scaled(gable(), 2), nil, Options{})
	require.NoError(t, err)
	assert.InDelta(t, a.Scale, 2*b.Scale, 1e-9)
	require.Equal(t, len(a.Lines), len(b.Lines))
	for i := range a.Lines {
		assert.InDelta(t, 0, dist(a.Lines[i].From, b.Lines[i].From), 0.02)
		assert.InDelta(t, 0, dist(a.Lines[i].To, b.Lines[i].To), 0.02)
	}
}
