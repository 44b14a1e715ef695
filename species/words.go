package species

// Group is the kind of animal.
type Group string

// The groups.
const (
	Bird   Group = "bird"
	Bat    Group = "bat"
	Mammal Group = "mammal" // other than bats
	Insect Group = "insect"
)

// Region is the part of the world that a preset was published for. It says
// where the advice comes from; the law of the place always comes first.
type Region string

// The regions.
const (
	Europe       Region = "europe"
	NorthAmerica Region = "north-america"
)

// Form is the form of the dwelling.
type Form string

// The forms.
const (
	Hole      Form = "hole"       // a closed box with a hole
	OpenFront Form = "open-front" // a box whose front ends below the roof
	SlotForm  Form = "slot"       // a closed box with a slot
	Shelf     Form = "shelf"      // a platform, open on several sides
	Tube      Form = "tube"       // a bore or a lying tube
	Crevice   Form = "crevice"    // narrow and open below
	Tunnel    Form = "tunnel"     // a chamber on the ground, behind a tunnel
)

// EntryShape is the form of an entrance.
type EntryShape string

// The shapes of entrances.
const (
	RoundEntry  EntryShape = "round"
	OvalEntry   EntryShape = "oval"
	SquareEntry EntryShape = "square"
	SlotEntry   EntryShape = "slot"
	OpenEntry   EntryShape = "open" // the open part of a front, as wide as the cavity
)

// Datum is the point of the entrance to which its height is measured.
type Datum string

// The datums. An unspecified one is read as the lower edge: the hole then sits
// at or above the place that was printed.
const (
	NoDatum     Datum = "" // no height was published
	Bottom      Datum = "bottom"
	Centre      Datum = "centre"
	Unspecified Datum = "unspecified"
)

// Grip is what the inside of the front needs to be climbed.
type Grip string

// The grips.
const (
	NoGrip Grip = "none"
	Ladder Grip = "ladder" // rough wood, grooves, cleats or mesh below the hole
)

// Groups lists the groups, in the order of the tables.
func Groups() []Group { return []Group{Bird, Bat, Mammal, Insect} }

// Regions lists the regions, in the order of the tables.
func Regions() []Region { return []Region{Europe, NorthAmerica} }

// Forms lists the forms, in the order of the constants.
func Forms() []Form {
	return []Form{Hole, OpenFront, SlotForm, Shelf, Tube, Crevice, Tunnel}
}
