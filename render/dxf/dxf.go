package dxf

import (
	"errors"
	"fmt"
	"io"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/render/internal/flat"
)

// Version is a dialect of the format.
type Version int

// The dialects.
const (
	R2000 Version = iota // AC1015
	R12                  // AC1009, for old controllers
)

// Options say how a drawing is written. The zero value is R2000 with all there
// is to show.
type Options struct {
	Version Version
	// Bare leaves out what is only read: text, sizes, the grain arrow.
	Bare bool
	// Corner puts the lower left corner of a single part's silhouette at 0, 0
	// instead of its panel's origin. A sheet always starts there.
	Corner bool
	// Gap is the distance between parts on a sheet and between the two faces
	// of one part; 0 means 20.
	Gap box.MM
	// Width is that of a sheet, as far as the widest part allows; 0 chooses
	// one that is somewhat wider than high.
	Width box.MM
}

func (o Options) flat() flat.Options {
	return flat.Options{Bare: o.Bare, Corner: o.Corner, Gap: float64(o.Gap), Width: float64(o.Width)}
}

var errNoPlan = errors.New("dxf: no plan")

// Write writes all parts of a plan on one sheet, in rows, each with its number
// and name.
func Write(w io.Writer, plan *box.Plan, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	d, err := flat.Sheet(plan.Name(), flat.Subjects(plan), o.flat())
	return finish(w, d, err, o)
}

// WritePart writes one part of a plan. An unknown part is a box.Problem.
func WritePart(w io.Writer, plan *box.Plan, part box.Part, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	s, err := flat.Find(plan, part)
	if err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	d, err := flat.Part(plan.Name(), s, o.flat())
	return finish(w, d, err, o)
}

// finish encodes a drawing and hands it on in one piece.
func finish(w io.Writer, d flat.Drawing, err error, o Options) error {
	if err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	b, err := encode(d, o.Version)
	if err != nil {
		return err
	}
	if _, err := w.Write(b); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	return nil
}

// encode writes a drawing in one of the dialects.
func encode(d flat.Drawing, v Version) ([]byte, error) {
	switch v {
	case R2000:
		return newR2000(d).file(), nil
	case R12:
		return newR12(d).file(), nil
	}
	return nil, fmt.Errorf("dxf: version %d: want R2000 or R12", int(v))
}

// WriteSheet writes one piece of stock of a batch, counted from 0 as in
// Result.Sheets: the stock's edge, what is trimmed off, offcuts, and every panel
// in its place with its work on the layers of a panel. The lower left corner of
// the stock is at 0, 0. Version, Bare and Gap of the options count; work on the
// faces that are down stands below the stock, Gap apart.
func WriteSheet(w io.Writer, r *batch.Result, sheet int, o Options) error {
	d, err := flat.OnStock(r, sheet, o.flat())
	return finish(w, d, err, o)
}
