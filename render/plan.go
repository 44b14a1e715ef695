package render

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render/bom"
)

// WritePlan writes a page in Markdown that explains a plan: how every part came
// by its size, its edges and its work, the seams with their least and greatest
// gap, voids, findings, and how the box goes together. The options are those of
// the parts list.
func WritePlan(w io.Writer, plan *box.Plan, o bom.Options) error {
	if plan == nil {
		return errNoPlan
	}
	l, err := bom.Checked(plan, o)
	if err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n", bom.Escape(l.Name))
	size(&b, "Inside", l.Inside, "", l.Diagonals.Inside)
	size(&b, "Outside, the walls", l.Outside, " to the "+l.Rise(), l.Diagonals.Outside)
	size(&b, "Overall, "+l.Whole(), l.Overall, "", [2]box.MM{})
	if l.Bill != nil && l.Totals.Known == l.Totals.Parts {
		fmt.Fprintf(&b, "- Mass: %s kg, without fittings\n", rounded(l.Totals.Mass, 100))
	}
	fmt.Fprintf(&b, "\n%s Left, right, upper and lower mean the part as you look at its machined face.\n", l.Rule())
	b.WriteString("\n## Parts\n")
	for _, it := range l.Items {
		part(&b, plan, it)
	}
	fittings(&b, l)
	seams(&b, plan)
	opening(&b, plan)
	voids(&b, l)
	findings(&b, plan)
	assembly(&b, plan)
	b.WriteString(cautions)
	_, err = io.WriteString(w, b.String())
	return err
}

// cautions defer to those who know the tools, the place and the animals.
const cautions = `
## Before you begin

- Blades and dust: keep to the instructions of your tools, guard the blade, clamp small parts, wear eye and ear protection, and keep fine dust out of your lungs and the room.
- Animals: nests, roosts and the boxes they are in are protected by law in many places; ask before you open, move or clean one, and let the rules of your place decide.
`

// figure is a number for people, to 0.1. The nudge makes equal figures round
// alike whatever the noise in their last bits.
func figure(x float64) string { return rounded(x, 10) }

