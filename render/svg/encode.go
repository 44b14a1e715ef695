package svg

import (
	"slices"
	"strings"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// file is a drawing on its way to text.
type file struct {
	b      []byte
	x0, y1 float64 // what comes to lie at the left and at the top
	weight float64 // of lines, over the usual
}

func encode(d flat.Drawing, o Options) []byte {
	m := float64(margin)
	if o.Tight {
		m = 0
	}
	f := &file{x0: d.Bounds.Min.X - m, y1: d.Bounds.Max.Y + m, weight: 1}
	if d.Weight > 0 {
		f.weight = d.Weight
	}
	w, h := flat.Grid(d.Bounds.Width()+2*m), flat.Grid(d.Bounds.Height()+2*m)
	size := flat.Num(w) + " " + flat.Num(h)
	f.put(`<?xml version="1.0" encoding="UTF-8"?>`, "\n")
	f.put(`<svg xmlns="http://www.w3.org/2000/svg" width="`, flat.Num(w), `mm" height="`, flat.Num(h), `mm" viewBox="0 0 `, size, `" role="img">`, "\n")
	f.put(`<title>`, escape(d.Title), `</title>`, "\n")
	f.put(`<desc>`, escape(describe(d)), `</desc>`, "\n")
	for i, p := range d.Parts {
		f.group(d, i, p)
	}
	f.group(d, -1, "")
	f.put("</svg>\n")
	return f.b
}

// describe says what is seen, for who cannot see it.
func describe(d flat.Drawing) string {
	s := "Flat panels, lengths in mm: "
	for i, p := range d.Parts {
		if i == mostNamed {
			return s + ", and more"
		}
		if i > 0 {
			s += ", "
		}
		s += p
	}
	return s
}

// mostNamed is how many parts a description names.
const mostNamed = 50

// group writes the layers of one part; part -1 is the sheet's own.
func (f *file) group(d flat.Drawing, part int, name string) {
	var items []flat.Item
	for _, it := range d.Items {
		if it.Part == part {
			items = append(items, it)
		}
	}
	if len(items) == 0 {
		return
	}
	if part < 0 {
		f.put(`<g class="sheet">`, "\n")
	} else {
		f.put(`<g class="part"><title>`, escape(name), `</title>`, "\n")
	}
	for _, l := range (flat.Drawing{Items: items}).Layers() {
		f.layer(l)
		for _, it := range items {
			if it.Layer == l {
				f.item(it)
			}
		}
		f.put("</g>\n")
	}
	f.put("</g>\n")
}

// layer opens the group of a layer.
func (f *file) layer(l flat.Layer) {
	classes := []string{strings.ToLower(l.Kind.Word())}
	switch l.View {
	case flat.Turned:
		classes = append(classes, "turned")
	case flat.AtEdge:
		classes = append(classes, "edge")
	}
	if l.Bottom {
		classes = append(classes, "bottom")
	}
	f.put(`<g class="`, strings.Join(classes, " "), `" data-layer="`, strings.ToLower(l.Name()), `"`)
	if d := l.Depth(); d > 0 {
		f.put(` data-depth="`, flat.Num(d), `"`)
	}
	if l.Kind == flat.Text || l.Kind == flat.Size {
		// Sizes have lines and text: the lines take the stroke, and each text
		// says that it has none.
		f.put(` fill="`, colours[l.Kind], `" stroke="`, colours[l.Kind], `" stroke-width="`, flat.Num(thin*f.weight), `" font-family="sans-serif">`, "\n")
		return
	}
	f.put(` fill="none" stroke="`, colours[l.Kind], `" stroke-width="`, flat.Num(width(l)*f.weight), `"`)
	if l.Dashed() {
		f.put(` stroke-dasharray="`, flat.Num(3*f.weight), " ", flat.Num(1.5*f.weight), `"`)
	}
	f.put(">\n")
}

// The widths of lines, mm (ISO 128-2).
const (
	thick = 0.25
	thin  = 0.13
)

// width of the lines of a layer, mm.
func width(l flat.Layer) float64 {
	if (l.Kind.Cuts() || l.Kind == flat.Stock) && !l.Dashed() {
		return thick
	}
	return thin
}

// colours are quiet and tell kinds of work apart, on white and in grey. Never
// changed.
var colours = [flat.Kinds]string{
	flat.Profile: "#2b3a42",
	flat.Face:    "#7d8790",
	flat.Bore:    "#7a4a2b",
	flat.Fixing:  "#b0561f",
	flat.Opening: "#6a4f7d",
	flat.Pocket:  "#3d7457",
	flat.Rebate:  "#94652c",
	flat.Housing: "#2f6780",
	flat.Groove:  "#587033",
	flat.Notch:   "#85405a",
	flat.Mark:    "#6b6b6b",
	flat.Engrave: "#4f5f9a",
	flat.Grain:   "#a58a5c",
	flat.Size:    "#5a5f63",
	flat.Text:    "#33383b",
	flat.Stock:   "#33383b",
	flat.Trim:    "#8d8577",
	flat.Blank:   "#9aa3a8",
	flat.Saw:     "#a2543f",
	flat.Offcut:  "#587033",
	flat.Defect:  "#85405a",
	flat.Balloon: "#33383b",
}

// capitals is about how high capitals are in a sans-serif font of size 1.
const capitals = 0.7

func (f *file) put(ss ...string) {
	for _, s := range ss {
		f.b = append(f.b, s...)
	}
}

// num writes a number.
func (f *file) num(x float64) { f.b = flat.AppendNum(f.b, x) }

// place writes x and y with a space between them, as SVG counts them.
func (f *file) place(p outline.Point) {
	f.num(p.X - f.x0)
	f.put(" ")
	f.num(f.y1 - p.Y)
}

// item writes one element.
func (f *file) item(it flat.Item) {
	switch it.Shape {
	case flat.Closed:
		f.put(`<path d="`)
		f.contour(it.Contour)
		f.put(`"`)
		f.end("path", it.Note)
	case flat.Open:
		f.put(`<path d="`)
		f.stroke(it.Stroke)
		f.put(`"`)
		f.end("path", it.Note)
	case flat.Disc:
		f.put(`<circle cx="`)
		f.num(it.Circle.X - f.x0)
		f.put(`" cy="`)
		f.num(f.y1 - it.Circle.Y)
		f.put(`" r="`)
		f.num(it.Circle.R)
		f.put(`"`)
		f.end("circle", it.Note)
	case flat.Line:
		f.put(`<line x1="`)
		f.num(it.From.X - f.x0)
		f.put(`" y1="`)
		f.num(f.y1 - it.From.Y)
		f.put(`" x2="`)
		f.num(it.To.X - f.x0)
		f.put(`" y2="`)
		f.num(f.y1 - it.To.Y)
		f.put(`"`)
		f.end("line", it.Note)
	case flat.Label:
		f.put(`<text x="`)
		f.num(it.From.X - f.x0)
		f.put(`" y="`)
		f.num(f.y1 - it.From.Y)
		f.put(`" font-size="`)
		f.num(it.Text.Height / capitals)
		f.put(`" stroke="none"`)
		if it.Text.Ink != flat.Profile {
			f.put(` fill="`, colours[it.Text.Ink], `"`)
		}
		if it.Text.Middle {
			f.put(` text-anchor="middle"`)
		}
		if it.Text.Angle != 0 {
			// SVG turns clockwise.
			f.put(` transform="rotate(`)
			f.num(-it.Text.Angle)
			f.put(" ")
			f.place(it.From)
			f.put(`)"`)
		}
		f.put(`>`, escape(it.Text.Value), "</text>\n")
	}
}

// end closes an element, with its note inside if it has one.
func (f *file) end(kind, note string) {
	if note == "" {
		f.put("/>\n")
		return
	}
	f.put(`><title>`, escape(flat.Clean(note, 200)), `</title></`, kind, ">\n")
}

// contour writes path data: M, L, A and Z in absolute places.
func (f *file) contour(c outline.Contour) {
	f.put("M ")
	f.place(c[0].At())
	for i, v := range c {
		last := i == len(c)-1
		to := c[(i+1)%len(c)].At()
		if v.Bulge == 0 {
			if !last { // Z draws the last one
				f.put(" L ")
				f.place(to)
			}
			continue
		}
		f.arc(v.At(), to, v.Bulge)
	}
	f.put(" Z")
}

// stroke writes path data that does not close.
func (f *file) stroke(p outline.Path) {
	f.put("M ")
	f.place(p[0].At())
	for i := 0; i+1 < len(p); i++ {
		if to := p[i+1].At(); p[i].Bulge == 0 {
			f.put(" L ")
			f.place(to)
		} else {
			f.arc(p[i].At(), to, p[i].Bulge)
		}
	}
}

// arc writes the arc from p to q in equal pieces of at most 90 degrees, each
// the smaller of the two that SVG could mean.
func (f *file) arc(p, q outline.Point, bulge float64) {
	_, r := flat.ArcOf(p, q, bulge)
	flag := " 0 0 0 "
	if bulge < 0 {
		flag = " 0 0 1 " // anticlockwise in a panel is anticlockwise on the screen: 0 in SVG
	}
	for _, to := range slices.Concat(quarters(p, q, bulge), []outline.Point{q}) {
		f.put(" A ")
		f.num(r)
		f.put(" ")
		f.num(r)
		f.put(flag)
		f.place(to)
	}
}
