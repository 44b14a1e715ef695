package main

// Where the tests are that should see a fault.
const (
	plans   = "./box ./box/outline ./box/solid"
	flats   = "./box ./render ./render/bom ./render/dxf ./render/svg ./render/internal/sample"
	writers = "./render/dxf ./render/svg ./render/stl ./render/bom"
)

// The faults are slips that a maker's own arithmetic makes, and slips of this
// library's: each is a line that was right, made wrong.
var faults = []fault{
	{"radius for diameter", "box/outline/outline.go", "r := diameter / 2", "r := diameter", plans},
	{"nominal for measured thickness", "box/collect.go", "for _, x := range []MM{b.Most, b.Measured, b.Thickness} {", "for _, x := range []MM{b.Thickness, b.Most, b.Measured} {", "./box"},
	{"most for least thickness", "box/collect.go", "for _, x := range []MM{b.Least, b.Measured, b.Thickness} {", "for _, x := range []MM{b.Most, b.Measured, b.Thickness} {", "./box"},
	{"bevel with the wrong sign", "box/panel.go", "e.Bevel = Deg(-math.Asin(up) * 180 / math.Pi)", "e.Bevel = Deg(math.Asin(up) * 180 / math.Pi)", flats},
	{"run of the bevel along the slope", "box/panel.go", "e.Run = MM(-p.face.t * up / flatN)", "e.Run = MM(-p.face.t * up * flatN)", flats},
	{"v down", "box/panel.go", "g.U, g.W = g.U.Scale(-1), g.W.Scale(-1)", "g.V, g.W = g.V.Scale(-1), g.W.Scale(-1)", flats},
	{"panel not mirrored for the inner face", "box/panel.go", "return c.Transform(outline.MirrorX())", "return c", flats},
	{"machined face on the other side", "box/panel.go", "if outer > inner {", "if outer >= inner {", flats},
	{"height of a hole to its centre", "box/lower.go", "float64(f.Above)/cl-o.Extents().Min.Y", "float64(f.Above)/cl", "./box"},
	{"height of a hole along a leaning wall", "box/lower.go", "float64(f.Above)/cl-o", "float64(f.Above)*cl-o", "./box"},
	{"outside height without the floor", "box/size.go", "return outer + s.lower - least", "return outer - least", "./box"},
	{"outside width across the lean", "box/size.go", "f.d -= f.t/cs + float64", "f.d -= f.t*cs + float64", "./box"},
	{"raise left out", "box/edges.go", "return float64(f.Raise)", "return 0 * float64(f.Raise)", "./box"},
	{"back runs on from the floor's upper side", "box/edges.go", "return a.below", "return a.below - b.t", "./box"},
	{"overhang along a leaning wall", "box/slopes.go", "return f.over * cl", "return f.over / cl", "./box"},
	{"roof through the outer eaves", "box/slopes.go", "float64(s.height*cs)+float64(e*sn))", "float64(s.height*cs))", "./box"},
	{"order from the ranks where all joints together say it", "box/order.go", "r := g.say(i, j)", "r := usual(i, j)", "./box"},
	{"a cutter that runs out past its guest", "box/build.go", "if !z.Through {", "if z.Through {", "./box"},
	{"mitre planes without thicknesses", "box/build.go", "b.in.D/b.t-a.in.D/a.t)}", "b.in.D-a.in.D)}", "./box"},
	{"equal parts that are only mirrored", "box/equal.go", "if t.mirror {", "if false {", "./box"},
	{"plane rounded too coarsely", "box/solid/vec.go", "D: roundTo(d/l, 30),", "D: roundTo(d/l, 8),", plans},
	{"side test ten thousand times too coarse", "box/solid/convex.go", "const SideTest = 1e-7", "const SideTest = 1e-3", "./box/solid"},
	{"polygons in the circle, not of its area", "box/outline/flatten.go", "return math.Sqrt(p / s)", "return 1 + 0*s", plans},
	{"rebate too deep by a tenth", "joints/rebate.go", "Keep: []Line{aBelow(d)},", "Keep: []Line{aBelow(d - 0.1)},", "./joints ./box"},
	{"housing without its play", "joints/housing.go", "bBelow(tB + play)}, Housed,", "bBelow(tB)}, Housed,", "./joints ./box"},
	{"drawing in inches", "render/dxf/r2000.go", "f.int(70, 4) // millimetres", "f.int(70, 1)", writers},
	{"arcs as straight lines", "render/dxf/tags.go", "if x == 0 {", "if x != 0 {", writers},
	{"triangles inside out", "render/stl/round.go", "facets = append(facets, facet{b.Sub(a).Cross(c.Sub(a)).Unit(), a, b, c})", "facets = append(facets, facet{c.Sub(a).Cross(b.Sub(a)).Unit(), a, c, b})", writers},
	{"picture upside down", "render/svg/encode.go", "f.num(f.y1 - it.Circle.Y)", "f.num(it.Circle.Y)", writers},
	{"guests rounded up", "render/bom/round.go", "grid(math.Floor((x+near)/step), step)", "grid(math.Ceil((x+near)/step), step)", writers},
	{"who stops whom, the wrong way round", "box/assembly_shadow.go", "if g.depth(p.lump, at) > g.depth(q.lump, at) {", "if g.depth(p.lump, at) < g.depth(q.lump, at) {", "./box"},
	{"shadows taken for their bounds", "box/assembly_shadow.go", "parting(a.hull, b.hull, gap) || parting(b.hull, a.hull, gap) {", "false {", "./box"},
	{"play on the wrong side", "box/opens_way.go", "lim[w.face][j][k].Shift(-room)", "lim[w.face][j][k].Shift(room)", "./box"},
	{"hinges that open inward", "box/opens_way.go", "Dot(p.face.in.N) < 0 {", "Dot(p.face.in.N) > 0 {", "./box"},
	{"swings looked at in their middle only", "box/motion.go", "if m.turn && t.peaks(lo, hi) {", "if false {", "./box"},
	{"parts on one side of the joint only", "box/assembly_leave.go", "if stop[k].has(j) && among.has(j) && !seen.has(j) {", "if stop[k].has(j) && among.has(j) && !seen.has(j) && k == i {", "./box"},
	{"holes that let nothing through", "box/assembly_order.go", "if open[i] && len(ps[i].Body.Prisms) > 0 {", "if !open[i] && len(ps[i].Body.Prisms) > 0 {", "./box"},
	{"glue forgotten", "box/seams.go", "Greatest: e.sec.Greatest, Holds: append([]joints.Hold(nil), e.sec.Holds...)}", "Greatest: e.sec.Greatest, Holds: nil}", "./box ./render"},
	{"variants that skip the last axis", "box/variants.go", "k := len(at) - 1\n", "k := len(at) - 2\n", "./box"},
	{"test pieces all of one clearance", "box/sample.go", "return f.Fit(play)", "return f.Fit(0*play + 0.2)", "./box"},
	{"a floor that moved is not seen", "box/boxtest/fits.go", "!(math.Abs(v-declared) <= crumb) {", "!(math.Abs(v-declared) <= 1e3) {", "./box/boxtest"},
	{"parts turned the wrong way on a sheet", "box/batch/batch.go", "p.Lay = outline.Turn(q.Turn)", "p.Lay = outline.Turn(-q.Turn)", "./box/batch"},
	{"worked parts turned over", "box/batch/parts.go", "b.job.Rough == NoFace && !oneFace(w.base)", "b.job.Rough == NoFace", "./box/batch"},
	{"equal parts all of one name", "box/batch/parts.go", "return n / len(w.names), n % len(w.names)", "return n / len(w.names), 0", "./box/batch"},
	{"depth from the same face when turned over", "box/batch/turn.go", "o.From, o.To = t-o.To, t-o.From", "o.From, o.To = o.From, o.To", "./box/batch"},
	{"grain of a square part on other stock", "box/layout/nest.go", "along := p.Grain == NoGrain ||", "along := true ||", "./box/layout ./box/batch"},
}
