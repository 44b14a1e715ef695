package render_test

import (
	"fmt"
	"os"

	"holt.example/box"
	"holt.example/render"
)

// A box of five boards, all its files in one folder.
func ExampleFolder() {
	plan := box.Design{
		Name:  "orchard box",
		Board: box.Board{Thickness: 15, Measured: 14.6},
		Size:  box.Cavity{Width: 120, Depth: 120, Height: 240},
		Floor: box.FloorBetween{},
		Roof:  box.NoRoof{},
	}.MustResolve()

	dir, err := os.MkdirTemp("", "orchard")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)

	w, err := render.Folder(dir, plan, render.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range w.Files[:14] {
		fmt.Println(f.Name)
	}
	fmt.Println("and", len(w.Files)-14, "more")
	// Output:
	// assembly.stl
	// assembled.svg
	// assembled.png
	// exploded.svg
	// exploded.png
	// bom.csv
	// bom.json
	// bom.md
	// plan.md
	// parts.svg
	// parts.dxf
	// parts/front.stl
	// parts/front.svg
	// parts/front.dxf
	// and 12 more
}
