package solid

import "errors"

// Mesh triangulates the surface of the body. Round outlines become facets that
// lie within chord mm of the true curve and enclose its true area.
func (b Body) Mesh(chord float64) (*Mesh, error) { return nil, errors.New("solid: being written") }
