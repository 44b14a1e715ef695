package species

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box"
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
			f.Why = fmt.Sprintf("the grain of %s lies level: %s", p.Part, r.Why)
			out = append(out, f)
		}
	}
	return out
}

func panelWide(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for i := range l.pieces {
		if p := &l.pieces[i]; p.solidWood() && (isWall(p.Part) || isRoof(p.Part)) {
			out = append(out, r.against(p.Part, box.Place{}, float64(p.Width), math.NaN())...)
		}
	}
	return out
}

// seasons is the change of moisture content, in %, that movement is reckoned
// for: the least of rule movement-mc, what a box under its own roof sees.
const seasons = 4

// movement compares the play of a floor that walls hold between them with what
// its width across the grain needs: 0.25 % for each per cent of moisture content.
// A floor that runs out under the walls, that has an open side across its grain,
// or that is not of boards, is free.
func movement(l *look, r Rule) []box.Finding {
	p := l.piece(box.Floor)
	if p == nil || !p.solidWood() {
		return nil
	}
	across := p.Home.U.Scale(-p.Panel.Grain[1]).Add(p.Home.V.Scale(p.Panel.Grain[0]))
	play, held := 0.0, 0
	for i := range l.pieces {
		w := &l.pieces[i]
		if c := w.outward.Dot(across); !isWall(w.Part) || c*c < 0.5 {
			continue
		}
		room := w.channel(box.Floor) - w.reach(p)
		if room < -tiny {
			return nil // the floor runs out under this wall
		}
		play += room
		held++
	}
	if held < 2 {
		return nil
	}
	have := math.Abs(across.X)*(p.max.X-p.min.X) + math.Abs(across.Y)*(p.max.Y-p.min.Y)
	need, err := timber.Movement(box.MM(have), timber.EuropeanSoftwoodPerCent/100, 12, 12+seasons)
	if err != nil || play >= float64(need)-tiny {
		return nil
	}
	f := r.finding(p.Part, box.Place{}, math.Max(play, 0))
	f.Lo, f.Hi, f.Unit = float64(need), math.Inf(1), "mm"
	f.Why = fmt.Sprintf("%s is %s mm wide across the grain with %s of play, %s needed: %s", p.Part, tenth(have), tenth(f.Got), tenth(float64(need)), r.Why)
	return []box.Finding{f}
}

// channel is how deep a wall is cut from inside to take a part; 0 if it is not.
func (p *piece) channel(guest box.Part) float64 {
	deep := 0.0
	for _, op := range p.Panel.Ops {
		if op.Guest != guest {
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
		return has(m, "treated", "creosote", "tanalised", "impregnated") && !has(m, "untreated", "not treated")
	})
}

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
		f.Why = fmt.Sprintf("%s is of %.80q: %s", p.Part, p.Board.Material, r.Why)
		out = append(out, f)
	}
	return out
}

// durability asks the tables for a material that is the name of a wood.
func durability(l *look, r Rule) []box.Finding {
	var out []box.Finding
	for _, p := range l.materials(func(string) bool { return true }) {
		w, err := timber.Get(p.Board.Material)
		if err != nil {
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
		f.Why = fmt.Sprintf("%s is of class %s: %s A coating or a good roof makes up for it.", w.Name, class, r.Why)
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
			if w, err := timber.Get(p.Board.Material); err == nil {
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
	f.Why = fmt.Sprintf("the box weighs %s kg without fixings: %s", tenth(sum), r.Why)
	return []box.Finding{f}
}
