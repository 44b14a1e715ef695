package timber

// DensityOf is the density at 12 % moisture content, in kg/m3, of the wood that a
// material names (see Get and Wood.Density); known is false where it names none, or
// one of which no density is published. It is the function that a bill of
// materials asks for.
func DensityOf(material string) (density float64, known bool) {
	w, err := Get(material)
	if err != nil {
		return 0, false
	}
	f, known := w.Density()
	return f.Value, known
}
