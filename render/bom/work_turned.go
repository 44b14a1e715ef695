package bom

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// turnOver describes the part as it lies when it has been turned over like the page
// of a book, as the drawing shows it: mirrored, with the far face up. Who works there
// measures from the left that he sees.
func (d *describer) turnOver() {
	m := outline.MirrorX()
	up := d.p.Panel.Far
	if len(up) == 0 {
		up = d.p.Panel.Machined
	}
	d.p.Panel.Machined = up.Transform(m)
	edges := make([]box.PanelEdge, len(d.p.Panel.Edges))
	for i, e := range d.p.Panel.Edges {
		// Run the other way round, so that the part still lies on its left.
		e.From, e.To = outline.Point{X: -e.To.X, Y: e.To.Y}, outline.Point{X: -e.From.X, Y: e.From.Y}
		edges[i] = e
	}
	d.p.Panel.Edges = edges
	d.names = edgeNames(d.p.Panel)
	d.op.Region = copyRegion(d.op.Region).Transform(m)
	strokes := make([]outline.Path, len(d.op.Strokes))
	for i, t := range d.op.Strokes {
		strokes[i] = append(outline.Path(nil), t...).Transform(m)
	}
	d.op.Strokes = strokes
}
