package png

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"holt.example/box"
	"holt.example/render/picture"
)

// Options say what is drawn and how finely.
type Options struct {
	picture.Options
	DPI float64 // pixels per inch, 10 to 1200; 0 means 150
}

// Write draws a plan and writes it as PNG.
func Write(w io.Writer, plan *box.Plan, o Options) error {
	p, err := picture.New(plan, o.Options)
	if err != nil {
		return err
	}
	return WritePicture(w, p, o.DPI)
}

// WritePicture writes a picture as PNG, with dpi pixels per inch (10 to 1200;
// 0 means 150).
func WritePicture(w io.Writer, p *picture.Picture, dpi float64) error {
	img, err := Paint(p, dpi)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	_, err = w.Write(b.Bytes())
	return err
}

// maxPixels keeps a slip of the pen from taking all memory: 4 bytes each.
const maxPixels = 200e6

// Size is the size in pixels of a page in mm, rounded to whole pixels, at
// least one each way.
func Size(width, height, dpi float64) (w, h int) {
	px := func(mm float64) int { return max(1, int(math.Round(float64(mm*dpi)/25.4))) }
	return px(width), px(height)
}

// Paint paints a picture, with dpi pixels per inch (10 to 1200; 0 means 150).
func Paint(p *picture.Picture, dpi float64) (*image.RGBA, error) {
	if p == nil {
		return nil, errors.New("png: no picture")
	}
	if dpi == 0 {
		dpi = 150
	}
	if !(dpi >= 10 && dpi <= 1200) {
		return nil, fmt.Errorf("png: DPI: %v: want 10 to 1200", dpi)
	}
	w, h := Size(p.Width, p.Height, dpi)
	if float64(w)*float64(h) > maxPixels {
		return nil, fmt.Errorf("png: %d x %d pixels: want at most %.0f million in all", w, h, maxPixels/1e6)
	}
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Bounds(), image.NewUniform(rgba(picture.Paper)), image.Point{}, draw.Src)
	fonts, err := load()
	if err != nil {
		return nil, err
	}
	res := canvas.DPI(dpi)
	ras := rasterizer.FromImage(img, res, canvas.LinearColorSpace{})
	t := painter{ctx: canvas.NewContext(ras), top: float64(h) / res.DPMM(), fonts: fonts}
	t.polys(p.Polys)
	t.strokes(p)
	t.circles(p.Circles, p.Pen(picture.Rule).Width)
	for _, x := range p.Texts {
		t.text(x)
	}
	ras.Close()
	return img, nil
}

func rgba(c picture.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 0xff} }

// load reads the two fonts. They are read for each picture: a loaded font is
// not known to be safe in several goroutines.
func load() ([2]*canvas.Font, error) {
	var out [2]*canvas.Font
	for i, data := range [2][]byte{goregular.TTF, gobold.TTF} {
		style := canvas.FontRegular
		if i == 1 {
			style = canvas.FontBold
		}
		f, err := canvas.LoadFont(data, 0, style)
		if err != nil {
			return out, fmt.Errorf("png: font: %w", err)
		}
		out[i] = f
	}
	return out, nil
}

// painter draws with y up, as canvas does without any view set.
type painter struct {
	ctx   *canvas.Context
	top   float64
	fonts [2]*canvas.Font
}

// round keeps coordinates on 0.001 mm, so that the last bit of an earlier
// calculation cannot show.
func round(x float64) float64 { return math.Round(x*1000) / 1000 }

func (t *painter) path(ps []picture.Point, closed bool) {
	for i, q := range ps {
		x, y := round(q.X), round(t.top-q.Y)
		if i == 0 {
			t.ctx.MoveTo(x, y)
		} else {
			t.ctx.LineTo(x, y)
		}
	}
	if closed {
		t.ctx.Close()
	}
}

func (t *painter) polys(ps []picture.Poly) {
	t.ctx.SetStrokeWidth(0.15)
	t.ctx.SetStrokeJoiner(canvas.RoundJoin)
	t.ctx.SetFillRule(canvas.EvenOdd)
	for _, p := range ps {
		c := rgba(p.Tone.Colour())
		t.ctx.SetFillColor(c)
		t.ctx.SetStrokeColor(c)
		for _, l := range p.Loops {
			t.path(l, true)
		}
		t.ctx.FillStroke()
	}
	t.ctx.SetFillRule(canvas.NonZero)
}

func (t *painter) strokes(p *picture.Picture) {
	t.ctx.SetStrokeCapper(canvas.RoundCap)
	t.ctx.SetStrokeJoiner(canvas.RoundJoin)
	for _, s := range p.Strokes() {
		pen := p.Pen(s.Class)
		t.ctx.SetStrokeColor(rgba(pen.Colour))
		t.ctx.SetStrokeWidth(pen.Width)
		if pen.Dash == nil {
			t.path(s.Points, s.Closed)
			t.ctx.Stroke()
			continue
		}
		// Canvas would draw the dashes of a curve of short lines unbroken.
		for _, d := range s.Dashes(pen) {
			t.path(d, false)
		}
		t.ctx.Stroke()
	}
}

func (t *painter) circles(cs []picture.Circle, ring float64) {
	for _, c := range cs {
		x, y := round(c.Centre.X), round(t.top-c.Centre.Y)
		disc := canvas.Circle(c.Radius)
		switch c.Mark {
		case picture.Balloon:
			t.ctx.SetFillColor(rgba(picture.Paper))
			t.ctx.SetStrokeColor(rgba(picture.Ink))
			t.ctx.SetStrokeWidth(ring)
		case picture.Dot:
			t.ctx.SetFillColor(rgba(picture.Ink))
			t.ctx.SetStrokeColor(color.RGBA{})
		}
		t.ctx.DrawPath(x, y, disc)
	}
}

func (t *painter) text(x picture.Text) {
	f := t.fonts[0]
	if x.Bold {
		f = t.fonts[1]
	}
	face := f.Face(picture.FontSize(x.Height)*72/25.4, rgba(picture.Ink))
	lo, _ := x.Box()
	p, _ := face.ToPath(x.S)
	t.ctx.SetFillColor(rgba(picture.Ink))
	t.ctx.SetStrokeColor(color.RGBA{})
	t.ctx.DrawPath(round(lo.X), round(t.top-x.At.Y), p)
}
