// Package species holds what is published about dwellings for animals: sizes
// of cavities and entrances, walls, places and seasons, and the rules that a
// box should keep, each with its source.
//
// A box is right for an animal or it is a trap, and the leaflets disagree. A
// Preset therefore carries, beside the value chosen, the smallest and largest
// in print, how the value was chosen, and every publication used. It gives
// plain values, so a design stays readable and each of them can be overridden:
//
//	p := species.MustGet("great_tit")
//	way, err := p.Entrance() // a box.Entrance, to be changed at will
//	d := box.Design{Size: p.Inside, Features: []box.Feature{way}, ...}
//
// Preset.Design gives a whole ready form, to resolve as it is or to change.
// Review holds a resolved plan against the rules and lists what differs as
// findings, each with its source. A Site tells it what no plan shows: the place,
// which way the box faces, fixings, finish and glue; what is not told is not held
// against the plan. Advice lists what even a site does not show, of law, seasons
// and safety; WriteFindings and its fellows write findings as text,
// Markdown and JSON, and WriteCare the sheet that goes with the box. A Workshop
// says what its bits, saw, table and boards can make of a plan, Preset.Bits picks
// drills and says what else their holes let in, Fasten gives a design its screws,
// nails and glue, Weigh gives mass and centre of mass, and a Mounting says whether
// what it hangs by holds them.
//
// Sizes are millimetres, heights above ground are metres. A value of 0, or a
// span without ends, was not published. What the package says is what its
// sources say; the law of the place comes first, always.
//
// PRESETS.md beside this file has all presets in one table, how their values
// were chosen, and how to add one; RULES.md has all rules.
package species
