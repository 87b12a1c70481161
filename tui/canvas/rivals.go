package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// How many cells each way a tile has.
const (
	tileCols = 8
	tileRows = 4
)

// rivals are the things in the picture that a name may be mistaken to be of, by kinds and by tiles of the picture: where there are thousands of them,
// those of a kind near a place are found without looking at all.
type rivals struct {
	west, south, wide, high float64 // of the picture's corner and of a tile, mm
	cols, rows              int
	kinds                   map[string]int // by code, from 0
	tiles                   [][]*part      // kind by kind, in each row by row from the south
}

// lay finds what there is in a picture.
func (r *rivals) lay(p *painter) {
	wide, high := p.CellSize()
	r.west, r.south, r.wide, r.high = p.west, p.north-float64(p.tall)*p.Scale, wide*tileCols, high*tileRows
	r.cols, r.rows = p.Cols/tileCols+1, p.Rows/tileRows+1
	for i := range r.tiles {
		clear(r.tiles[i]) // what they hold on to may be a job that is long gone
		r.tiles[i] = r.tiles[i][:0]
	}
	if r.kinds == nil {
		r.kinds = map[string]int{}
	}
	clear(r.kinds)
	for i := range p.parts {
		it := &p.parts[i]
		if it.Code == "" {
			continue
		}
		it.kind = r.kind(it.Code)
		if it.Primitive != scene.Area || it.Line != nil || !p.inPicture(it) {
			continue
		}
		r.each(it.kind, &it.Area, 0, func(tile *[]*part) bool {
			*tile = append(*tile, it)
			return false
		})
	}
}

// kind is the number of a code, which then has tiles.
func (r *rivals) kind(code string) int {
	kind, met := r.kinds[code]
	if !met {
		kind = len(r.kinds)
		r.kinds[code] = kind
		for len(r.tiles) < (kind+1)*r.cols*r.rows {
			r.tiles = append(r.tiles, nil)
		}
	}
	return kind
}

// any tells whether something is so of one of those of a kind that may be nearer than so many mm to an outline, or touch it.
func (r *rivals) any(kind int, f *geometry.Footprint, within float64, is func(*part) bool) bool {
	return r.each(kind, f, within, func(tile *[]*part) bool {
		for _, it := range *tile {
			if is(it) {
				return true
			}
		}
		return false
	})
}

// each goes through a kind's tiles within so many mm of an outline's box until one does; what lies beyond the picture belongs to the tiles at its edge.
func (r *rivals) each(kind int, f *geometry.Footprint, within float64, does func(tile *[]*part) bool) bool {
	low, high := f.Bounds()
	tile := func(v, from, size float64, n int) int { return int(max(min((v-from)/size, float64(n-1)), 0)) }
	left, right := tile(low.X-within, r.west, r.wide, r.cols), tile(high.X+within, r.west, r.wide, r.cols)
	for row := tile(low.Y-within, r.south, r.high, r.rows); row <= tile(high.Y+within, r.south, r.high, r.rows); row++ {
		for col := left; col <= right; col++ {
			if does(&r.tiles[(kind*r.rows+row)*r.cols+col]) {
				return true
			}
		}
	}
	return false
}
