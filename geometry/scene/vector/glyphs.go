package vector

import (
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"bench.example/undermark/geometry"
)

// outlinesOf is the letters of a text as an SVG path, mm: filled by the non-zero rule they are what the program's font has, whatever fonts a
// viewer has. Its first letter begins at a place of the baseline.
func outlinesOf(at geometry.Point, t Text) string {
	f := faceOf(t.Bold)
	f.mu.Lock()
	defer f.mu.Unlock()
	var d strings.Builder
	scale := t.Size / 64 / unit
	for _, r := range t.Words {
		glyph, err := f.font.GlyphIndex(&f.buf, r)
		if err != nil {
			continue
		}
		if segments, err := f.font.LoadGlyph(&f.buf, glyph, fixed.I(unit), nil); err == nil {
			outline(&d, at, scale, segments)
		}
		if advance, err := f.font.GlyphAdvance(&f.buf, glyph, fixed.I(unit), font.HintingNone); err == nil {
			at.X += float64(advance) * scale
		}
	}
	return d.String()
}

// outline writes a letter's segments, which are of an em with Y down, at a place.
func outline(d *strings.Builder, at geometry.Point, scale float64, segments sfnt.Segments) {
	for i, s := range segments {
		command, points := byte('M'), 1
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				d.WriteByte('z')
			}
		case sfnt.SegmentOpLineTo:
			command = 'L'
		case sfnt.SegmentOpQuadTo:
			command, points = 'Q', 2
		case sfnt.SegmentOpCubeTo:
			command, points = 'C', 3
		}
		d.WriteByte(command)
		for k, p := range s.Args[:points] {
			if k > 0 {
				d.WriteByte(' ')
			}
			d.WriteString(num(at.X+float64(p.X)*scale) + " " + num(at.Y+float64(p.Y)*scale))
		}
	}
	if len(segments) > 0 {
		d.WriteByte('z')
	}
}
