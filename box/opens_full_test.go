package box_test

import (
	"holt.example/box"
	"holt.example/box/outline"
)

// openedDesign and slidDesign set every field that an opening has.
func openedDesign(rect box.Design, board box.Board) box.Design {
	return rect.With(func(d *box.Design) {
		d.Name, d.Inner, d.Joints, d.Walls = "opened", nil, nil, nil
		d.Corners = box.Corners{Laps: box.Sides}
		d.Floor, d.Roof = box.FloorBetween{Raise: 20}, box.Flat{}
		d.Free = []box.Free{{Name: "knob", Outline: outline.Rectangle(-6, -6, 6, 6), At: box.Place{X: -1, Y: -94.7, Z: 60}}}
		d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150}}
		d.Opens = []box.Opening{
			box.Hinged{Part: box.Front, At: box.Left, Angle: 91, Play: 2, Headroom: 3, With: []box.Part{"free/knob"},
				Hinge: box.Butts{Height: 38, Width: 11, Thickness: 1.5, Count: 3, Screws: 3}},
			box.Hinged{Part: box.Back, At: box.Right, Angle: 80, Play: 2.5, Headroom: 2, Hinge: box.Leather{Width: 30, Length: 70, Thickness: 2, Count: 3}},
			box.Hinged{Part: box.Roof, At: box.Left, Angle: 70, Play: 1, Headroom: 1, Hinge: box.RubberStrip{Width: 70, Thickness: 2}},
			box.TurnButton{Part: box.Front, At: box.Right, Along: -60, Length: 45, Width: 15, Board: board},
			box.HookAndEye{Part: box.Roof, At: box.Right, Along: 10},
			box.Inspection{On: box.Left, Width: 90, Height: 80, Right: 4, Sill: 55, Lap: 14, Board: board},
			box.Stopper{On: box.Front, Lap: 5, Board: board},
		}
	})
}

func slidDesign(rect box.Design, board box.Board) box.Design {
	return openedDesign(rect, board).With(func(d *box.Design) {
		d.Name, d.Free = "slid", nil
		d.Opens = []box.Opening{
			box.Pivoted{Part: box.Back, Below: 30, Angle: 60, Play: 2, Headroom: 3, Diameter: 3.5, Length: 60},
			box.Sliding{Part: box.Front, Depth: 5, Play: 0.6, Beyond: 17},
			box.Removable{Part: box.Roof, Screws: 3, Diameter: 4.5, Play: 2},
		}
	})
}
