package cutlist

import (
	"errors"
	"fmt"

	"holt.example/box/batch"
	"holt.example/box/layout"
)

// Schema and StockSchema name the forms of the JSON lists. Within one number
// fields are only added.
const (
	Schema      = "holt.example/cutlist/1"
	StockSchema = "holt.example/stock/1"
)

// List is what the bench needs of a batch: pieces of stock in the order of
// their drawings, with the parts and the cuts on each. Lengths are in mm.
type List struct {
	Schema string  `json:"schema"`
	Name   string  `json:"name"`
	By     string  `json:"by"` // "router", "saw" or "lengths"
	Boxes  []Box   `json:"boxes"`
	Sheets []Sheet `json:"sheets"`

	Problems []string `json:"problems"` // what could not be placed, a line each
}

// Box is one box of the batch.
type Box struct {
	Number int    `json:"number"`
	Name   string `json:"name"`
}

// Sheet is one piece of stock.
type Sheet struct {
	Number  int       `json:"number"`
	Name    string    `json:"name"`
	Facts   string    `json:"facts"`
	Stock   string    `json:"stock"`
	Piece   int       `json:"piece"` // of that stock, from 1
	Length  Exact     `json:"length_mm"`
	Width   Exact     `json:"width_mm"`
	Parts   []Part    `json:"parts"`
	Cuts    []Cut     `json:"cuts"`
	Offcuts [][]Exact `json:"offcuts_mm"` // x, y, length and width of each
}

// Part is a part on a piece of stock.
type Part struct {
	Label     string `json:"label"` // "item/box", as in the drawing
	Item      int    `json:"item"`
	Box       int    `json:"box"`
	Name      string `json:"part"`
	X         Exact  `json:"x_mm"` // of the lower left corner of its blank
	Y         Exact  `json:"y_mm"`
	Length    Exact  `json:"length_mm"` // of the blank, along x
	Width     Exact  `json:"width_mm"`
	Thickness Exact  `json:"thickness_mm"`
	Over      bool   `json:"turned_over"` // the panel's other face is up
	Face      string `json:"face_up"`     // "inner" or "outer"
	Second    bool   `json:"second_face"` // it has work on the face that is down too
}

// Cut is a cut as it is made.
type Cut struct {
	Number  int    `json:"number"`
	Kind    string `json:"kind"`
	From    string `json:"from"`             // the piece that is cut, "1" is the stock
	Off     string `json:"off"`              // the piece that comes off, "" for waste
	Setting Exact  `json:"setting_mm"`       // of fence or stop
	At      Exact  `json:"at_mm"`            // from the edge of the piece as it lies
	Edge    string `json:"edge"`             // "left" or "bottom"
	Long    Exact  `json:"cut_length_mm"`    // of the cut
	Slant   Exact  `json:"slant_degrees"`    // from square, to the left on its way up
	Same    bool   `json:"same_setting"`     // fence or stop stay
	Part    string `json:"part,omitempty"`   // label of the part that comes off
	Leaves  string `json:"leaves,omitempty"` // label of the part that is left
	Left    string `json:"left,omitempty"`   // name of the piece that is left, where it is cut on
	Words   string `json:"words"`            // the same in a line
}

var errNoBatch = errors.New("cutlist: there is no batch")

// New is the list of a batch.
func New(r *batch.Result) List {
	l := List{Schema: Schema, Boxes: []Box{}, Sheets: []Sheet{}, Problems: []string{}}
	if r == nil {
		return l
	}
	l.Name, l.By = r.Job.Name, r.By()
	for i, b := range r.Boxes {
		l.Boxes = append(l.Boxes, Box{b.Number, r.BoxName(i)})
	}
	for _, p := range r.Problems {
		l.Problems = append(l.Problems, p.Error())
	}
	for i := range r.Sheets {
		l.Sheets = append(l.Sheets, sheetOf(r, i))
	}
	return l
}

func sheetOf(r *batch.Result, i int) Sheet {
	s := &r.Sheets[i]
	st := r.Stock(*s)
	out := Sheet{Number: s.Number, Name: r.SheetName(i), Facts: r.Facts(i), Stock: st.Name, Piece: s.Piece.Number,
		Length: Exact(st.Length), Width: Exact(st.Width), Parts: []Part{}, Cuts: []Cut{}, Offcuts: [][]Exact{}}
	for _, p := range s.Placed {
		face := "outer"
		if p.Panel.Face != 0 {
			face = "inner"
		}
		out.Parts = append(out.Parts, Part{Label: p.Label, Item: p.Item, Box: r.Boxes[p.Box].Number, Name: string(p.Piece.Part),
			X: Exact(p.Blank.Min.X), Y: Exact(p.Blank.Min.Y), Length: Exact(p.Blank.Width()), Width: Exact(p.Blank.Height()),
			Thickness: Exact(p.Piece.Thickness), Over: p.Over, Face: face, Second: p.Panel.SecondFace})
	}
	for _, c := range s.Piece.Steps {
		out.Cuts = append(out.Cuts, cutOf(s, c))
	}
	for _, o := range s.Piece.Offcuts {
		out.Offcuts = append(out.Offcuts, []Exact{Exact(o.Min.X), Exact(o.Min.Y), Exact(o.Width()), Exact(o.Height())})
	}
	return out
}

func cutOf(s *batch.Sheet, c layout.Step) Cut {
	edge := "left"
	if c.Kind == layout.Rip || c.Kind == layout.TrimRip {
		edge = "bottom"
	}
	name := func(place int) string {
		if place < 1 || place > len(s.Placed) {
			return ""
		}
		return s.Placed[place-1].Label
	}
	out := Cut{Number: c.Number, Kind: c.Kind.String(), From: c.From, Off: c.Off, Setting: Exact(c.Setting), At: Exact(c.At), Edge: edge,
		Long: Exact(c.Long), Slant: Exact(c.Slant), Same: c.Same, Part: name(c.Place), Leaves: name(c.Frees), Left: c.Left, Words: c.String()}
	if out.Part != "" {
		out.Words += fmt.Sprintf(": part %s", out.Part)
	} else if out.Off != "" {
		out.Words += ": piece " + out.Off
	} else {
		out.Words += ": waste"
	}
	if out.Leaves != "" {
		out.Words += fmt.Sprintf(", leaves part %s", out.Leaves)
	}
	if out.Left != "" {
		out.Words += fmt.Sprintf(", leaves piece %s", out.Left)
	}
	return out
}
