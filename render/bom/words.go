package bom

import (
	"fmt"
	"slices"
	"strings"

	"holt.example/box"
)

// names lists the parts of an item.
func (it Item) names(sep string) string { return joinParts(it.Parts, sep) }

func joinParts(ps []box.Part, sep string) string {
	s := make([]string, len(ps))
	for i, p := range ps {
		s[i] = string(p)
	}
	return strings.Join(s, sep)
}

// bevels lists the edges that are not square, with the offset to gauge.
func (it Item) bevels() string {
	var s []string
	for _, e := range it.Edges {
		if e.bevelled() {
			s = append(s, e.Name+" "+e.bevelWords())
		}
	}
	return strings.Join(s, "; ")
}

func (e Edge) bevelled() bool { return num(float64(e.Bevel)) != "0" }

// bevelWords gives the bevel in degrees, as an offset to gauge, and which face
// overhangs.
func (e Edge) bevelWords() string {
	side, bevel, run := "machined face", e.Bevel, e.Run
	if bevel < 0 {
		side, bevel, run = "other face", -bevel, -run
	}
	return fmt.Sprintf("%s deg, gauge %s, %s longer", num(float64(bevel)), mm(run), side)
}

// meetings lists what each edge meets.
func (it Item) meetings() string {
	var s []string
	for _, e := range it.Edges {
		s = append(s, e.Name+": "+e.meets())
	}
	return strings.Join(s, "; ")
}

// meets says what an edge meets, of equal parts each in turn, and how.
func (e Edge) meets() string {
	if len(e.Neighbours) == 0 {
		return "free"
	}
	t := e.inTurn()
	if e.Joint != "" {
		t += " (" + e.Joint + ")"
	}
	return t
}

// inTurn names what an edge meets: of equal parts each in turn.
func (e Edge) inTurn() string {
	names := once(e.Neighbours)
	if len(names) < 2 {
		return joinParts(names, "")
	}
	return joinParts(names, ", ") + " in turn"
}

// once leaves out what came before.
func once(ps []box.Part) []box.Part {
	var out []box.Part
	for _, p := range ps {
		if !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// Jobs are the operations in words, a line each. Equal ones that follow each
// other share a line.
func (it Item) Jobs() []string {
	var out []string
	for i := 0; i < len(it.Work); {
		w := it.Work[i]
		n := 1
		for i+n < len(it.Work) && w.Where != "" && it.Work[i+n].Where != "" && it.Work[i+n].What == w.What && it.Work[i+n].More == w.More {
			n++
		}
		if n == 1 {
			out = append(out, w.Words())
		} else {
			t := fmt.Sprintf("%d × %s: ", n, w.What)
			for k := range n {
				if k > 0 {
					t += "; "
				}
				t += it.Work[i+k].Where
			}
			out = append(out, t+w.More)
		}
		i += n
	}
	return out
}

// compensation says what the joints added and why, edge by edge.
func (it Item) compensation() string {
	var s []string
	for _, e := range it.Edges {
		if t := e.compensation(mm(e.Adds)); t != "" {
			s = append(s, e.Name+" "+t)
		}
	}
	return strings.Join(s, "; ")
}

// compensation says how far the edge is moved, t, and why.
func (e Edge) compensation(t string) string {
	if t == "0" && e.Why == "" {
		return ""
	}
	if e.Adds > 0 && t != "0" {
		t = "+" + t
	}
	if e.Why != "" {
		t += " (" + e.Why + ")"
	}
	return t
}

// handWords refers a part to its mirror image.
func (it Item) handWords() string {
	switch {
	case it.MirrorOf == 0:
		return "—"
	case it.Hand == NoHand:
		return fmt.Sprintf("mirror image of %d", it.MirrorOf)
	}
	return fmt.Sprintf("%s, mirror image of %d", it.Hand, it.MirrorOf)
}

// faceWords names the machined face.
func (it Item) faceWords() string {
	if it.SecondFace {
		return it.Face + ", then turned over"
	}
	return it.Face
}
