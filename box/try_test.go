package box_test
import ("testing";"fmt";"holt.example/box";"holt.example/box/boxtest")
func TestTry(t *testing.T) {
	d := box.Design{Name: "try", Board: thick(15), Size: box.Cavity{Width: 150, Depth: 150, Height: 260},
	 Floor: box.FloorBetween{Raise: 0}, Roof: box.Pent{Pitch: 12, Over: box.Overhangs{Front: 50, Left: 30, Right: 30}},
	 Walls: []box.Wall{{On: box.Back, Above: 80, Below: 60}},
	 Inner: []box.Inner{box.Shelf{Name: "shelf", Above: 100, Gaps: box.Gaps{Front: 60}}, box.EntrancePlate{Name: "inside plate", Width: 80, Height: 60, Board: thick(20)},
	   box.FalseFloor{Name: "tray", Room: 20, Rim: 20}},
	 Outer: []box.Outer{box.Batten{Name: "batten", Width: 40, Past: 50, Hole: box.Round{Diameter: 7}, Screws: 3}, box.CoverStrip{Name: "strip", Height: 30},
	   box.EntrancePlate{Name: "plate", Width: 70, Height: 70, Hole: box.Round{Diameter: 28}, Screws: 4}, box.LandingBoard{Name: "landing", Below: 40, Width: 100, Deep: 60, Slope: 10},
	   box.Felt{Turn: 30, Up: 40}, box.PoleSocket{Name: "socket", Hole: box.Rect{Width: 40, Height: 40}, Width: 90, Deep: 90, Layers: 2},
	   box.Strap{Trunk: 300, Width: 25, Heights: []box.MM{50}, Spare: 200}, box.Feet{Name: "feet", Width: 25}},
	 Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}, box.DripGroove{Sides: true}, box.Hang{Shape: box.Keyhole{Head: 12, Slot: 6, Drop: 14}}, box.EavesVents{Width: 60, Height: 10}, box.Edging{Round: 3, Blunt: 1}, box.PartMarks{Box: "1", Height: 4}},
	}
	p, err := d.Resolve()
	if err != nil { t.Fatal(err) }
	for _, q := range p.Pieces() { fmt.Println(q.Part, q.Length, q.Width, q.Thickness, q.Volume) }
	for _, f := range p.Fittings() { fmt.Printf("%+v\n", f) }
	for _, f := range p.Findings() { fmt.Printf("%+v\n", f) }
	boxtest.Sound(t, p)
}
