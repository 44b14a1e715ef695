// Package joints divides the corner where two boards meet.
//
// Let a and b be the heights of a point above the two inner faces. The cavity
// is a<0, b<0, and the slabs cross in the rectangle 0<=a<=TA, 0<=b<=TB. A joint
// gives every piece of that rectangle to one of the two parts, or leaves it
// empty on purpose. This is a rebate half as deep as A is thick; in a butt joint
// the whole rectangle is A's, in a mitre the diagonal divides it:
//
//	 b
//	TB +-------------+    outer face of B
//	   | B B B A A A |
//	   | B B B A A A |    A runs on down this side,
//	   | B B B A A A |    B runs on to the left
//	 0 +-------------+- a
//	   0             TA   outer face of A
//	cavity
//
// In a and b the division is the same at every angle between the parts, so a
// joint is a few lines of arithmetic, and leaning walls and hips are no special
// cases. A line A*a + B*b <= K becomes a plane in space by
// N = A nA + B nB, D = K + A dA + B dB, with the outward normals and offsets of
// the two inner faces.
//
// The first part, A, is the one that laps over the second, and along the edge
// the place z counts from its start. [Butt], [Mitre], [Rebate], [Housing] and
// [Comb] are here; a joint of your own is any type with a Section method (see
// the example Joint). Whoever wrote it, [Check] proves that the shares and the
// void fill the rectangle exactly.
//
// Boards differ in thickness. Joints are cut for the most that was measured, so
// that nothing clashes, what remains of a part is reckoned with the least, and
// every Section says between which values the gap may lie: 0 where faces are
// pressed together, and else the room across the part that is let in.
//
// One rule holds for the fields of joints: a field has a default other than
// zero only where zero is not legal.
package joints
