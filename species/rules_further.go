package species

import (
	"slices"

	"holt.example/box"
	"holt.example/species/cite"
)

// further are rules of the trade that no leaflet states as a figure, beside the
// published table, and of what is sold. They follow it in every list.
var further = []Rule{
	{
		Code: "cavity-height", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bird, Mammal, Bat}},
		Of:    "height of the cavity against what is in print",
		Unit:  "mm",
		Why:   "In a lower one the brood is within reach, and from a much higher one it climbs out late.",
		Basis: cite.Practice,
	},
	{
		Code: "grain-short", Severity: box.Advice,
		Scope: Scope{When: "a part is solid wood"},
		Of:    "width across the grain in lengths along it",
		Range: AtMost(2), Unit: "1",
		Why:   "Such a part is weak across its length: let the grain run lengthwise.",
		Basis: cite.Practice,
	},
	{
		Code: "hole-joint", Severity: box.Warning,
		Scope: Scope{Forms: []Form{Hole, SlotForm, Tube}},
		Of:    "wood from the hole to the next joint cut into its board",
		Range: AtLeast(15), Unit: "mm",
		Why:   "Short grain between the two breaks away.",
		Basis: cite.Practice,
	},
	{
		Code: "ledge", Severity: box.Warning,
		Scope: Scope{Groups: []Group{Bird}, Forms: []Form{Hole, SlotForm, Tube}},
		Of:    "number of rails and deep recesses below the hole",
		Range: AtMost(0), Unit: "count",
		Why:   "Paws and claws find a hold there, as on a perch.",
		Basis: cite.Practice,
	},
	{
		Code: "vent-top", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bird}, When: "there are vents"},
		Of:    "height of a vent as a share of the cavity's",
		Range: AtLeast(0.5), Unit: "1",
		Why:   "Warm air leaves at the top, and nests are built high.",
		Basis: cite.Practice,
	},
	{
		Code: "open-inspect", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bird}, When: "a part opens"},
		Of:    "a way to look in from above or from the side",
		Why:   "A look at the nest should not move it.",
		Basis: cite.Practice,
	},
	{
		Code: "roof-into-wall", Severity: box.Warning,
		Of:    "number of slopes that fall towards a wall which runs on above them",
		Range: AtMost(0), Unit: "count",
		Why:   "Water stands in the joint and finds its way behind or into the box.",
		Basis: cite.Practice,
	},
	{
		Code: "roof-lines", Severity: box.Warning,
		Of:    "number of lines engraved across the fall of the roof",
		Range: AtMost(0), Unit: "count",
		Why:   "Water stands in such lines and soaks in; along the fall it runs off.",
		Basis: cite.Practice,
	},
	{
		Code: "roof-hole", Severity: box.Warning,
		Of:    "number of openings through the roof",
		Range: AtMost(0), Unit: "count",
		Why:   "Rain comes straight in.",
		Basis: cite.Practice,
	},
	{
		Code: "felt-clouts", Severity: box.Warning,
		Scope: Scope{When: "the roof is felted"},
		Of:    "length of clout nails against the thickness of the roof",
		Unit:  "mm",
		Why:   "Their points would stand in the cavity.",
		Basis: cite.Practice,
	},
	{
		Code: "fixing-small", Severity: box.Warning,
		Scope: Scope{When: "a box under 10 kg is nailed or screwed"},
		Of:    "pilot hole, diameter of at most a quarter of the edge, within 1 mm of its middle",
		Why:   "It holds in boxes under 10 kg in place of the distances for loads.",
		Basis: cite.Practice,
	},
	{
		Code: "clean-dust", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bird, Mammal}},
		Of:    "cleaning",
		Why:   "Wear gloves and a dust mask, and damp the old nest before you take it out: dry dust carries spores and fleas.",
		Basis: cite.Practice,
	},
	{
		Code: "clean-stop", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bird, Mammal}},
		Of:    "box in use",
		Why:   "Look first, from outside. Stop and come back later if the box is in use: in the breeding season by young, in winter by sleepers.",
		Basis: cite.Practice,
	},
	{
		Code: "licence-bat", Severity: box.Advice,
		Scope: Scope{Groups: []Group{Bat}},
		Of:    "checking a box",
		Why:   "Never open, move or block a box for bats without a licence where the law asks for one; leave checking to people with licensed practice.",
		Basis: cite.Practice,
	},
	{
		Code: "law-local", Severity: box.Advice,
		Of:    "law of the place",
		Why:   "Local law and the advice of licensed people go before anything written here.",
		Basis: cite.Practice,
	},
	{
		Code: "safety-owner", Severity: box.Advice,
		Of:    "consent of the owner",
		Why:   "Ask the owner before you fix a box to a tree, a wall or a pole, and look for dead branches and cables.",
		Basis: cite.Practice,
	},
	{
		Code: "safety-children", Severity: box.Advice,
		Of:    "children in the workshop",
		Why:   "Keep children away from blades, ladders and dust; let them sand, number and watch.",
		Basis: cite.Practice,
	},
	{
		Code: "mounting-pull", Severity: box.Warning,
		Scope:   Scope{When: "it hangs by hanging holes"},
		Of:      "load that the upper fixings bear against being drawn out",
		Unit:    "N",
		Why:     "Take more, longer or thicker ones.",
		Sources: []string{"fpl-gtr-282"},
	},
	{
		Code: "mounting-shear", Severity: box.Warning,
		Scope: Scope{When: "it hangs by hanging holes"},
		Of:    "load that each fixing bears square to its length",
		Unit:  "N",
		Why:   "Take more, longer or thicker ones.",
		Basis: cite.Memory,
	},
	{
		Code: "housing-depth", Severity: box.Advice,
		Of:    "depth of a housing as a share of the thickness",
		Range: AtLeast(0.25), Unit: "1",
		Why:     "A board that cups comes out of a shallower one.",
		Sources: []string{"woodenboat", "diyinfozone"},
	},
	{
		Code: "no-stock", Severity: box.Warning,
		Of:      "size of a part against the boards and sheets that are sold",
		Unit:    "mm",
		Why:     "No single board or sheet of the tables gives it: join boards, or choose other stock.",
		Sources: []string{"en1313-1", "engtoolbox-lumber", "birch-datasheet"},
	},
}

// every is the published table and what follows it.
var every = slices.Concat(rules, further)
