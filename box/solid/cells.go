package solid

// Cells is Pieces with the prisms taken out too, their outlines flattened
// within chord mm. Face IDs tell nothing apart.
func (b Body) Cells(chord float64) []Convex {
	cells := b.Pieces()
	for _, p := range b.Prisms {
		for _, cutter := range p.cutters(chord) {
			var next []Convex
			for _, c := range cells {
				_, rest := Split(c, cutter)
				next = append(next, rest...)
			}
			cells = next
		}
	}
	return cells
}
