package svg

import (
	"errors"
	"fmt"
	"io"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/render/internal/flat"
)

// Options say what is drawn. The zero value draws all there is to show with a
// margin of 10 mm.
type Options struct {
	// Bare leaves out what is only read: text, sizes, the grain arrow.
	Bare bool
	// Tight leaves out the margin: the drawing ends where its lines do.
	Tight bool
	// Gap is the distance between parts on a sheet and between the two faces
	// of one part; 0 means 20.
	Gap box.MM
	// Width is that of a sheet, as far as the widest part allows; 0 chooses
	// one that is somewhat wider than high.
	Width box.MM
}

// margin is the room round the drawing, mm.
const margin = 10

func (o Options) flat() flat.Options {
	return flat.Options{Bare: o.Bare, Legend: true, Gap: float64(o.Gap), Width: float64(o.Width)}
}

var errNoPlan = errors.New("svg: no plan")

// Write draws all parts of a plan on one sheet, in rows, each with its number
// and name.
func Write(w io.Writer, plan *box.Plan, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	d, err := flat.Sheet(plan.Name(), flat.Subjects(plan), o.flat())
	return finish(w, d, err, o)
}

// WritePart draws one part of a plan. An unknown part is a box.Problem.
func WritePart(w io.Writer, plan *box.Plan, part box.Part, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	s, err := flat.Find(plan, part)
	if err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	d, err := flat.Part(plan.Name(), s, o.flat())
	return finish(w, d, err, o)
}

// finish encodes a drawing and hands it on in one piece.
func finish(w io.Writer, d flat.Drawing, err error, o Options) error {
	if err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	if _, err := w.Write(encode(d, o)); err != nil {
		return fmt.Errorf("svg: %w", err)
	}
	return nil
}

// WriteSheet draws one piece of stock of a batch, counted from 0 as in
// Result.Sheets: the stock's edge, what is trimmed off, offcuts, and every panel
// in its place with its work, grain arrow and a balloon with its label. Work on
// the faces that are down stands below the stock, Gap apart.
func WriteSheet(w io.Writer, r *batch.Result, sheet int, o Options) error {
	d, err := flat.OnStock(r, sheet, o.flat())
	return finish(w, d, err, o)
}
