package box

import (
	"fmt"
	"math"

	"holt.example/joints"
)

// band is a layer of the joint between two strips, from w = from to w = to over
// the inner plane: the first strip ends at end and the next begins at begin,
// reckoned across the grain from where the first one's face ends.
type band struct{ from, to, end, begin float64 }

// profile is the joint between two strips: bands that fill the thickness, from
// the inner plane out.
type profile struct {
	bands     []band
	most      float64 // by which a strip is wider than what shows of it
	least     float64 // that must show of a strip, so that its edges are sound
	gap, play float64
	tongue    *tongue
	glued     bool
	// What the panel's edges say of the side to the right (or above), and of the
	// other.
	high, low string
	work      joints.Work // of what the first strip loses
}

// tongue is a loose one.
type tongue struct {
	width, from, t float64
	board          Board
}

// reach is how far past the end of its face the first strip reaches, and where
// the next one begins, in the layer from w = from to w = to.
func (p *profile) reach(from, to float64) (end, begin float64) {
	end, begin = math.Inf(-1), math.Inf(1)
	for _, b := range p.bands {
		if b.from < to && b.to > from {
			end, begin = math.Max(end, b.end), math.Min(begin, b.begin)
		}
	}
	return end, begin
}

func third(t float64) float64 {
	if x := math.Round(t/3*2) / 2; x > 0 {
		return x
	}
	return t / 3
}

// looseThick is the usual thickness of a loose tongue: about a quarter of the part's,
// in half millimetres, so that housings of the usual depth, a third, pass it by on
// either side with their play and 0.2 of wood. In thin parts it is a third.
func looseThick(t float64) float64 {
	deep := third(t) + float64(joints.DefaultPlay)*3/2 + 0.2
	if x := math.Floor((t-2*deep)*2+1e-9) / 2; x >= t/5 {
		return x
	}
	return third(t)
}

func (EdgeGlued) check(*collector, string) {}
func (EdgeGlued) words() string            { return "edge-glued" }

func (EdgeGlued) profile(_ *collector, _ string, t, _ float64) (profile, bool) {
	return profile{bands: []band{{0, t, 0, 0}}, least: minLength, glued: true, high: "is glued to it", low: "is glued to it"}, true
}

// leastCheek is the wood, in mm, that stays on each side of a groove, and over
// and under a lap: common practice is as thick as the tongue, and this breaks
// when it is handled.
const leastCheek = 1.5

func (j LooseTongue) words() string { return "loose tongue" }

func (j LooseTongue) check(c *collector, path string) {
	if j.Width != 0 {
		c.within(path+".Width", float64(j.Width), 4, 200, "mm", "width of a loose tongue; 0 is the thickness of the part")
	}
	c.board(path+".Board", j.Board, false)
	c.within(path+".Play", float64(j.Play), 0, 2, "mm", "room for a loose tongue; 0 is 0.2")
}

func (j LooseTongue) profile(c *collector, path string, t, least float64) (profile, bool) {
	play := mmOr(j.Play, float64(joints.DefaultPlay))
	x := tongue{width: float64(j.Width), board: j.Board, t: j.Board.most()}
	field := ".Board.Thickness"
	if j.Board == (Board{}) {
		x.t, field = looseThick(t), ""
	}
	if x.width == 0 {
		x.width = math.Max(4, t)
	}
	if !c.within(path+field, x.t, minThickness, least-2*leastCheek-play, "mm", fmt.Sprintf("thickness of a loose tongue in a part %s thick, with %s of play", num(least), num(play))) {
		return profile{}, false
	}
	x.from = (t - x.t) / 2
	deep := x.width/2 + play
	return profile{
		bands: []band{{0, x.from - play/2, 0, 0}, {x.from - play/2, x.from + x.t + play/2, -deep, deep}, {x.from + x.t + play/2, t, 0, 0}},
		play:  play, least: 3 * deep,
		tongue: &x, glued: true, high: "is grooved for a loose tongue", low: "is grooved for a loose tongue",
		work: joints.Housed,
	}, true
}

func (j TongueGroove) words() string { return "tongue and groove" }

func (j TongueGroove) check(c *collector, path string) {
	if j.Tongue != 0 {
		c.within(path+".Tongue", float64(j.Tongue), 2, 100, "mm", "length of a tongue; 0 is its thickness")
	}
	if j.Thickness != 0 {
		c.within(path+".Thickness", float64(j.Thickness), minThickness, maxThickness, "mm", "thickness of a tongue; 0 is a third of the part's")
	}
	c.within(path+".Play", float64(j.Play), 0, 2, "mm", "room for a tongue; 0 is 0.2")
	c.within(path+".Gap", float64(j.Gap), 0, 50, "mm", "gap between strips")
}

func (j TongueGroove) profile(c *collector, path string, t, least float64) (profile, bool) {
	play, thick, long, gap := mmOr(j.Play, float64(joints.DefaultPlay)), float64(j.Thickness), float64(j.Tongue), float64(j.Gap)
	field := ".Thickness"
	if thick == 0 {
		thick, field = third(t), ""
	}
	if long == 0 {
		long = math.Max(2, thick)
	}
	ok := c.within(path+field, thick, minThickness, least-2*leastCheek-play, "mm", fmt.Sprintf("thickness of a tongue in a part %s thick, with %s of play", num(least), num(play)))
	ok = c.within(path+".Gap", gap, 0, long-1, "mm", fmt.Sprintf("gap between strips with a tongue %s long, which keeps 1 in its groove", num(long))) && ok
	if !ok {
		return profile{}, false
	}
	from, to := (t-thick)/2, (t+thick)/2
	p := profile{
		bands: []band{
			{0, from - play/2, 0, gap}, {from - play/2, from, 0, long + play}, {from, to, long, long + play},
			{to, to + play/2, 0, long + play}, {to + play/2, t, 0, gap},
		},
		most: long, least: 3 * long, gap: gap, play: play, glued: !j.Dry, high: "has its tongue", low: "is grooved", work: joints.Rebating,
	}
	return p, true
}

func (j Shiplap) words() string { return "shiplap" }

func (j Shiplap) check(c *collector, path string) {
	c.within(path+".Lap", float64(j.Lap), 3, 200, "mm", "lap of boarding")
	c.within(path+".Gap", float64(j.Gap), 0, 50, "mm", "gap between strips")
}

func (j Shiplap) profile(c *collector, path string, t, least float64) (profile, bool) {
	lap, gap := float64(j.Lap), float64(j.Gap)
	ok := c.within(path+".Gap", gap, 0, lap-1, "mm", fmt.Sprintf("gap between strips that lap by %s: 1 must be left", num(lap)))
	if least-t/2 < leastCheek {
		c.add(Problem{Path: path, Code: "range", Got: num(least), Lo: t/2 + leastCheek, Hi: maxThickness, Unit: "mm", Why: "a part this thin leaves no half to lap over"})
		ok = false
	}
	return profile{
		bands: []band{{0, t / 2, lap, lap + gap}, {t / 2, t, 0, gap}},
		most:  lap, least: 2 * lap, gap: gap, high: "runs on behind it", low: "laps over it", work: joints.Rebating,
	}, ok
}
