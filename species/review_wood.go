package species

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"holt.example/box"
	"holt.example/species/internal/near"
	"holt.example/species/timber"
)

// grainUp wants the grain of solid walls within 45 degrees of upright.
func grainUp(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.pieces {
		p := &l.pieces[i]
		if !isWall(p.Part) || !p.solidWood() {
			continue
		}
		g := p.Home.U.Scale(p.Panel.Grain[0]).Add(p.Home.V.Scale(p.Panel.Grain[1]))
		if math.Abs(g.Z) < math.Sqrt2/2 {
			f := r.finding(p.Part, box.Place{}, 0)
			f.Why = fmt.Sprintf("the grain of %s lies level. %s", p.Part, r.Why)
			out = append(out, f)
		}
	}
	return out
}

// grainShort looks at parts as they stand, for strips that are glued hold together;
// small ones are left alone.
func grainShort(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.pieces {
		if p := &l.pieces[i]; p.solidWood() && p.Length > 0 && p.Width > shortest {
			f := r.against(p.Part, box.Place{}, float64(p.Width/p.Length), math.NaN())
			for k := range f {
				f[k].Why = fmt.Sprintf("%s is %s mm along the grain and %s across it. %s", p.Part, tenth(float64(p.Length)), tenth(float64(p.Width)), r.Why)
			}
			out = append(out, f...)
		}
	}
	return out
}

// panelWide looks at single boards: of a made-up part at its strips.
func panelWide(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.strips {
		p := &l.strips[i]
		of := p.Part
		if p.Of != "" {
			of = p.Of
		}
		if p.solidWood() && (isWall(of) || isRoof(of)) {
			out = append(out, r.against(p.Part, box.Place{}, float64(p.Width), math.NaN())...)
		}
	}
	return out
}

// movement compares the play of what walls hold between them, the floor and inner
// parts, with what its width across the grain needs: 0.25 % for each per cent of
// moisture content. What runs out under the walls, has an open side across its
// grain, or is not of boards, is free. A part made up of strips that stay dry
// moves strip by strip, each into its own gap.
func movement(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.pieces {
		p := &l.pieces[i]
		if k := slices.IndexFunc(l.wholes, func(w box.Whole) bool { return w.Part == p.Part && !w.Glued }); k >= 0 {
			out = append(out, l.stripMovement(l.wholes[k], r)...)
			continue
		}
		if p.Part != box.Floor && !strings.HasPrefix(string(p.Part), "inner/") {
			continue
		}
		play, held := l.heldAcross(p)
		if !held {
			continue
		}
		across, _ := p.across()
		have := float64(math.Abs(across.X)*(p.max.X-p.min.X)) + float64(math.Abs(across.Y)*(p.max.Y-p.min.Y)) + float64(math.Abs(across.Z)*(p.max.Z-p.min.Z))
		need := swells(have, l.site.swing())
		if play >= need-tiny {
			continue
		}
		f := r.finding(p.Part, box.Place{}, math.Max(play, 0))
		f.Lo, f.Hi, f.Unit = need, math.Inf(1), "mm"
		f.Why = fmt.Sprintf("%s is %s mm wide across the grain with %s of play, %s needed. %s", p.Part, tenth(have), tenth(f.Got), tenth(need), r.Why)
		out = append(out, f)
	}
	return out
}

// heldAcross is the play of a part across its grain, where walls hold it on both
// sides.
func (l *look) heldAcross(p *piece) (play float64, ok bool) {
	across, ok := p.across()
	if !ok {
		return 0, false
	}
	held := 0
	for i := range l.pieces {
		w := &l.pieces[i]
		if c := w.outward.Dot(across); !isWall(w.Part) || c*c < 0.5 {
			continue
		}
		room := w.channel(p.Part) - w.reach(p)
		if room < -tiny {
			return 0, false // it runs out under this wall
		}
		if p.Part != box.Floor && room > 5 {
			return 0, false // it ends well before this wall
		}
		play += room
		held++
	}
	return play, held > 1
}

// gapOf is the gap between the strips of a made-up part, in mm.
func (l *look) gapOf(w box.Whole) float64 {
	n := float64(len(w.Strips))
	if n < 2 || w.Glued {
		return 0
	}
	gap := (float64(w.Width) - float64(n*float64(w.Cover))) / (n - 1)
	return math.Max(0, math.Round(gap*1e6)/1e6)
}

// stripMovement looks at the gaps between strips that stay dry.
func (l *look) stripMovement(w box.Whole, r Rule) []box.Finding {
	n := len(w.Strips)
	if n < 2 {
		return nil
	}
	gap, wide := l.gapOf(w), 0.0
	for i := range l.strips {
		if p := &l.strips[i]; p.Of == w.Part && slices.Contains(w.Strips, p.Part) {
			wide = math.Max(wide, float64(p.Width))
		}
	}
	need := swells(wide, l.site.swing())
	if gap >= need-tiny {
		return nil
	}
	f := r.finding(w.Part, box.Place{}, gap)
	f.Lo, f.Hi, f.Unit = need, math.Inf(1), "mm"
	f.Why = fmt.Sprintf("the strips of %s are %s mm wide with gaps of %s, %s needed. %s", w.Part, tenth(wide), tenth(f.Got), tenth(need), r.Why)
	return []box.Finding{f}
}

// channel is how deep a wall is cut from inside to take a part; 0 if it is not.
func (p *piece) channel(guest box.Part) float64 {
	deep := 0.0
	for _, op := range p.Panel.Ops {
		if op.Guest != guest && !strings.HasPrefix(string(op.Guest), string(guest)+"/") {
			continue
		}
		d := float64(op.To)
		if p.Panel.Face != box.FromInner {
			d = float64(p.Thickness - op.From)
		}
		deep = math.Max(deep, d)
	}
	return deep
}

