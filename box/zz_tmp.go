package box

import "holt.example/box/solid"

func tmpVolume(b solid.Body, q *part) float64 {
	v := solid.VolumeOf(b.Pieces())
	for _, f := range q.feats {
		d := f.depth
		if d == 0 {
			d = q.face.t
		}
		v -= f.outline.Area() * d
	}
	return v
}
