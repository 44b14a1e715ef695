package bom

import (
	"encoding/json"

	"holt.example/box/outline"
)

// The form of the JSON list, field by field.

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
	Bill      *jsonBill     `json:"bill,omitempty"`
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
	Proud  *exact     `json:"proud,omitempty"`
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