// reach is how far a part passes the inner face of the wall; negative if it
// falls short.
func (p *piece) reach(q *piece) float64 {
	out := math.Inf(-1)
	for _, v := range q.corners {
		out = math.Max(out, p.outward.Dot(v)-p.inner)
	}
	return out
}

// tenth writes mm to a tenth, as people read them.
func tenth(x float64) string { return num(math.Round(x*10) / 10) }

// materials lists the distinct materials of a plan that a test picks, with the
// first part of each.
func (l *look) materials(pick func(material string) bool) []*piece {
	seen := map[string]bool{}
	var out []*piece
	for i := range l.pieces {
		p := &l.pieces[i]
		m := strings.ToLower(p.Board.Material)
		if !seen[m] && pick(m) {
			out = append(out, p)
		}
		seen[m] = true
	}
	return out
}

// foundWood is the wood of a material, or why there is none; like is one that will do
// for what does not depend on the place that it grew in.
type foundWood struct {
	timber.Wood
	err  error
	like bool
}

// woodNamed is timber.Get, asked once for each material: to look for a name that is
// not there takes long.
func (l *look) woodNamed(material string) (timber.Wood, error) {
	w := l.found(material)
	if w.err != nil {
		return timber.Wood{}, w.err
	}
	return w.Wood, nil
}

// woodOf is woodNamed, or of a name that the tables part by place, "Douglas-fir,
// coast", the first. What is weighed is not guessed so.
func (l *look) woodOf(material string) (timber.Wood, bool) {
	w := l.found(material)
	return w.Wood, w.err == nil || w.like
}

func (l *look) found(material string) foundWood {
	w, known := l.woods[material]
	if known {
		return w
	}
	if w.Wood, w.err = timber.Get(material); w.err != nil {
		name := near.Fold(near.Wood(material))
		for _, x := range timber.Woods() {
			if first, _, ok := strings.Cut(x.Name, ","); ok && near.Fold(first) == name {
				w.Wood, w.like = x, true
				break
			}
		}
	}
	if l.woods == nil {
		l.woods = map[string]foundWood{}
	}
	l.woods[material] = w
	return w
}

// hasWord says that a text has one of the words, as a whole word.
func hasWord(text string, words ...string) bool {
	for _, x := range strings.FieldsFunc(lower(text), func(c rune) bool { return !unicode.IsLetter(c) }) {
		if slices.Contains(words, x) {
			return true
		}
	}
	return false
}

func lower(s string) string { return strings.ToLower(s) }

func has(s string, words ...string) bool {
	for _, w := range words {
		if strings.Contains(s, w) {
			return true
		}
	}
	return false
}

func treated(l *look, r Rule) []box.Finding {
	return l.named(r, func(m string) bool {
		m = harmless.Replace(m)
		return has(m, "treated", "creosote", "tanalised", "impregnated") && !has(m, "untreated", "not treated")
	})
}

// harmless leaves out what wood is treated with that leaves nothing in it, or plain
// oil; what else a name says still counts.
var harmless = strings.NewReplacer(
	"heat-treated", "", "heat treated", "", "thermally-treated", "", "thermally treated", "",
	"thermo-treated", "", "thermo treated", "", "thermotreated", "", "oil-treated", "", "oil treated", "")

func sheet(l *look, r Rule) []box.Finding {
	return l.named(r, func(m string) bool {
		return has(m, "chipboard", "particle board", "osb", "mdf", "hardboard", "interior plywood", "indoor plywood")
	})
}

// named reports materials by their names: what a word on the order says.
func (l *look) named(r Rule, pick func(string) bool) []box.Finding {
	var out []box.Finding
	for _, p := range l.materials(pick) {
		f := r.finding(p.Part, box.Place{}, 1)
		f.Why = fmt.Sprintf("%s is of %.80q. %s", p.Part, p.Board.Material, r.Why)
		out = append(out, f)
	}
	return out
}

// durability asks the tables for a material that is the name of a wood.
func durability(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for _, p := range l.materials(func(string) bool { return true }) {
		w, known := l.woodOf(p.Board.Material)
		if !known {
			continue
		}
		best, worst, ok := w.Durability()
		if !ok || float64(worst) <= r.Range.Hi {
			continue
		}
		f := r.finding(p.Part, box.Place{}, float64(worst))
		class := fmt.Sprint(worst)
		if best != worst {
			class = fmt.Sprintf("%d to %d", best, worst)
		}
		f.Why = fmt.Sprintf("%s is of class %s. %s A coating or a good roof makes up for it.", w.Name, class, r.Why)
		out = append(out, f)
	}
	return out
}

// mass adds up the parts whose boards state a density, or whose material names a
// wood of known density; others weigh nothing here (Weigh refuses them).
func (l *look) mass() float64 {
	sum := 0.0
	for i := range l.pieces {
		p := &l.pieces[i]
		m := p.Mass
		if m == 0 {
			if w, ok := l.woodOf(p.Board.Material); ok {
				if d, ok := w.Density(); ok {
					m, _ = timber.Mass(p.Volume, d.Value)
				}
			}
		}
		sum += m
	}
	return sum
}

// heavy is the mass in kg from which a fixing needs a stated load.
const heavy = 10

func mass(l *look, r Rule) []box.Finding {
	sum := l.mass()
	if !(sum > heavy) {
		return nil
	}
	f := r.finding("", box.Place{}, sum)
	f.Lo, f.Hi, f.Unit = 0, heavy, "kg"
	f.Why = fmt.Sprintf("the box weighs %s kg without fixings, and a fixing rated for several times that is needed. %s", tenth(sum), r.Why)
	return []box.Finding{f}
}
