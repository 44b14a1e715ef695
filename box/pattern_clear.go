package box

import "holt.example/box/outline"

// before is what features that are listed earlier have put onto a part, for a
// pattern to stay clear of.
type before struct {
	p       *part
	feats   *bins
	strokes *bins
	lines   []*line // by stroke
	paths   []outline.Path
}

func (p *part) listedBefore() before {
	b := before{p: p, feats: newBins(p.boxes())}
	var boxes []outline.Box
	for i := range p.engraved {
		l := &p.engraved[i]
		for _, t := range l.strokes {
			b.lines, b.paths = append(b.lines, l), append(b.paths, t)
			boxes = append(boxes, grow(t.Extents(), l.band()))
		}
	}
	b.strokes = newBins(boxes)
	return b
}

// clearOf reports whether a motif, or a line with so much on both sides, stays clear
// of what is there before it; a clearance of 0 asks nothing.
func (b before) clearOf(e outline.Box, clear, band float64, meets func(outline.Contour) bool, crosses func(*line, outline.Path) bool) bool {
	if clear == 0 {
		return true
	}
	free := true
	e = grow(e, clear+band)
	b.feats.near(e, func(k int) { free = free && !meets(b.p.feats[k].outline) })
	b.strokes.near(e, func(k int) { free = free && !crosses(b.lines[k], b.paths[k]) })
	return free
}

// meetsFace reports whether a pattern so deep and a line are on one face, or meet in
// the wood from both.
func (f Pattern) meetsFace(p *part, l *line, depth float64) bool {
	return l.from == f.From || depth == 0 || depth+l.depth >= p.face.least
}