func rounded(x, parts float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "—"
	}
	s := strconv.FormatFloat(math.Floor(float64((x+1e-6)*parts)+0.5)/parts, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func size(b *strings.Builder, name string, s bom.Size, high string, d [2]box.MM) {
	if s == (bom.Size{}) {
		return // a plan of free parts has no inside
	}
	fmt.Fprintf(b, "- %s: %s wide, %s deep, %s high%s", name, figure(float64(s.Width)), figure(float64(s.Depth)), figure(float64(s.Height)), high)
	if d[0] > 0 {
		fmt.Fprintf(b, ", diagonals %s and %s", figure(float64(d[0])), figure(float64(d[1])))
	}
	b.WriteString("\n")
}

func names(ps []box.Part, sep string) string {
	s := make([]string, len(ps))
	for i, p := range ps {
		s[i] = bom.Escape(string(p))
	}
	return strings.Join(s, sep)
}

// part explains one item of the list.
func part(b *strings.Builder, plan *box.Plan, it bom.Item) {
	fmt.Fprintf(b, "\n### %d. %s\n\n", it.Number, names(it.Parts, ", "))
	if it.Quantity > 1 {
		fmt.Fprintf(b, "%d equal parts: make them from one drawing.\n\n", it.Quantity)
	}
	order := ", along the grain first"
	if it.Grain == "none" {
		order = ""
	}
	fmt.Fprintf(b, "- Cut to %s × %s%s, %s thick", rounded(float64(it.CutLength), 100), rounded(float64(it.CutWidth), 100), order, rounded(float64(it.Thickness), 100))
	if it.Material != "" {
		b.WriteString(", " + bom.Escape(it.Material))
	}
	b.WriteString(".")
	if why := it.CutWhy(); why != "" {
		fmt.Fprintf(b, " Exact: %s × %s; %s.", rounded(float64(it.Length), 100), rounded(float64(it.Width), 100), bom.Escape(why))
	}
	b.WriteString("\n")
	fmt.Fprintf(b, "- Machined face: %s. Up: %s.", bom.Escape(it.Face), bom.Escape(it.Up))
	if it.SecondFace {
		b.WriteString(" Some work is on the other face: turn the part over once.")
	}
	if it.FaceEdge != "" {
		fmt.Fprintf(b, " Face edge: %s.", it.FaceEdge)
	}
	b.WriteString("\n")
	if it.MirrorOf > 0 {
		fmt.Fprintf(b, "- %s hand: the mirror image of item %d. Do not cut two of one hand.\n", hand(it.Hand), it.MirrorOf)
	}
	explain(b, plan, it)
	for _, e := range it.Edges {
		fmt.Fprintf(b, "- %s edge, %s long: ", bom.Escape(capital(e.Name)), figure(float64(e.Length)))
		if len(e.Neighbours) == 0 {
			b.WriteString("free")
		} else {
			n := once(e.Neighbours)
			b.WriteString("meets " + names(n, ", "))
			if len(n) > 1 {
				b.WriteString(" in turn,")
			}
			if e.Joint != "" {
				b.WriteString(" in " + bom.Escape(joints.Said(e.Joint)))
			}
		}
		if a := figure(float64(e.Bevel)); a != "0" {
			longer := "machined"
			if e.Bevel < 0 {
				longer = "other"
			}
			fmt.Fprintf(b, "; bevel %s°, gauge %s, the %s face is the longer", figure(math.Abs(float64(e.Bevel))), figure(math.Abs(float64(e.Run))), longer)
		}
		if len(e.Arrises) > 0 {
			b.WriteString("; " + strings.Join(e.Arrises, ", "))
		}
		b.WriteString(".\n")
	}
	sides, more := it.Sides()
	for _, s := range sides {
		fmt.Fprintf(b, "- %s side, %s, %s long: free.\n", capital(s.Name), s.Words(), figure(float64(s.Length)))
	}
	if more > 0 {
		fmt.Fprintf(b, "- And %d more sides: read them off the drawing.\n", more)
	}
	for _, w := range it.Jobs() {
		fmt.Fprintf(b, "- %s.\n", bom.Escape(capital(w)))
	}
}

func hand(h bom.Hand) string {
	if h == bom.NoHand {
		return "Other"
	}
	return capital(string(h))
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func once(ps []box.Part) []box.Part {
	var out []box.Part
	for _, p := range ps {
		if !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// fittings lists what is bought or cut beside the boards.
func fittings(b *strings.Builder, l bom.List) {
	if len(l.Fittings) == 0 {
		return
	}
	b.WriteString("\n## Fittings\n\n")
	for _, f := range l.Fittings {
		fmt.Fprintf(b, "- %d × %s, %s", f.Count, bom.Escape(f.What), bom.Escape(f.Size))
		if f.Area > 0 {
			fmt.Fprintf(b, " (%s)", area(f.Area))
		}
		if len(f.Where) > 0 {
			fmt.Fprintf(b, ", on %s", names(f.Where, ", "))
		}
		if f.Why != "" {
			b.WriteString(": " + bom.Escape(strings.TrimSuffix(f.Why, ".")))
		}
		b.WriteString(".\n")
	}
}

// area is an area in mm2 for people: small ones in cm² or mm², so that a strip of
// felt is not nothing.
func area(mm2 float64) string {
	switch {
	case mm2 < 100:
		return rounded(mm2, 10) + " mm²"
	case mm2 < 1e4:
		return rounded(mm2/100, 10) + " cm²"
	}
	return fmt.Sprintf("%.3f m²", mm2/1e6)
}

func seams(b *strings.Builder, plan *box.Plan) {
	if len(plan.Seams()) == 0 {
		return
	}
	b.WriteString("\n## Seams\n\nGaps over the measured range of thickness.\n\n")
	b.WriteString("| laps over | this part | joint | inside angle | length | least gap | greatest gap | contact, mm² |\n|" + strings.Repeat(" --- |", 8) + "\n")
	for _, s := range plan.Seams() {
		dx, dy, dz := float64(s.To.X-s.From.X), float64(s.To.Y-s.From.Y), float64(s.To.Z-s.From.Z)
		length := math.Sqrt(float64(dx*dx) + float64(dy*dy) + float64(dz*dz))
		fmt.Fprintf(b, "| %s | %s | %s | %s° | %s | %s | %s | %s |\n", bom.Escape(string(s.Over)), bom.Escape(string(s.Under)), bom.Escape(s.Joint),
			figure(float64(s.Theta)), figure(length), figure(float64(s.Least)), figure(float64(s.Greatest)), figure(s.Contact))
	}
}

func voids(b *strings.Builder, l bom.List) {
	b.WriteString("\n## Voids\n\n")
	if len(l.Voids) == 0 {
		b.WriteString("None: the parts fill the shell.\n")
	}
	for _, v := range l.Voids {
		fmt.Fprintf(b, "- %s (%s): %s mm³ at %s, %s, %s\n", bom.Escape(l.Owner(v)), bom.Escape(v.Kind), figure(v.Volume),
			figure(float64(v.At.X)), figure(float64(v.At.Y)), figure(float64(v.At.Z)))
	}
}

func findings(b *strings.Builder, plan *box.Plan) {
	b.WriteString("\n## Findings\n\n")
	if len(plan.Findings()) == 0 {
		b.WriteString("None.\n")
	}
	for _, f := range plan.Findings() {
		fmt.Fprintf(b, "- %s, %s: ", capital(f.Severity.String()), bom.Escape(f.Code))
		if f.Part != "" {
			b.WriteString(bom.Escape(string(f.Part)) + ": ")
		}
		b.WriteString(bom.Escape(f.Why))
		if len(f.Sources) > 0 {
			b.WriteString(" (" + bom.Escape(strings.Join(f.Sources, "; ")) + ")")
		}
		b.WriteString("\n")
	}
}
