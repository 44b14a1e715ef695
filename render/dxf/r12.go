package dxf

import (
	"strconv"
	"strings"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// r12 writes the AC1009 dialect: no handles, no owners, no objects.
type r12 struct {
	tags
	d      flat.Drawing
	layers []flat.Layer
	names  map[flat.Layer]string
}

func newR12(d flat.Drawing) *r12 {
	ls := d.Layers()
	return &r12{d: d, layers: ls, names: oldNames(ls)}
}

// longestOld is how many characters R12 allows in a name.
const longestOld = 31

// oldNames are the names of layers in R12, which allows A to Z, digits, "$",
// "-" and "_". One that is too long is cut and gets its place in the list, so
// that two layers never become one.
func oldNames(ls []flat.Layer) map[flat.Layer]string {
	m := make(map[flat.Layer]string, len(ls))
	for i, l := range ls {
		n := strings.ReplaceAll(l.Name(), ".", "-")
		if len(n) > longestOld {
			end := "$" + strconv.Itoa(i+1)
			n = n[:longestOld-len(end)] + end
		}
		m[l] = n
	}
	return m
}

func (f *r12) file() []byte {
	b := f.d.Bounds
	f.str(999, "holt: "+comment(f.d.Title)+"; all lengths in millimetres")
	f.str(0, "SECTION")
	f.str(2, "HEADER")
	f.str(9, "$ACADVER")
	f.str(1, "AC1009")
	f.str(9, "$DWGCODEPAGE")
	f.str(3, "ANSI_1252")
	f.str(9, "$INSBASE")
	f.at(10, outline.Point{})
	f.str(9, "$EXTMIN")
	f.at(10, b.Min)
	f.str(9, "$EXTMAX")
	f.at(10, b.Max)
	f.str(9, "$LIMMIN")
	f.flatAt(10, b.Min)
	f.str(9, "$LIMMAX")
	f.flatAt(10, b.Max)
	f.str(9, "$LUNITS")
	f.int(70, 2)
	f.str(9, "$LUPREC")
	f.int(70, 4)
	f.str(9, "$AUNITS")
	f.int(70, 0)
	f.str(0, "ENDSEC")
	f.tables()
	f.str(0, "SECTION")
	f.str(2, "BLOCKS")
	f.str(0, "ENDSEC")
	f.str(0, "SECTION")
	f.str(2, "ENTITIES")
	for _, it := range f.d.Items {
		f.item(it)
	}
	f.str(0, "ENDSEC")
	f.str(0, "EOF")
	return f.b
}

func (f *r12) table(name string, n int) {
	f.str(0, "TABLE")
	f.str(2, name)
	f.int(70, n)
}

func (f *r12) tables() {
	f.str(0, "SECTION")
	f.str(2, "TABLES")

	f.table("VPORT", 1)
	f.str(0, "VPORT")
	f.viewport("*ACTIVE", viewOf(f.d.Bounds))
	f.str(0, "ENDTAB")

	f.table("LTYPE", 2)
	f.str(0, "LTYPE")
	f.str(2, "CONTINUOUS")
	f.int(70, 0)
	f.str(3, "Solid line")
	f.int(72, 65)
	f.int(73, 0)
	f.num(40, 0)
	f.str(0, "LTYPE")
	f.str(2, "DASHED")
	f.int(70, 0)
	f.str(3, "Dashed __ __ __")
	f.int(72, 65)
	f.int(73, 2)
	f.num(40, dash+space)
	f.num(49, dash)
	f.num(49, -space)
	f.str(0, "ENDTAB")

	f.table("LAYER", len(f.layers)+1)
	f.layer("0", 3, "CONTINUOUS")
	for _, l := range f.layers {
		line := "CONTINUOUS"
		if l.Dashed() {
			line = "DASHED"
		}
		f.layer(f.names[l], colour(l.Kind), line)
	}
	f.str(0, "ENDTAB")

	f.table("STYLE", 1)
	f.str(0, "STYLE")
	f.str(2, "STANDARD")
	f.textStyle()
	f.str(0, "ENDTAB")
	f.str(0, "ENDSEC")
}

func (f *r12) layer(name string, colour int, line string) {
	f.str(0, "LAYER")
	f.str(2, name)
	f.int(70, 0)
	f.int(62, colour)
	f.str(6, line)
}

// item writes one entity.
func (f *r12) item(it flat.Item) {
	layer := f.names[it.Layer]
	start := func(kind string) {
		f.str(0, kind)
		f.str(8, layer)
	}
	switch it.Shape {
	case flat.Closed:
		start("POLYLINE")
		f.int(66, 1)
		f.at(10, outline.Point{})
		f.int(70, 1) // closed
		for _, v := range it.Contour {
			start("VERTEX")
			f.at(10, v.At())
			f.bulge(v.Bulge)
		}
		start("SEQEND")
	case flat.Open:
		start("POLYLINE")
		f.int(66, 1)
		f.at(10, outline.Point{})
		f.int(70, 0) // open
		for _, v := range it.Stroke {
			start("VERTEX")
			f.at(10, v.At())
			f.bulge(v.Bulge)
		}
		start("SEQEND")
	case flat.Disc:
		start("CIRCLE")
		f.at(10, outline.Point{X: it.Circle.X, Y: it.Circle.Y})
		f.num(40, it.Circle.R)
	case flat.Line:
		start("LINE")
		f.at(10, it.From)
		f.at(11, it.To)
	case flat.Label:
		start("TEXT")
		f.writing(it)
	}
}

// Lengths of a dashed line, mm.
const (
	dash  = 6.0
	space = 3.0
)

// viewport writes what R12 and R2000 have in common of a VPORT entry.
func (t *tags) viewport(name string, v view) {
	t.str(2, name)
	t.int(70, 0)
	t.flatAt(10, outline.Point{})
	t.flatAt(11, outline.Point{X: 1, Y: 1})
	t.flatAt(12, v.middle)
	t.flatAt(13, outline.Point{})
	t.flatAt(14, outline.Point{X: 10, Y: 10})
	t.flatAt(15, outline.Point{X: 10, Y: 10})
	t.flatAt(16, outline.Point{})
	t.num(36, 1) // seen from above
	t.at(17, outline.Point{})
	t.num(40, v.height)
	t.num(41, v.ratio)
	t.num(42, 50)
	t.num(43, 0)
	t.num(44, 0)
	t.num(50, 0)
	t.num(51, 0)
	t.int(71, 0)
	t.int(72, 100)
	t.int(73, 1)
	t.int(74, 3)
	t.int(75, 0)
	t.int(76, 0)
	t.int(77, 0)
	t.int(78, 0)
}

// textStyle writes what follows the name of a STYLE entry: the plain stroke
// letters that every reader of the format has, of any height.
func (t *tags) textStyle() {
	t.int(70, 0)
	t.num(40, 0)
	t.num(41, 1)
	t.num(50, 0)
	t.int(71, 0)
	t.num(42, 2.5)
	t.str(3, "txt")
	t.str(4, "")
}

// writing writes what R12 and R2000 have in common of a TEXT.
func (t *tags) writing(it flat.Item) {
	t.at(10, it.From)
	t.num(40, it.Text.Height)
	t.str(1, escape(it.Text.Value))
	if it.Text.Angle != 0 {
		t.num(50, it.Text.Angle)
	}
	if it.Text.Middle {
		t.int(72, 1) // centred on the second place
		t.at(11, it.From)
	}
}
