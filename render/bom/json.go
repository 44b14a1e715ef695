package bom

import (
	"encoding/json"
	"io"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// Schema names the form of the JSON list. Within one number fields are only
// added; all codes (kinds, uses, sides, hands, finding codes) are stable.
const Schema = "holt.example/bom/1"

// WriteJSON writes the list as JSON for other programs, all lengths in mm and
// angles in degrees, with at most four decimals; the frames that place the
// parts and the bulges of arcs carry full precision. With the contours, the
// depths of the operations and the frames of the parts the box can be built
// again. What is not known is null or left out.
//
// A contour is a list of vertices (x, y, bulge), bulge being tan(sweep/4) of
// the segment that leaves the vertex; outer contours run anticlockwise, holes
// clockwise.
func WriteJSON(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	return l.writeJSON(w)
}

func (l List) writeJSON(w io.Writer) error {
	j := jsonList{
		Schema: Schema, Name: l.Name, Units: jsonUnits{"mm", "deg", "mm2", "mm3", "kg"}, Step: exact(l.Step),
		Inside: sizeJSON(l.Inside), Outside: sizeJSON(l.Outside),
		Items: []jsonItem{}, Voids: []jsonVoid{}, Findings: []jsonFinding{},
		Totals: jsonTotals{Parts: l.Totals.Parts, Volume: exact(l.Totals.Volume), Boards: []jsonBoard{}},
	}
	if l.Overall != (Size{}) {
		o := sizeJSON(l.Overall)
		j.Overall = &o
	}
	for i := range 2 {
		j.Diagonals.Outside[i], j.Diagonals.Inside[i] = exact(l.Diagonals.Outside[i]), exact(l.Diagonals.Inside[i])
	}
	for _, it := range l.Items {
		j.Items = append(j.Items, it.json())
	}
	for _, f := range l.Fittings {
		g := jsonFitting{What: f.What, Count: f.Count, Size: f.Size, Length: known(float64(f.Length)), Width: known(float64(f.Width)),
			Area: known(f.Area), Proud: known(float64(f.Proud)), Where: texts(f.Where), Why: f.Why}
		if f.Cut != nil {
			g.Cut = regionJSON(f.Cut)
		}
		j.Fittings = append(j.Fittings, g)
	}
	if l.Totals.Known == l.Totals.Parts {
		j.Totals.Mass = known(l.Totals.Mass)
	}
	for _, b := range l.Totals.Boards {
		j.Totals.Boards = append(j.Totals.Boards, jsonBoard{b.Material, exact(b.Nominal), exact(b.Thickness), b.Parts, exact(b.Area), exact(b.Volume)})
	}
	for _, v := range l.Voids {
		j.Voids = append(j.Voids, jsonVoid{v.Owner, v.Kind, exact(v.Volume), placeJSON(v.At)})
	}
	for _, f := range l.Findings {
		j.Findings = append(j.Findings, jsonFinding{
			Code: f.Code, Severity: f.Severity.String(), Part: string(f.Part), At: placeJSON(f.Where),
			Got: exact(f.Got), Lo: exact(f.Lo), Hi: exact(f.Hi), Unit: f.Unit, Why: f.Why, Sources: f.Sources,
		})
	}
	j.Bill = l.Bill.json()
	b, err := json.Marshal(j)
	if err != nil {
		return err
	}
	_, err = w.Write(indent(b))
	return err
}

func (it Item) json() jsonItem {
	j := jsonItem{
		Number: it.Number, Quantity: it.Quantity, Material: it.Material,
		Nominal: exact(it.Nominal), Thickness: exact(it.Thickness), Least: exact(it.Least), Most: exact(it.Most),
		Length: exact(it.Length), Width: exact(it.Width), CutLength: exact(it.CutLength), CutWidth: exact(it.CutWidth),
		LengthWhy: it.LengthWhy, WidthWhy: it.WidthWhy,
		Grain: it.Grain, Volume: exact(it.Volume), Mass: known(it.Mass),
		SecondFace: it.SecondFace, Up: it.Up, FaceEdge: it.FaceEdge,
		Hand: string(it.Hand), MirrorOf: it.MirrorOf, Words: it.Words,
		Parts: []jsonPart{}, Edges: []jsonEdge{}, Work: []jsonWork{},
		Machined: regionJSON(it.Machined), Far: regionJSON(it.Far),
	}
	for _, p := range it.Places {
		j.Parts = append(j.Parts, jsonPart{string(p.Part), faceWord(p.Face), jsonFrame{vecJSON(p.Home.O), vecJSON(p.Home.U), vecJSON(p.Home.V), vecJSON(p.Home.W)}})
	}
	for _, e := range it.Edges {
		j.Edges = append(j.Edges, jsonEdge{
			Name: e.Name, From: atJSON(e.From), To: atJSON(e.To), Length: exact(e.Length),
			Bevel: exact(e.Bevel), Run: exact(e.Run), Joint: e.Joint, Guest: e.Guest, Adds: exact(e.Adds), Why: e.Why, Arrises: e.Arrises,
			Neighbours: texts(e.Neighbours),
		})
	}
	for _, s := range it.Rim {
		j.Rim = append(j.Rim, jsonSide{s.Name, exact(s.Length), exact(s.Radius), s.Hollow})
	}
	for _, w := range it.Work {
		jw := jsonWork{
			Kind: string(w.Kind), Use: string(w.Use), Side: string(w.Side), From: exact(w.From), To: exact(w.To),
			Guests: texts(w.Guests), Source: w.Source, Words: w.Words(), Region: regionJSON(w.Region),
		}
		for _, t := range w.Tilt {
			jw.Tilt = append(jw.Tilt, exact(t))
		}
		if len(w.Strokes) > 0 {
			for _, t := range w.Strokes {
				jw.Strokes = append(jw.Strokes, regionJSON(outline.Region{outline.Contour(t)})...)
			}
			width, taken := exact(w.Width), exact(w.Removed)
			jw.Width, jw.Removed = &width, &taken
		}
		if w.Tool != (box.Tool{}) {
			jw.Tool = &jsonTool{exact(w.Tool.Diameter), exact(w.Tool.VAngle), exact(w.Tool.Tip)}
		}
		if w.Bottom != nil {
			jw.Bottom = regionJSON(w.Bottom)
		}
		j.Work = append(j.Work, jw)
	}
	return j
}

func texts(ps []box.Part) []string {
	var out []string
	for _, p := range ps {
		out = append(out, string(p))
	}
	return out
}

func known(x float64) *exact {
	if !(x > 0) {
		return nil
	}
	e := exact(x)
	return &e
}

func sizeJSON(s Size) jsonSize { return jsonSize{exact(s.Width), exact(s.Depth), exact(s.Height)} }

func placeJSON(p box.Place) [3]exact { return [3]exact{exact(p.X), exact(p.Y), exact(p.Z)} }

func vecJSON(v solid.Vec) jsonVec { return jsonVec{precise(v.X), precise(v.Y), precise(v.Z)} }

func atJSON(p outline.Point) jsonAt { return jsonAt{exact(p.X), exact(p.Y)} }

func regionJSON(r outline.Region) jsonRegion {
	j := jsonRegion{}
	for _, c := range r {
		vs := make([]jsonVertex, len(c))
		for i, v := range c {
			vs[i] = jsonVertex(v)
		}
		j = append(j, vs)
	}
	return j
}
