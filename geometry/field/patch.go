package field

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// patch is a rectangle of nodes: node (i, j) is at step*(left+i), step*(low+j), its margin at values[j*stride+i].
type patch struct {
	values             []float32
	stride, cols, rows int
	left, low          int
	step               float64
}

// cell returns the rectangle with nodes of the patch at its corners, with a list.
func (b *patch) cell(near []int32) cell {
	w, h := float64(b.cols-1)/2, float64(b.rows-1)/2
	return cell{b.step * (float64(b.left) + w), b.step * (float64(b.low) + h), b.step * w, b.step * h, near}
}

func (b *patch) row(j int) []float32 { return b.values[j*b.stride:][:b.cols] }

// fill sets every node of b, whose cell is c, to the least margin of the parts near, of the ways to that of the best.
func (m *Margins) fill(b *patch, c *cell) {
	common, ways := m.split(c.near)
	b.clear(math.Inf(1))
	m.lower(b, c, common)
	if len(ways) == 0 {
		return
	}
	best, one := b.blank(), b.blank()
	best.clear(math.Inf(-1))
	for len(ways) > 0 {
		var way []int32
		way, ways = m.next(ways)
		one.clear(math.Inf(1))
		m.lower(&one, c, way)
		best.each(&one, func(node, other float32) float32 { return max(node, other) })
	}
	b.each(&best, func(node, other float32) float32 { return min(node, other) })
}

// blank returns a patch of the same nodes with values of its own.
func (b *patch) blank() patch {
	c := *b
	c.stride, c.values = b.cols, make([]float32, b.cols*b.rows)
	return c
}

// clear sets every node to a margin.
func (b *patch) clear(margin float64) {
	for j := range b.rows {
		row := b.row(j)
		for i := range row {
			row[i] = float32(margin)
		}
	}
}

// each sets every node to what becomes of it and the same node of another patch.
func (b *patch) each(other *patch, becomes func(node, other float32) float32) {
	for j := range b.rows {
		row, beside := b.row(j), other.row(j)
		for i := range row {
			row[i] = becomes(row[i], beside[i])
		}
	}
}

// lower lowers the nodes to the least margin of parts. Over all of a small patch a piece is often no more than a point or a
// straight side, which is quicker to measure.
func (m *Margins) lower(b *patch, c *cell, parts []int32) {
	r := c.radius() + slack
	var inside []int32
	for _, k := range parts {
		s := &m.parts[k]
		switch {
		case s.kind == side:
			b.lowerToSide(s.x, s.y, s.cos, s.sin, s.off)
		case s.kind == carried || s.kind == other:
			b.lowerTo(s.at)
		case s.bent && m.inside(k, s.at(c.x, c.y)-r):
			inside = append(inside, k)
		default:
			b.lowerToPiece(s, c.x, c.y, r)
		}
	}
	slices.SortFunc(inside, func(a, b int32) int { return cmp.Compare(m.parts[a].owner, m.parts[b].owner) })
	for len(inside) > 0 {
		n := 1
		for n < len(inside) && m.parts[inside[n]].owner == m.parts[inside[0]].owner {
			n++
		}
		legs := inside[:n]
		b.lowerTo(func(x, y float64) float64 { return m.bent(legs, x, y) })
		inside = inside[n:]
	}
}

// bent returns the least exact margin of legs of one bent line: inside of any of them it is that of the whole line, asked for once.
func (m *Margins) bent(legs []int32, x, y float64) float64 {
	least := math.Inf(1)
	for _, k := range legs {
		least = min(least, m.parts[k].at(x, y))
		if m.inside(k, least) {
			return m.whole(m.parts[k].owner, geometry.Point{X: x, Y: y})
		}
	}
	return least
}

// lowerToPiece lowers the nodes to the margin of a piece. Within r of (x, y), where all of the patch lies, the nearest
// of the piece may be one corner, one side, or change.
func (b *patch) lowerToPiece(s *part, x, y, r float64) {
	u, v := s.inner(x, y)
	beyondX, beyondY := math.Abs(u)-s.halfX, math.Abs(v)-s.halfY
	cornerX, cornerY := math.Copysign(s.halfX, u), math.Copysign(s.halfY, v)
	atX, atY := s.x+cornerX*s.cos-cornerY*s.sin, s.y+cornerX*s.sin+cornerY*s.cos
	switch {
	case beyondX >= r && beyondY >= r || s.reach == 0:
		b.lowerToPoint(atX, atY, s.off)
	case beyondY <= -r && beyondX-beyondY >= math.Sqrt2*r && math.Abs(u) >= r:
		way := math.Copysign(1, u)
		b.lowerToSide(atX, atY, way*s.cos, way*s.sin, s.off)
	case beyondX <= -r && beyondY-beyondX >= math.Sqrt2*r && math.Abs(v) >= r:
		way := math.Copysign(1, v)
		b.lowerToSide(atX, atY, -way*s.sin, way*s.cos, s.off)
	default:
		b.lowerToWhole(s)
	}
}

// lowerToWhole lowers the nodes to the margin of a piece, as part.at has it.
func (b *patch) lowerToWhole(s *part) {
	for j := range b.rows {
		row := b.row(j)
		u, v := s.inner(b.step*float64(b.left), b.step*float64(b.low+j))
		for i := range row {
			x, y := math.Abs(u)-s.halfX, math.Abs(v)-s.halfY
			d := max(x, y)
			if x > 0 && y > 0 {
				d = math.Sqrt(x*x + y*y)
			}
			if d := float32(d - s.off); d < row[i] {
				row[i] = d
			}
			u += b.step * s.cos
			v -= b.step * s.sin
		}
	}
}

// lowerToPoint lowers the nodes to the distance from (x, y), less off.
func (b *patch) lowerToPoint(x, y, off float64) {
	for j := range b.rows {
		dx, dy := b.step*float64(b.left)-x, b.step*float64(b.low+j)-y
		dy *= dy
		row := b.row(j)
		for i := range row {
			if d := float32(math.Sqrt(dx*dx+dy) - off); d < row[i] {
				row[i] = d
			}
			dx += b.step
		}
	}
}

// lowerToSide lowers the nodes to the distance from the straight line through (x, y) with the unit normal (nx, ny), less
// off.
func (b *patch) lowerToSide(x, y, nx, ny, off float64) {
	for j := range b.rows {
		d := (b.step*float64(b.left)-x)*nx + (b.step*float64(b.low+j)-y)*ny - off
		row := b.row(j)
		for i := range row {
			if d := float32(d); d < row[i] {
				row[i] = d
			}
			d += b.step * nx
		}
	}
}

// lowerTo lowers the nodes to any margin.
func (b *patch) lowerTo(margin func(x, y float64) float64) {
	for j := range b.rows {
		y, row := b.step*float64(b.low+j), b.row(j)
		for i := range row {
			if d := float32(margin(b.step*float64(b.left+i), y)); d < row[i] {
				row[i] = d
			}
		}
	}
}

func (b *patch) node(i, j int) geometry.Point {
	return geometry.Point{X: b.step * float64(b.left+i), Y: b.step * float64(b.low+j)}
}
