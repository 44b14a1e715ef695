package box

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// mm prints a length for people: to a tenth.
func mm(x float64) string { return strconv.FormatFloat(round1(x)+0, 'f', 1, 64) }

// explain says in words how a part came by its size.
func (s *shell) explain(p *Plan, q *Piece, w *part) []string {
	along := "no grain"
	switch {
	case q.Panel.Grain[1] != 0:
		along = "grain up"
		if w.face.kind == floorFace {
			along = "grain front to back"
		}
	case q.Panel.Grain[0] != 0:
		along = "grain side to side"
	}
	out := []string{fmt.Sprintf("%s is %s long and %s wide, cut from %s (%s).", q.Part, mm(float64(q.Length)), mm(float64(q.Width)), boardWords(q), along)}
	if w.free != nil {
		return append(out, "It is a free part: its outline is as given.")
	}
	if w.strip != nil {
		out = append(out, w.stripWords())
	}
	if w.at >= 0 && q.Nominal != [2]MM{} {
		out = append(out, fmt.Sprintf("The face of the cavity that it covers is %s across and %s up.", mm(float64(q.Nominal[0])), mm(float64(q.Nominal[1]))))
	}
	for _, e := range q.Panel.Edges {
		switch {
		case e.Neighbour == "" && e.Why == "":
			continue
		case e.Neighbour == "":
			out = append(out, fmt.Sprintf("At its free end it %s.", e.Why))
			continue
		case e.Why == "":
			continue
		}
		line := fmt.Sprintf("%s %s: %s", whereWords(&e), e.Why, adds(float64(e.Adds)))
		if b := math.Abs(float64(e.Bevel)); b > 0.005 {
			line += fmt.Sprintf(", bevelled %s degrees (%s over the thickness)", num(math.Round(b*100)/100), mm(math.Abs(float64(e.Run))))
		}
		out = append(out, line+".")
	}
	if x := s.compare(q, w); x != "" {
		out = append(out, x)
	}
	return out
}

// whereWords begins a sentence on an edge, with what its reason leaves out: the
// neighbour and the joint.
func whereWords(e *PanelEdge) string {
	joint := strings.Contains(e.Why, e.Joint) || e.Joint == "mitre" && strings.Contains(e.Why, "mitred")
	switch named := strings.Contains(e.Why, string(e.Neighbour)); {
	case named && joint:
		return "It"
	case named && strings.ContainsAny(e.Joint[:1], "aeiou"):
		return "With an " + e.Joint + " it"
	case named:
		return "With a " + e.Joint + " it"
	}
	return fmt.Sprintf("At %s (%s) it", e.Neighbour, e.Joint)
}

func adds(x float64) string {
	switch {
	case math.Abs(x) < 5e-3:
		return "nothing added"
	case x > 0:
		return mm(x) + " added"
	}
	return mm(-x) + " taken off"
}

func boardWords(q *Piece) string {
	name := q.Board.Material
	if name == "" {
		name = "board"
	}
	if q.Board.Measured != 0 || q.Board.Least != 0 || q.Board.Most != 0 {
		return fmt.Sprintf("%s sold as %s and measured %s", name, num(float64(q.Board.Thickness)), measuredWords(q.Board))
	}
	return fmt.Sprintf("%s %s thick", name, num(float64(q.Board.Thickness)))
}

func measuredWords(b Board) string {
	if lo, hi := b.least(), b.most(); lo != hi {
		return num(lo) + " to " + num(hi)
	}
	return num(b.most())
}

// compare says how a wall's width differs from the outside of the box, and
// who takes the difference.
func (s *shell) compare(q *Piece, w *part) string {
	if w.face.kind != wallFace || w.at < 0 || w.strip != nil || w.face.lean != 0 {
		return ""
	}
	n := s.walls
	prev, next := (w.at+n-1)%n, (w.at+1)%n
	out, own := float64(q.Nominal[0]), float64(q.Nominal[0])
	var who []string
	for _, j := range []int{prev, next} {
		f := &s.faces[j]
		e := s.pair[[2]int{min(w.at, j), max(w.at, j)}]
		if f.open || f.lean != 0 || e == nil || !e.ok || math.Abs(e.theta-90) > 1e-9 {
			return ""
		}
		add := e.sec.A.Inner
		if e.under == w.at {
			add = e.sec.B.Inner
		}
		if m := e.sec.B.Outer; e.under == w.at && m > add {
			add = m
		}
		if m := e.sec.A.Outer; e.over == w.at && m > add {
			add = m
		}
		out += f.t
		add -= MM(s.roomBetween(w.at, j))
		own += float64(add)
		if less := f.t - float64(add); less > 5e-3 {
			who = append(who, fmt.Sprintf("%s takes %s", f.part, mm(less)))
		}
	}
	if len(who) == 0 {
		return fmt.Sprintf("Outside, the box is as wide here as %s: %s.", q.Part, mm(out))
	}
	line := fmt.Sprintf("Outside, the box measures %s here; %s is %s narrower: ", mm(out), q.Part, mm(out-own))
	for k, x := range who {
		if k > 0 {
			line += ", "
		}
		line += x
	}
	return line + "."
}
