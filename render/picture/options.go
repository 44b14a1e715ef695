package picture

import (
	"errors"
	"fmt"
)

// Options say how a picture is drawn. The zero value is a good picture of the
// closed box in lines.
type Options struct {
	Exploded bool    // the parts apart (WriteSVG and New; Assembled and Exploded say so themselves)
	Width    float64 // of the page, mm, 40 to 2000; 0 means 180
	Height   float64 // of the page, mm, 40 to 2000; 0 means what the drawing needs, at most 1.6 times the width
	Views    []View  // tried in turn; nil means Views()
	Spread   float64 // how far apart an exploded picture is, 0.1 to 10; 0 means 1
	Tint     bool    // a wash of wood colour on the faces
	Unseen   bool    // hidden edges too, dashed
	Plain    bool    // the drawing alone: no balloons, key, title or frame
}

func (o Options) filled() (Options, error) {
	if o.Width == 0 {
		o.Width = 180
	}
	if o.Spread == 0 {
		o.Spread = 1
	}
	if o.Views == nil {
		o.Views = views
	}
	switch {
	case !(o.Width >= 40 && o.Width <= 2000):
		return o, fmt.Errorf("picture: Width: %v: want 40 to 2000 mm", o.Width)
	case o.Height != 0 && !(o.Height >= 40 && o.Height <= 2000):
		return o, fmt.Errorf("picture: Height: %v: want 40 to 2000 mm", o.Height)
	case !(o.Spread >= 0.1 && o.Spread <= 10):
		return o, fmt.Errorf("picture: Spread: %v: want 0.1 to 10", o.Spread)
	case len(o.Views) == 0:
		return o, errors.New("picture: Views: empty: want at least one, or nil")
	}
	for i, v := range o.Views {
		if !(v.Round >= -360 && v.Round <= 360) || !(v.Up >= -90 && v.Up <= 90) {
			return o, fmt.Errorf("picture: Views[%d]: %v, %v: want Round -360 to 360, Up -90 to 90", i, v.Round, v.Up)
		}
	}
	return o, nil
}
