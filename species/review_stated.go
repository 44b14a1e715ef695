package species

import (
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/species/timber"
)

// said is a finding that rests on what the maker stated.
func (r Rule) said(got float64, why string) []box.Finding {
	f := r.finding("", box.Place{}, got)
	f.Why = why + ". " + r.Why
	return []box.Finding{f}
}

func insideBare(l *look, r Rule) []box.Finding {
	if l.site.Inside == "" || l.site.Inside == NoCoat {
		return nil
	}
	return r.said(1, "the inside gets a "+string(l.site.Inside)+" coat, and should be bare")
}

func outsideFinish(l *look, r Rule) []box.Finding {
	switch l.site.Outside {
	case SolventBased, Preservative:
		return r.said(math.NaN(), "the outside gets a "+string(l.site.Outside)+" coat; take a water-based one, or none")
	}
	return nil
}

// glueClass looks at the glued seams that the class of the rule is for: those of
// inner parts and of boxes indoors are under cover, all others in the weather.
func glueClass(l *look, r Rule) []box.Finding {
	if l.site.Glue == 0 {
		return nil
	}
	weather := r.Code == "glue-d4"
	least := timber.GlueFor(weather)
	if l.site.Glue >= least {
		return nil
	}
	for _, s := range l.seams {
		in := isShell(s.Over) && isShell(s.Under) && l.site.Place != Indoors
		if s.Glued() && in == weather {
			where := "under cover"
			if weather {
				where = "in the weather"
			}
			f := r.finding(s.Over, s.From, float64(l.site.Glue))
			f.Lo = float64(least)
			f.Why = fmt.Sprintf("glue of class %s is to hold %s and %s, %s, where it takes %s. %s", l.site.Glue, s.Over, s.Under, where, least, r.Why)
			return []box.Finding{f}
		}
	}
	return nil
}

// isShell says that a part is a wall, the floor or a roof, or a strip of one.
func isShell(p box.Part) bool {
	for _, x := range []box.Part{box.Front, box.Back, box.Left, box.Right, box.Floor, box.Roof} {
		if p == x || len(p) > len(x) && p[:len(x)] == x && p[len(x)] == '/' {
			return true
		}
	}
	return isWall(p) || isRoof(p)
}

// staples looks for seams that say they are held by nothing else.
func staples(l *look, r Rule) []box.Finding {
	n := 0
	var first box.Seam
	for _, s := range l.seams {
		only := len(s.Holds) > 0
		for _, h := range s.Holds {
			only = only && h.Kind == "staple"
		}
		if only {
			if n == 0 {
				first = s
			}
			n++
		}
	}
	if n == 0 {
		return nil
	}
	f := r.finding(first.Over, first.From, float64(n))
	f.Why = fmt.Sprintf("only staples hold %s to %s. %s", first.Under, first.Over, r.Why)
	return []box.Finding{f}
}

// rust names the woods that attack plain steel, where nails or screws go into them
// that are not known to be of another metal: those that are stated, or else those
// that the seams ask for.
func rust(l *look, r Rule) []box.Finding {
	metal := map[box.Part]bool{}
	for _, f := range l.fixings {
		if !f.With.Stainless && !l.site.Stainless {
			metal[f.Over], metal[f.Under] = true, true
		}
	}
	for _, s := range l.seams {
		if l.fixings != nil || l.site.Stainless {
			break
		}
		for _, h := range s.Holds {
			if h.Kind != "glue" {
				metal[s.Over], metal[s.Under] = true, true
			}
		}
	}
	var out []box.Finding
	seen := map[string]bool{}
	for i := range l.strips {
		p := &l.strips[i]
		w, ok := l.woodOf(p.Board.Material)
		if !ok || !w.Corrosive() || !metal[p.Part] && !metal[p.Of] || seen[w.Key] {
			continue
		}
		seen[w.Key] = true
		f := r.finding(p.Part, box.Place{}, math.NaN())
		f.Why = fmt.Sprintf("%s is of %s, which attacks plain and galvanised steel when it is damp: take stainless steel or brass. %s", p.Part, w.Name, r.Why)
		out = append(out, f)
	}
	return out
}

func swingOf(l *look, r Rule) []box.Finding {
	if l.site.Swing == 0 {
		return nil
	}
	return r.against("", box.Place{}, l.site.Swing, math.NaN())
}

func aspect(l *look, r Rule) []box.Finding {
	switch l.site.Faces {
	case "", North, NorthEast, East:
		return nil
	}
	if l.site.Shaded {
		return nil
	}
	return r.said(math.NaN(), "the entrance looks "+string(l.site.Faces)+"; between north and east is better, or shade at midday")
}

func tiltForward(l *look, r Rule) []box.Finding {
	return r.against("", box.Place{}, float64(l.site.Lean), math.NaN())
}

func guard(l *look, r Rule) []box.Finding {
	if l.site.Place != OnPole || l.site.Guard == 0 {
		return nil
	}
	return r.against("", box.Place{}, float64(l.site.Guard), math.NaN())
}

// treeFixing is settled by straps.
func treeFixing(l *look, r Rule) []box.Finding {
	if l.site.Place != OnTree {
		return nil
	}
	for _, f := range l.fittings {
		if f.What == "strap" {
			return nil
		}
	}
	return r.said(math.NaN(), "no strap goes round the tree; take one, or aluminium nails left 10 mm proud, and let them out every year")
}

func ladder(l *look, r Rule) []box.Finding {
	if l.site.Above <= highUp {
		return nil
	}
	f := r.finding("", box.Place{}, l.site.Above)
	f.Lo, f.Hi, f.Unit = math.Inf(-1), highUp, "m"
	f.Why = fmt.Sprintf("it hangs at %s m, above %d. %s", num(l.site.Above), highUp, r.Why)
	return []box.Finding{f}
}

// highUp is the height in metres above which rule safety-ladder speaks.
const highUp = 2

// shortest is the length, in mm, below which a part is better cut from a longer
// piece (common practice).
const shortest = 100

func smallParts(l *look, r Rule) []box.Finding {
	var least *piece
	for i := range l.strips {
		if p := &l.strips[i]; max(p.Length, p.Width) < shortest && (least == nil || p.Length < least.Length) {
			least = p
		}
	}
	if least == nil {
		return nil
	}
	f := r.finding(least.Part, box.Place{}, float64(max(least.Length, least.Width)))
	f.Lo, f.Unit = shortest, "mm"
	f.Why = fmt.Sprintf("%s is only %s by %s mm; cut it from a long piece, and hold it in a jig. %s", least.Part, tenth(float64(least.Length)), tenth(float64(least.Width)), r.Why)
	return []box.Finding{f}
}
