package bom

import (
	"bytes"
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
	l, err := listOf(plan, o)
	if err != nil {
		return err
	}
	return l.writeJSON(w)
}

type jsonList struct {
	Schema    string        `json:"schema"`
	Name      string        `json:"name"`
	Units     jsonUnits     `json:"units"`
	Step      exact         `json:"step"`
	Inside    jsonSize      `json:"inside"`
	Outside   jsonSize      `json:"outside"`
	Overall   *jsonSize     `json:"overall,omitempty"`
	Diagonals jsonDiagonals `json:"diagonals"`
	Items     []jsonItem    `json:"items"`
	Totals    jsonTotals    `json:"totals"`
	Fittings  []jsonFitting `json:"fittings,omitempty"`
	Voids     []jsonVoid    `json:"voids"`
	Findings  []jsonFinding `json:"findings"`
}

type jsonUnits struct {
	Length string `json:"length"`
	Angle  string `json:"angle"`
	Area   string `json:"area"`
	Volume string `json:"volume"`
	Mass   string `json:"mass"`
}

type jsonSize struct {
	Width  exact `json:"width"`
	Depth  exact `json:"depth"`
	Height exact `json:"height"`
}

type jsonDiagonals struct {
	Outside [2]exact `json:"outside"`
	Inside  [2]exact `json:"inside"`
}

type jsonItem struct {
	Number     int        `json:"item"`
	Quantity   int        `json:"quantity"`
	Material   string     `json:"material,omitempty"`
	Nominal    exact      `json:"nominal"`
	Thickness  exact      `json:"thickness"`
	Least      exact      `json:"least"`
	Most       exact      `json:"most"`
	Length     exact      `json:"length"`
	Width      exact      `json:"width"`
	CutLength  exact      `json:"cut_length"`
	CutWidth   exact      `json:"cut_width"`
	LengthWhy  string     `json:"length_why,omitempty"`
	WidthWhy   string     `json:"width_why,omitempty"`
	Grain      string     `json:"grain"`
	Volume     exact      `json:"volume"`
	Mass       *exact     `json:"mass"`
	SecondFace bool       `json:"second_face"`
	Up         string     `json:"up,omitempty"`
	FaceEdge   string     `json:"face_edge,omitempty"`
	Hand       string     `json:"hand,omitempty"`
	MirrorOf   int        `json:"mirror_of,omitempty"`
	Parts      []jsonPart `json:"parts"`
	Edges      []jsonEdge `json:"edges"`
	Rim        []jsonSide `json:"rim,omitempty"`
	Work       []jsonWork `json:"work"`
	Words      []string   `json:"words,omitempty"`
	Machined   jsonRegion `json:"machined"`
	Far        jsonRegion `json:"far"`
}

type jsonPart struct {
	Name  string    `json:"name"`
	Face  string    `json:"machined_face"`
	Frame jsonFrame `json:"frame"`
}

type jsonFrame struct {
	Origin jsonVec `json:"origin"`
	U      jsonVec `json:"u"`
	V      jsonVec `json:"v"`
	W      jsonVec `json:"w"`
}

type jsonVec [3]precise

type jsonEdge struct {
	Name       string   `json:"name"`
	From       jsonAt   `json:"from"`
	To         jsonAt   `json:"to"`
	Length     exact    `json:"length"`
	Bevel      exact    `json:"bevel"`
	Run        exact    `json:"run"`
	Neighbours []string `json:"neighbours,omitempty"`
	Joint      string   `json:"joint,omitempty"`
	Guest      bool     `json:"guest"`
	Adds       exact    `json:"adds"`
	Why        string   `json:"why,omitempty"`
	Arrises    []string `json:"arrises,omitempty"`
}

type jsonSide struct {
	Name   string `json:"name"`
	Length exact  `json:"length"`
	Radius exact  `json:"radius,omitempty"`
	Hollow bool   `json:"hollow,omitempty"`
}

type jsonAt [2]exact

type jsonTool struct {
	Diameter exact `json:"diameter,omitempty"`
	VAngle   exact `json:"v_angle,omitempty"`
	Tip      exact `json:"tip,omitempty"`
}

