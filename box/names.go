package box

import (
	"fmt"
	"slices"
	"sort"
	"strings"
)

// checkParts looks at every place where the design names a part.
func (s *shell) checkParts() {
	d, c := s.d, s.c
	known := map[Part]bool{}
	var walls, solids []string
	for i := range s.faces {
		f := &s.faces[i]
		if i < s.walls {
			walls = append(walls, string(f.part))
		}
		if !f.open {
			known[f.part] = true
			solids = append(solids, string(f.part))
		}
	}
	extra := s.checkMakers()
	for _, name := range extra {
		known[name] = true
		solids = append(solids, string(name))
	}
	isWall := map[Part]bool{}
	for _, w := range walls {
		isWall[Part(w)] = true
	}
	for i, w := range d.Walls {
		if !isWall[w.On] {
			s.unknown(fmt.Sprintf("Walls[%d].On", i), w.On, walls)
		}
	}
	for i, b := range d.Joints {
		for _, e := range []struct {
			field string
			p     Part
		}{{"Over", b.Over}, {"Under", b.Under}} {
			if !known[e.p] || s.faceOf(e.p) == nil {
				s.unknown(fmt.Sprintf("Joints[%d].%s", i, e.field), e.p, solids)
			}
		}
		if b.Over == b.Under {
			c.addf(fmt.Sprintf("Joints[%d]", i), "same-part", "a joint is between two parts, not %s and itself", b.Over)
		}
	}
	s.checkOpenParts(known, solids)
	free := map[Part]bool{}
	for _, f := range d.Free {
		free[FreePart(f.Name)] = true
	}
	for _, p := range sortedParts(d.Boards) {
		if p != AllWalls && p != AllRoof && !known[p] && !free[p] {
			s.unknown(fmt.Sprintf("Boards[%q]", string(p)), p, append([]string{string(AllWalls), string(AllRoof)}, solids...))
		}
	}
	for i, f := range d.Features {
		path := fmt.Sprintf("Features[%d]", i)
		switch f := f.(type) {
		case Entrance:
			if f.On != "" && !isWall[f.On] {
				s.unknown(path+".Entrance.On", f.On, walls)
			} else if on := s.frontOr(f.On); !known[on] {
				c.addf(path+".Entrance.On", "open", "%s is open: there is nothing to cut", on)
			}
		case Vents:
			for k, p := range f.On {
				if !isWall[p] || !known[p] {
					s.unknown(fmt.Sprintf("%s.Vents.On[%d]", path, k), p, walls)
				}
			}
		case form:
			if isPointer(f) {
				c.strange(path, f, "feature")
				continue
			}
			for _, on := range f.on(s) {
				if !known[on.part] && !free[on.part] {
					s.unknown(typed(path, f)+on.field, on.part, solids)
				}
			}
		case Drains:
			if !known[Floor] {
				c.addf(path+".Drains", "open", "there is no floor to drain")
			}
		case CornerCuts:
			if !known[Floor] {
				c.addf(path+".CornerCuts", "open", "there is no floor to drain")
			}
		default:
			c.strange(path, f, "feature")
		}
	}
}

