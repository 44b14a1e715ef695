package dxf_test

import (
	"bufio"
	"bytes"
	"fmt"
	"slices"
	"strings"

	"holt.example/box"
	"holt.example/joints"
	"holt.example/render/dxf"
)

// Work of another kind or depth is on a layer of its own.
func Example() {
	plan := box.Design{
		Name:     "orchard pent",
		Board:    box.Board{Thickness: 15, Measured: 14.6},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12},
		Floor:    box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 5}},
		Corners:  box.Corners{Joint: joints.Rebate{Depth: 7}},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
	}.MustResolve()

	var b bytes.Buffer
	if err := dxf.WritePart(&b, plan, box.Front, dxf.Options{Bare: true}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Join(entities(&b), "\n"))
	// Output:
	// CIRCLE on BORE_14.6
	// LWPOLYLINE on FAR_FACE_14.6
	// LWPOLYLINE on HOUSING_5.2
	// LWPOLYLINE on PROFILE_14.6
	// LWPOLYLINE on REBATE_7.0
	// LWPOLYLINE on REBATE_7.0_BOTTOM
}

// entities lists what is on which layer, each once.
func entities(b *bytes.Buffer) []string {
	var out []string
	kind := ""
	for s := bufio.NewScanner(b); s.Scan(); {
		code := strings.TrimSpace(s.Text())
		s.Scan()
		switch v := s.Text(); {
		case code == "0":
			kind = v
		case code == "8" && (kind == "CIRCLE" || kind == "LWPOLYLINE"):
			if line := kind + " on " + v; !slices.Contains(out, line) {
				out = append(out, line)
			}
		}
	}
	slices.Sort(out)
	return out
}