type jsonWork struct {
	Kind string  `json:"kind"`
	Use  string  `json:"use,omitempty"`
	Side string  `json:"side"`
	From exact   `json:"from"`
	To   exact   `json:"to"`
	Tilt []exact `json:"tilt,omitempty"`
	// Of an engraving: its centre lines, whose last bulge says nothing, the width
	// at the surface and the volume taken.
	Strokes jsonRegion `json:"strokes,omitempty"`
	Width   *exact     `json:"width,omitempty"`
	Removed *exact     `json:"removed,omitempty"`
	Tool    *jsonTool  `json:"tool,omitempty"`
	Guests  []string   `json:"guests,omitempty"`
	Source  string     `json:"source,omitempty"`
	Words   string     `json:"words"`
	Region  jsonRegion `json:"region"`
	Bottom  jsonRegion `json:"bottom,omitempty"`
}

type jsonRegion [][]jsonVertex

// jsonVertex is x, y and bulge.
type jsonVertex outline.Vertex

// MarshalJSON implements json.Marshaler.
func (v jsonVertex) MarshalJSON() ([]byte, error) {
	return json.Marshal([3]any{exact(v.X), exact(v.Y), precise(v.Bulge)})
}

type jsonTotals struct {
	Parts  int         `json:"parts"`
	Volume exact       `json:"volume"`
	Mass   *exact      `json:"mass"`
	Boards []jsonBoard `json:"boards"`
}

type jsonBoard struct {
	Material  string `json:"material,omitempty"`
	Nominal   exact  `json:"nominal"`
	Thickness exact  `json:"thickness"`
	Parts     int    `json:"parts"`
	Area      exact  `json:"area"`
	Volume    exact  `json:"volume"`
}

type jsonFitting struct {
	What   string     `json:"what"`
	Count  int        `json:"count"`
	Size   string     `json:"size"`
	Length *exact     `json:"length,omitempty"`
	Width  *exact     `json:"width,omitempty"`
	Area   *exact     `json:"area,omitempty"`
	Cut    jsonRegion `json:"cut,omitempty"`
	Where  []string   `json:"where,omitempty"`
	Why    string     `json:"why,omitempty"`
}

type jsonVoid struct {
	Owner  string   `json:"owner"`
	Kind   string   `json:"kind"`
	Volume exact    `json:"volume"`
	At     [3]exact `json:"at"`
}

type jsonFinding struct {
	Code     string   `json:"code"`
	Severity string   `json:"severity"`
	Part     string   `json:"part,omitempty"`
	At       [3]exact `json:"at"`
	Got      exact    `json:"got"`
	Lo       exact    `json:"lo"`
	Hi       exact    `json:"hi"`
	Unit     string   `json:"unit,omitempty"`
	Why      string   `json:"why"`
	Sources  []string `json:"sources,omitempty"`
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
			Area: known(f.Area), Where: texts(f.Where), Why: f.Why}
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

// indent spreads JSON over lines, but keeps lists of numbers on one line and
// contours on one line.
func indent(in []byte) []byte {
	out := make([]byte, 0, 2*len(in))
	depth := 0
	line := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, '\t')
		}
	}
	for i := 0; i < len(in); i++ {
		c := in[i]
		switch c {
		case '"':
			n := i + 1
			for in[n] != '"' {
				if in[n] == '\\' {
					n++
				}
				n++
			}
			out = append(out, in[i:n+1]...)
			i = n
		case '{', '[':
			if n := numbers(in[i:]); n > 0 {
				out = append(out, bytes.ReplaceAll(in[i:i+n], []byte(","), []byte(", "))...)
				i += n - 1
				continue
			}
			out = append(out, c)
			depth++
			line()
		case '}', ']':
			depth--
			line()
			out = append(out, c)
		case ',':
			out = append(out, c)
			line()
		case ':':
			out = append(out, c, ' ')
		default:
			out = append(out, c)
		}
	}
	return append(out, '\n')
}

// numbers is the length of the list at the start of JSON if there are only
// numbers and lists in it, else 0. An empty list or object counts too.
func numbers(in []byte) int {
	if bytes.HasPrefix(in, []byte("{}")) {
		return 2
	}
	if in[0] != '[' {
		return 0
	}
	depth := 0
	for i, c := range in {
		switch c {
		case '[':
			depth++
		case ']':
			depth--
			if depth == 0 {
				return i + 1
			}
		case '"', '{':
			return 0
		}
	}
	return 0
}
