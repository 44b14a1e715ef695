package solid

// Volume is the volume of the body, mm3, round outlines as facets within chord
// mm that enclose their true area. Where all prisms are clear of each other and
// of the edges, it is the sum of the convex pieces less the prisms; else it is
// that of the mesh, whose errors it returns. A body of which nothing is left
// has the volume 0 and the error ErrEmpty.
func (b Body) Volume(chord float64) (float64, error) {
	base, err := b.bounded()
	if err != nil {
		return 0, err
	}
	cells := b.Pieces()
	if len(b.Prisms) == 0 {
		if len(cells) == 0 {
			return 0, ErrEmpty
		}
		return VolumeOf(cells), nil
	}
	s := b.newShell(base, weldRadii[0])
	var groups int32
	v := 0.0
	cols, err := s.solveColumns(b.Prisms, chord, &groups)
	if err != nil {
		return 0, err
	}
	for _, c := range cols {
		if c.slow {
			m, err := b.Mesh(chord)
			if err != nil {
				return 0, err
			}
			return m.Volume(), nil
		}
		v -= c.volume()
	}
	return v + VolumeOf(cells), nil
}

// volume is what a column takes out: over each triangle of a fan the mean of
// the heights at its corners, which are linear in u and v.
func (c *column) volume() float64 {
	v := 0.0
	for _, s := range c.spans {
		h := func(i int) float64 { return s.hi[i] - s.lo[i] }
		for i := 1; i+1 < len(c.pts); i++ {
			a, b, d := c.pts[0], c.pts[i], c.pts[i+1]
			t := float64((b.X-a.X)*(d.Y-a.Y)) - float64((d.X-a.X)*(b.Y-a.Y))
			v += float64(t*(h(0)+h(i)+h(i+1))) / 6
		}
	}
	return v
}
