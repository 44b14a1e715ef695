package dxf

import "holt.example/box/outline"

// objects writes the dictionaries without which strict readers refuse the
// dialect: groups (none), layouts (of model and paper space) and plot styles
// (one, for all layers).
func (f *r2000) objects() {
	f.dictionary("DICTIONARY", f.root, 0,
		named{"ACAD_GROUP", f.groups}, named{"ACAD_LAYOUT", f.sheets}, named{"ACAD_PLOTSTYLENAME", f.plots})
	f.dictionary("DICTIONARY", f.groups, f.root)
	f.dictionary("DICTIONARY", f.sheets, f.root, named{"Model", f.layout[0]}, named{"Layout1", f.layout[1]})
	f.dictionary("ACDBDICTIONARYWDFLT", f.plots, f.root, named{"Normal", f.plain})
	f.str(100, "AcDbDictionaryWithDefault")
	f.str(340, f.plain.String())
	f.str(0, "ACDBPLACEHOLDER")
	f.str(5, f.plain.String())
	f.str(330, f.plots.String())
	f.layoutObject(0, "Model", f.d.Bounds, f.model)
	f.layoutObject(1, "Layout1", outline.Box{Max: outline.Point{X: 297, Y: 210}}, f.paper)
}

// named is an entry of a dictionary.
type named struct {
	name string
	is   handle
}

func (f *r2000) dictionary(kind string, h, owner handle, entries ...named) {
	f.str(0, kind)
	f.str(5, h.String())
	f.str(330, owner.String())
	f.str(100, "AcDbDictionary")
	f.int(281, 1) // keep the first of two equal names
	for _, e := range entries {
		f.str(3, e.name)
		f.str(350, e.is.String())
	}
}

// layoutObject writes a LAYOUT with plot settings that set nothing.
func (f *r2000) layoutObject(i int, name string, b outline.Box, space handle) {
	f.str(0, "LAYOUT")
	f.str(5, f.layout[i].String())
	f.str(330, f.sheets.String())
	f.str(100, "AcDbPlotSettings")
	f.str(1, "")
	f.str(2, "")
	f.str(4, "")
	f.str(6, "")
	for c := 40; c <= 49; c++ {
		f.num(c, 0)
	}
	f.num(140, 0)
	f.num(141, 0)
	f.num(142, 1) // scale 1:1
	f.num(143, 1)
	model := 0
	if i == 0 {
		model = 1024
	}
	f.int(70, model)
	f.int(72, 1) // paper in mm
	f.int(73, 0)
	f.int(74, 5)
	f.str(7, "")
	f.int(75, 16) // 1:1
	f.num(147, 1)
	f.num(148, 0)
	f.num(149, 0)
	f.str(100, "AcDbLayout")
	f.str(1, name)
	f.int(70, 1)
	f.int(71, i)
	f.flatAt(10, b.Min)
	f.flatAt(11, b.Max)
	f.at(12, outline.Point{})
	f.at(14, b.Min)
	f.at(15, b.Max)
	f.num(146, 0)
	f.at(13, outline.Point{})
	f.at(16, outline.Point{X: 1})
	f.at(17, outline.Point{Y: 1})
	f.int(76, 0)
	f.str(330, space.String())
}
