package species

// Sentences that many presets share on how their values were chosen.
const (
	nearMedianFH    = "Floor and height lie near the median of the midpoints in print, inside a published range."
	nearMedianRest  = "The other sizes lie near the median of the midpoints in print, inside a published range."
	lowerEdge       = "A height of the hole printed without a datum is read as that of the lower edge."
	lowerEdgeTables = "The tables do not say to which point of the hole they measure; its height is read as that of the lower edge."
)
