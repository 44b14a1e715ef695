package png

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"io"
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/render/picture"
)

// block is a cube with 40 to a side, as a mesh.
func block() *solid.Mesh {
	m := &solid.Mesh{}
	for i := range 8 {
		m.Vertices = append(m.Vertices, solid.Vec{X: 40 * float64(i&1), Y: 40 * float64(i>>1&1), Z: 40 * float64(i>>2)})
	}
	for _, q := range [6][4]int32{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		m.Triangles = append(m.Triangles, [3]int32{q[0], q[1], q[2]}, [3]int32{q[0], q[2], q[3]})
	}
	return m
}

func cube(t testing.TB, o picture.Options) *picture.Picture {
	t.Helper()
	p, err := picture.Draw("orchard block", "a cube", []picture.Solid{{Part: "front", Number: 1, Key: "front", Mesh: block()}}, nil, o)
	require.NoError(t, err)
	return p
}

func TestSize(t *testing.T) {
	// 254 mm are 10 inches, 127 are 5.
	p := cube(t, picture.Options{Width: 254, Height: 127})
	for _, dpi := range []float64{10, 72, 150, 0} {
		var b bytes.Buffer
		require.NoError(t, WritePicture(&b, p, dpi))
		img, err := png.Decode(&b)
		require.NoError(t, err)
		if dpi == 0 {
			dpi = 150
		}
		assert.Equal(t, image.Pt(int(10*dpi), int(5*dpi)), img.Bounds().Size())
	}
	// A fraction of a pixel is rounded: 100 mm at 96 dpi are 377.95.
	w, h := Size(100, 0.01, 96)
	assert.Equal(t, [2]int{378, 1}, [2]int{w, h})
}

// What is on the page is where the picture says: paper in the corner, the
// number's balloon, the tint of a face beside its dot, ink on a contour.
func TestPixels(t *testing.T) {
	p := cube(t, picture.Options{Tint: true})
	const dpi = 254 // 10 pixels a mm
	img, err := Paint(p, dpi)
	require.NoError(t, err)
	at := func(q picture.Point) picture.Colour {
		c := img.RGBAAt(int(q.X*10), int(q.Y*10))
		assert.Equal(t, uint8(0xff), c.A)
		return picture.Colour{R: c.R, G: c.G, B: c.B}
	}
	assert.Equal(t, picture.Paper, at(picture.Point{X: 1, Y: 1}))
	checked := 0
	for _, l := range p.Lines {
		if l.Class == picture.Contour && l.Length() > 5 {
			assert.Equal(t, picture.Ink, at(picture.Point{X: (l.From.X + l.To.X) / 2, Y: (l.From.Y + l.To.Y) / 2}))
			checked++
		}
	}
	assert.Equal(t, 6, checked) // the outline of a cube is a hexagon
	for _, c := range p.Circles {
		if c.Mark == picture.Dot {
			assert.Equal(t, picture.Ink, at(c.Centre))
			beside := at(picture.Point{X: c.Centre.X, Y: c.Centre.Y + 3})
			assert.Equal(t, p.Polys[0].Tone.Colour().R > 0, beside != picture.Paper)
			found := false
			for _, q := range p.Polys {
				found = found || q.Tone.Colour() == beside
			}
			assert.True(t, found, "%v is no tint of the picture", beside)
		}
	}
	// There is ink in every text's box.
	for _, x := range p.Texts {
		lo, hi := x.Box()
		ink := 0
		for y := int(lo.Y * 10); y < int(hi.Y*10); y++ {
			for x := int(lo.X * 10); x < int(hi.X*10); x++ {
				if c := img.RGBAAt(x, y); c.R < 0x60 {
					ink++
				}
			}
		}
		assert.Greater(t, ink, 20, x.S)
	}
}

// Texts are as wide in the fonts as package picture reckons them to be. Pairs
// may be set closer; nothing is set wider by more than a hundredth.
func TestWidths(t *testing.T) {
	fonts, err := load()
	require.NoError(t, err)
	for i, f := range fonts {
		for _, s := range []string{"orchard pent", "left, right", "0123456789", "roof/left (out of sight)", "AVATAR To. Wave", "20° × 35°", "Łąka ßő", "~{|}^_`"} {
			const h = 3.5
			_, w := f.Face(picture.FontSize(h)*72/25.4, rgba(picture.Ink)).ToPath(s)
			reckoned := picture.TextWidth(s, h, i == 1)
			assert.LessOrEqual(t, w, reckoned*1.01, s)
			assert.Greater(t, w, reckoned*0.8, s) // letters outside ASCII count as wide ones
		}
	}
}

// Bold text takes more ink.
func TestBold(t *testing.T) {
	ink := func(bold bool) (n int) {
		p := &picture.Picture{Width: 60, Height: 10, Texts: []picture.Text{{At: picture.Point{X: 5, Y: 7}, Height: 3, S: "orchard", Bold: bold}}}
		img, err := Paint(p, 200)
		require.NoError(t, err)
		for i := 0; i < len(img.Pix); i += 4 {
			n += 255 - int(img.Pix[i])
		}
		return n
	}
	assert.Greater(t, ink(true), ink(false)*11/10)
}

func TestSameBytes(t *testing.T) {
	p := cube(t, picture.Options{Tint: true, Unseen: true})
	var first bytes.Buffer
	require.NoError(t, WritePicture(&first, p, 60))
	var wait sync.WaitGroup
	for range 4 { // also from several goroutines at a time
		wait.Go(func() {
			var b bytes.Buffer
			assert.NoError(t, WritePicture(&b, p, 60))
			assert.True(t, bytes.Equal(first.Bytes(), b.Bytes()))
		})
	}
	wait.Wait()
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrors(t *testing.T) {
	p := cube(t, picture.Options{})
	assert.ErrorContains(t, WritePicture(failing{}, p, 30), "disk full")
	for _, dpi := range []float64{math.NaN(), -1, 9, 1201, math.Inf(1)} {
		assert.ErrorContains(t, WritePicture(io.Discard, p, dpi), "want 10 to 1200")
	}
	assert.ErrorContains(t, WritePicture(io.Discard, nil, 30), "no picture")
	assert.ErrorContains(t, Write(io.Discard, nil, Options{}), "no plan")
	big := &picture.Picture{Width: 2000, Height: 2000}
	assert.ErrorContains(t, WritePicture(io.Discard, big, 1200), "want at most 200 million")
}

// Names in letters that the font has not, or that are no letters, are drawn as
// boxes: they are no fault.
func TestAnyText(t *testing.T) {
	p, err := picture.Draw("箱 \x00 \u202e ﷺ \U0001f426", "x", nil, nil, picture.Options{})
	require.NoError(t, err)
	require.NoError(t, WritePicture(io.Discard, p, 40))
}

func TestPlan(t *testing.T) {
	plan, err := orchard.Resolve()
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, Write(&b, plan, Options{Options: picture.Options{Exploded: true, Tint: true}, DPI: 50}))
	_, err = png.Decode(&b)
	require.NoError(t, err)
}

var orchard = box.Design{
	Name:     "orchard flat",
	Board:    box.Board{Thickness: 20},
	Size:     box.Cavity{Width: 120, Depth: 120, Height: 200},
	Roof:     box.Flat{Over: box.Overhangs{Front: 30}},
	Floor:    box.FloorBetween{},
	Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 140}},
}

func BenchmarkPaint(b *testing.B) {
	p := cube(b, picture.Options{Tint: true})
	for b.Loop() {
		_, err := Paint(p, 150)
		require.NoError(b, err)
	}
}
