// Package boxtest holds what the author of a design wants to assert about it,
// so that go test fails when a change breaks the box.
//
//	func TestOrchard(t *testing.T) {
//		plan := boxtest.Resolve(t, Orchard)
//		boxtest.Sound(t, plan)                            // fits, drawn, closed, goes together
//		boxtest.Cavity(t, plan, 120, 120, 240)            // what the animal needs
//		boxtest.Golden(t, plan, "testdata/orchard.txt")   // nothing moved unnoticed
//	}
//
// Every assertion has a twin that returns an error instead, called Check...:
// for a service that resolves designs of others, or for a test framework of
// your own. T is what *testing.T has of use here.
//
// Resolve refuses what overlaps or leaks. The assertions look once more, at the
// finished parts and by other ways where there are any: voids from the volume
// between the outer planes, solids from their meshes, the way home of every part
// by shadows.
package boxtest