// checkMakers looks at the names that inner and outer elements give and take, and
// returns those of the parts they make.
func (s *shell) checkMakers() []Part {
	var out []Part
	seen := map[Part]bool{}
	for _, f := range s.d.Free {
		seen[FreePart(f.Name)] = true
	}
	s.d.eachOpening(func(_ string, o opener) {
		if name := openName(o); name != "" {
			seen[FreePart(name)] = true
		}
	})
	for i, in := range s.d.Inner {
		if _, ok := asMaker(in); !ok {
			s.c.strange(fmt.Sprintf("Inner[%d]", i), in, "inner part")
		}
	}
	for i, x := range s.d.Outer {
		if _, ok := asMaker(x); !ok {
			s.c.strange(fmt.Sprintf("Outer[%d]", i), x, "outer element")
		}
	}
	var shell []string
	for i := range s.faces {
		if !s.faces[i].open {
			shell = append(shell, string(s.faces[i].part))
		}
	}
	for _, side := range []CutSide{FromInner, FromOuter} {
		m := &making{side: side}
		s.eachMaker(side, func(path string, x maker) {
			for k, n := range x.names(s.d) {
				if k == 0 || n.field != ".Name" {
					s.c.name(path+n.field, n.name)
				}
				name := m.part(n.name)
				if seen[name] {
					s.c.addf(path+n.field, "twice", "another part has the name %.60q", string(name))
				}
				seen[name] = true
				out = append(out, name)
			}
			for _, on := range x.on(s) {
				if f := s.faceOf(on.part); f == nil {
					s.unknown(path+on.field, on.part, shell)
				} else if f.open {
					s.c.addf(path+on.field, "open", "%s is open: there is nothing to fix it to", on.part)
				}
			}
		})
	}
	return out
}

// faceOf is the face of the shell that a part stands on, nil if there is none.
func (s *shell) faceOf(p Part) *face {
	for i := range s.faces {
		if s.faces[i].part == p {
			return &s.faces[i]
		}
	}
	return nil
}

func (s *shell) frontOr(p Part) Part {
	if p == "" {
		return s.faces[0].part
	}
	return p
}

func (s *shell) unknown(path string, got Part, want []string) {
	p := Problem{Path: path, Code: "unknown-part", Got: fmt.Sprintf("%.60q", string(got)), Why: "this design has no such part; it has " + strings.Join(want, " ")}
	switch n := nearest(string(got), want); {
	case strings.HasPrefix(string(got), "wall/") && s.walls > 0:
		p.Try = manyOf(want, s.faces[:s.walls])
	case got == Roof && len(s.faces) > 0:
		p.Try = manyOf(want, s.faces[s.floor+1:])
	case n != "":
		p.Try = n
	case strings.HasPrefix(string(got), "roof") && len(s.faces) > 0:
		p.Try = manyOf(want, s.faces[s.floor+1:])
	case got == Front && !s.rect() && len(s.faces) > 0:
		p.Try = string(s.faces[0].part) + ", the front"
	case got == "sides":
		p.Try = "left and right, one by one"
	case got == AllWalls || got == AllRoof:
		p.Why = "this is a group, and one part is wanted: " + strings.Join(want, " ")
	case got == "":
		p.Got, p.Why = "", "say which part: "+strings.Join(want, " ")
	}
	for i := range s.faces {
		if s.faces[i].part == got {
			p.Why = "this part will not do here; these would: " + strings.Join(want, " ")
		}
	}
	s.c.add(p)
}

// manyOf are those of some faces that would do, as something to try: "a or b", "a,
// b or c", "wall/1 to wall/8".
func manyOf(want []string, of []face) string {
	var names []string
	for i := range of {
		if slices.Contains(want, string(of[i].part)) {
			names = append(names, string(of[i].part))
		}
	}
	switch n := len(names); {
	case n == 0:
		return ""
	case n == 1:
		return names[0]
	case n > 4:
		return names[0] + " to " + names[n-1]
	default:
		return strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
}

// nearest is the name within two slips of the pen, "" if there is none.
func nearest(got string, want []string) string {
	if len(got) > 60 {
		return ""
	}
	type cand struct {
		name string
		d    int
	}
	var cs []cand
	for _, w := range want {
		if d := slips(got, w); d <= 2 && d < len(w) {
			cs = append(cs, cand{w, d})
		}
	}
	if len(cs) == 0 {
		return ""
	}
	sort.SliceStable(cs, func(i, j int) bool { return cs[i].d < cs[j].d })
	return cs[0].name
}

// slips counts the least insertions, deletions, replacements and swaps of
// neighbours that turn a into b.
func slips(a, b string) int {
	prev2, prev := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur := make([]int, len(b)+1)
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev = prev, cur
	}
	return prev[len(b)]
}
