package dxf

import (
	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// r2000 writes the AC1015 dialect. Handles count up from 1 in the order in
// which they are asked for, so the same drawing gets the same ones.
type r2000 struct {
	tags
	d      flat.Drawing
	layers []flat.Layer
	last   handle
	model  handle // block record of the model space: the owner of all entities
	paper  handle
	style  handle // text style
	plain  handle // plot style, the same for all layers
	root   handle // dictionaries
	groups handle
	sheets handle
	plots  handle
	layout [2]handle // of model and paper space
}

func newR2000(d flat.Drawing) *r2000 {
	f := &r2000{d: d, layers: d.Layers()}
	for _, h := range []*handle{
		&f.root, &f.groups, &f.sheets, &f.plots, &f.plain,
		&f.model, &f.paper, &f.style, &f.layout[0], &f.layout[1],
	} {
		*h = f.next()
	}
	return f
}

func (f *r2000) next() handle {
	f.last++
	return f.last
}

// file writes the sections after the header first, since the header must know
// the next free handle.
func (f *r2000) file() []byte {
	f.section("CLASSES", func() {})
	f.section("TABLES", f.tables)
	f.section("BLOCKS", f.blocks)
	f.section("ENTITIES", func() {
		for _, it := range f.d.Items {
			f.item(it)
		}
	})
	f.section("OBJECTS", f.objects)
	f.str(0, "EOF")
	body := f.b
	f.b = nil
	f.str(999, "holt: "+comment(f.d.Title)+"; all lengths in millimetres")
	f.section("HEADER", f.header)
	return append(f.b, body...)
}

func (f *r2000) section(name string, body func()) {
	f.str(0, "SECTION")
	f.str(2, name)
	body()
	f.str(0, "ENDSEC")
}

func (f *r2000) header() {
	b := f.d.Bounds
	f.str(9, "$ACADVER")
	f.str(1, "AC1015")
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
	f.str(9, "$LTSCALE")
	f.num(40, 1)
	f.str(9, "$TEXTSTYLE")
	f.str(7, "Standard")
	f.str(9, "$CLAYER")
	f.str(8, f.current())
	f.str(9, "$DIMSTYLE")
	f.str(2, "Standard")
	f.str(9, "$LUNITS")
	f.int(70, 2) // decimal
	f.str(9, "$LUPREC")
	f.int(70, 4)
	f.str(9, "$AUNITS")
	f.int(70, 0) // degrees
	f.str(9, "$HANDSEED")
	f.str(5, (f.last + 1).String())
	f.str(9, "$MEASUREMENT")
	f.int(70, 1) // metric
	f.str(9, "$INSUNITS")
	f.int(70, 4) // millimetres
}

// current is the layer on which somebody who opens the file would draw: not
// layer 0.
func (f *r2000) current() string {
	if len(f.layers) == 0 {
		return "0"
	}
	return f.layers[0].Name()
}

// table starts a table with n entries and returns its handle.
func (f *r2000) table(name string, n int) handle {
	h := f.next()
	f.str(0, "TABLE")
	f.str(2, name)
	f.str(5, h.String())
	f.str(330, "0")
	f.str(100, "AcDbSymbolTable")
	f.int(70, n)
	return h
}

// entry starts an entry of a table.
func (f *r2000) entry(kind string, h, owner handle, class string) {
	f.str(0, kind)
	code := 5
	if kind == "DIMSTYLE" {
		code = 105 // its code 5 is taken
	}
	f.str(code, h.String())
	f.str(330, owner.String())
	f.str(100, "AcDbSymbolTableRecord")
	f.str(100, class)
}

func (f *r2000) endTable() { f.str(0, "ENDTAB") }

func (f *r2000) tables() {
	t := f.table("VPORT", 1)
	f.entry("VPORT", f.next(), t, "AcDbViewportTableRecord")
	f.viewport("*Active", viewOf(f.d.Bounds))
	f.endTable()

	t = f.table("LTYPE", 4)
	for _, n := range []string{"ByBlock", "ByLayer", "Continuous"} {
		f.entry("LTYPE", f.next(), t, "AcDbLinetypeTableRecord")
		f.str(2, n)
		f.int(70, 0)
		f.str(3, "")
		f.int(72, 65)
		f.int(73, 0)
		f.num(40, 0)
	}
	f.entry("LTYPE", f.next(), t, "AcDbLinetypeTableRecord")
	f.str(2, "DASHED")
	f.int(70, 0)
	f.str(3, "Dashed __ __ __")
	f.int(72, 65)
	f.int(73, 2)
	f.num(40, dash+space)
	f.num(49, dash)
	f.int(74, 0)
	f.num(49, -space)
	f.int(74, 0)
	f.endTable()

	t = f.table("LAYER", len(f.layers)+1)
	f.layer(t, "0", 3, false)
	for _, l := range f.layers {
		f.layer(t, l.Name(), colour(l.Kind), l.Dashed())
	}
	f.endTable()

	t = f.table("STYLE", 1)
	f.entry("STYLE", f.style, t, "AcDbTextStyleTableRecord")
	f.str(2, "Standard")
	f.textStyle()
	f.endTable()

	for _, n := range []string{"VIEW", "UCS"} {
		f.table(n, 0)
		f.endTable()
	}

	t = f.table("APPID", 1)
	f.entry("APPID", f.next(), t, "AcDbRegAppTableRecord")
	f.str(2, "ACAD")
	f.int(70, 0)
	f.endTable()

	t = f.table("DIMSTYLE", 1)
	f.str(100, "AcDbDimStyleTable")
	f.int(71, 0)
	f.entry("DIMSTYLE", f.next(), t, "AcDbDimStyleTableRecord")
	f.str(2, "Standard")
	f.int(70, 0)
	f.str(340, f.style.String())
	f.endTable()

	t = f.table("BLOCK_RECORD", 2)
	for i, n := range spaces {
		f.entry("BLOCK_RECORD", [2]handle{f.model, f.paper}[i], t, "AcDbBlockTableRecord")
		f.str(2, n)
		f.str(340, f.layout[i].String())
	}
	f.endTable()
}

// spaces are the blocks that every drawing has. Never changed.
var spaces = [2]string{"*Model_Space", "*Paper_Space"}

func (f *r2000) layer(t handle, name string, colour int, dashed bool) {
	f.entry("LAYER", f.next(), t, "AcDbLayerTableRecord")
	f.str(2, name)
	f.int(70, 0)
	f.int(62, colour)
	if dashed {
		f.str(6, "DASHED")
	} else {
		f.str(6, "Continuous")
	}
	f.int(370, -3) // line width by default
	f.str(390, f.plain.String())
}

func (f *r2000) blocks() {
	for i, n := range spaces {
		owner := [2]handle{f.model, f.paper}[i]
		part := func(kind, class string) {
			f.str(0, kind)
			f.str(5, f.next().String())
			f.str(330, owner.String())
			f.str(100, "AcDbEntity")
			if i == 1 {
				f.int(67, 1) // in paper space
			}
			f.str(8, "0")
			f.str(100, class)
		}
		part("BLOCK", "AcDbBlockBegin")
		f.str(2, n)
		f.int(70, 0)
		f.at(10, outline.Point{})
		f.str(3, n)
		f.str(1, "")
		part("ENDBLK", "AcDbBlockEnd")
	}
}

// item writes one entity.
func (f *r2000) item(it flat.Item) {
	start := func(kind, class string) {
		f.str(0, kind)
		f.str(5, f.next().String())
		f.str(330, f.model.String())
		f.str(100, "AcDbEntity")
		f.str(8, it.Layer.Name())
		f.str(100, class)
	}
	switch it.Shape {
	case flat.Closed:
		start("LWPOLYLINE", "AcDbPolyline")
		f.int(90, len(it.Contour))
		f.int(70, 1) // closed
		f.num(43, 0) // no width
		for _, v := range it.Contour {
			f.flatAt(10, v.At())
			f.bulge(v.Bulge)
		}
	case flat.Open:
		start("LWPOLYLINE", "AcDbPolyline")
		f.int(90, len(it.Stroke))
		f.int(70, 0) // open
		f.num(43, 0) // no width
		for _, v := range it.Stroke {
			f.flatAt(10, v.At())
			f.bulge(v.Bulge)
		}
	case flat.Disc:
		start("CIRCLE", "AcDbCircle")
		f.at(10, outline.Point{X: it.Circle.X, Y: it.Circle.Y})
		f.num(40, it.Circle.R)
	case flat.Line:
		start("LINE", "AcDbLine")
		f.at(10, it.From)
		f.at(11, it.To)
	case flat.Label:
		start("TEXT", "AcDbText")
		f.writing(it)
		f.str(100, "AcDbText")
	}
}
