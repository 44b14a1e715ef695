package picture

import (
	"math"
)

// Colour is an sRGB colour.
type Colour struct{ R, G, B uint8 }

// The colours of a picture: ink and pencil on warm paper. None of them carries
// a meaning that the lines and numbers do not give as well.
var (
	Paper  = Colour{0xfa, 0xf5, 0xe9}
	Ink    = Colour{0x2b, 0x20, 0x18}
	Pencil = Colour{0x7d, 0x73, 0x68}
)

// Pen is how a class of lines is drawn.
type Pen struct {
	Width  float64 // mm
	Colour Colour
	Dash   []float64 // lengths in mm of dash, gap, dash, gap ...; nil is unbroken
}

// Pen is the pen for a class of lines on a page 180 mm wide. Widths are those
// of the 2:1 group 0.5 (ISO 128): wide for contours, narrow for the rest.
func (c Class) Pen() Pen {
	switch c {
	case Contour:
		return Pen{0.5, Ink, nil}
	case Edge:
		return Pen{0.25, Ink, nil}
	case Engraved:
		return Pen{0.18, Ink, nil}
	case Unseen:
		return Pen{0.18, Ink, []float64{1.6, 0.9}}
	case Trace:
		return Pen{0.18, Pencil, []float64{4, 0.9, 0.5, 0.9}}
	case Leader:
		return Pen{0.18, Pencil, nil}
	}
	return Pen{0.35, Pencil, nil}
}

// Pen is the pen for a class of lines on this page: finer on small pages.
func (p *Picture) Pen(c Class) Pen {
	q := c.Pen()
	q.Width *= p.Pens
	dash := make([]float64, len(q.Dash))
	for i, d := range q.Dash {
		dash[i] = d * p.Pens
	}
	if len(dash) > 0 {
		q.Dash = dash
	}
	return q
}

// Tone is the tint of a face: how much light it gets, in steps, and whether it
// shows end grain.
type Tone struct {
	Shade    int // 0 in full light to Shades-1
	EndGrain bool
}

// Shades is the number of steps from light to dark.
const Shades = 16

// Colour is the tone on paper: a thin wash of wood colour; end grain, as in
// life, takes more of it.
func (t Tone) Colour() Colour {
	light, dark := Colour{0xf4, 0xe7, 0xcb}, Colour{0xb8, 0x98, 0x68}
	if t.EndGrain {
		light, dark = Colour{0xea, 0xd0, 0xa6}, Colour{0xac, 0x88, 0x5c}
	}
	k := math.Max(0, math.Min(float64(t.Shade)/(Shades-1), 1))
	mix := func(a, b uint8) uint8 {
		return uint8(math.Round(float64(a) + float64(k*(float64(b)-float64(a)))))
	}
	return Colour{mix(light.R, dark.R), mix(light.G, dark.G), mix(light.B, dark.B)}
}
