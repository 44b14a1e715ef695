package timber

import "errors"

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

// NamesNear are the names of woods that a material which names none may mean, the
// nearest first: of "larch" European, Siberian and western larch. It is empty where
// the name is one that Get knows, or like none. No wood is ever taken for another:
// the densities of those that share a word differ.
func NamesNear(material string) []string {
	_, err := Get(material)
	var unknown *UnknownError
	if !errors.As(err, &unknown) {
		return nil
	}
	return unknown.Near
}
