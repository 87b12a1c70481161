package vector

import "bench.example/undermark/geometry"

// dashed cuts a line into the pieces that are drawn; nil dashes leave it whole.
func dashed(points []geometry.Point, dashes []float64) (pieces [][]geometry.Point) {
	if dashes == nil {
		return [][]geometry.Point{points}
	}
	at, left := 0, dashes[0] // the dash or gap that is being drawn, and how much of it is left
	piece := points[:1:1]
	for i := 1; i < len(points); i++ {
		from, to := points[i-1], points[i]
		for long := to.Sub(from).Norm(); long > left; long = to.Sub(from).Norm() {
			from = from.Add(to.Sub(from).Scale(left / long))
			if at%2 == 0 {
				pieces = append(pieces, append(piece, from))
			}
			piece = []geometry.Point{from}
			at = (at + 1) % len(dashes)
			left = dashes[at]
		}
		left -= to.Sub(from).Norm()
		piece = append(piece, to)
	}
	if at%2 == 0 {
		pieces = append(pieces, piece)
	}
	return pieces
}
