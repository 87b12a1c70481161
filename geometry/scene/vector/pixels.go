package vector

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/f64"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	xdraw "golang.org/x/image/draw"

	"bench.example/undermark/geometry"
)

// Pixels is a board of pixels.
type Pixels struct {
	Picture *image.RGBA
	across  float64         // pixels for a mm of a row
	scale   float64         // and of a column
	window  image.Rectangle // what is drawn on
	pen     *vector.Rasterizer
	fonts   map[fontKey]font.Face
}

type fontKey struct {
	bold bool
	size float64
}

// NewPixels returns an empty board of so many pixels, so many of them for a mm.
func NewPixels(wide, high int, perMM float64) *Pixels { return Stretched(wide, high, perMM, perMM) }

// Stretched returns an empty board on which a mm is so many pixels across, and another number of them down.
func Stretched(wide, high int, across, down float64) *Pixels {
	picture := image.NewRGBA(image.Rect(0, 0, wide, high))
	return &Pixels{
		Picture: picture, across: across, scale: down, window: picture.Bounds(), pen: vector.NewRasterizer(1, 1), fonts: map[fontKey]font.Face{},
	}
}

// Face fills an outline.
func (p *Pixels) Face(outline []geometry.Point, fill color.NRGBA) {
	switch {
	case len(outline) <= 2:
	case fill.A == 255 && level(outline):
		p.box(fill, outline)
	default:
		p.fill(fill, outline)
	}
}

// level tells whether an outline is that of a box along rows and columns.
func level(o []geometry.Point) bool {
	return len(o) == 4 && (o[0].X == o[1].X && o[1].Y == o[2].Y && o[2].X == o[3].X && o[3].Y == o[0].Y ||
		o[0].Y == o[1].Y && o[1].X == o[2].X && o[2].Y == o[3].Y && o[3].X == o[0].X)
}

// box fills a box as fill does, but the pixels that lie wholly in it at once: the most of a picture is floor.
func (p *Pixels) box(ink color.NRGBA, o []geometry.Point) {
	low := geometry.Point{X: min(o[0].X, o[2].X), Y: min(o[0].Y, o[2].Y)}
	high := geometry.Point{X: max(o[0].X, o[2].X), Y: max(o[0].Y, o[2].Y)}
	far := func(v float64) int { return int(max(min(v, 1e5), -1e5)) }
	whole := image.Rect(
		far(math.Ceil(low.X*p.across)), far(math.Ceil(low.Y*p.scale)), far(math.Floor(high.X*p.across)), far(math.Floor(high.Y*p.scale)))
	if whole.Dx() < 8 || whole.Dy() < 8 {
		p.fill(ink, o)
		return
	}
	draw.Draw(p.Picture, whole.Intersect(p.window), image.NewUniform(ink), image.Point{}, draw.Src)
	left, right := float64(whole.Min.X)/p.across, float64(whole.Max.X)/p.across
	top, bottom := float64(whole.Min.Y)/p.scale, float64(whole.Max.Y)/p.scale
	for _, edge := range [4]Box{
		{low.X, low.Y, high.X - low.X, top - low.Y}, {low.X, bottom, high.X - low.X, high.Y - bottom},
		{low.X, top, left - low.X, bottom - top}, {right, top, high.X - right, bottom - top},
	} {
		if edge.Width > 0 && edge.Height > 0 {
			p.fill(ink, edge.outline())
		}
	}
}

// Line draws a line: each piece a bar with round ends.
func (p *Pixels) Line(points []geometry.Point, s Stroke) {
	half := max(s.Width, 1/p.scale) / 2 // a thinner one would be seen as a paler one
	for _, piece := range dashed(points, s.Dashes) {
		for _, part := range p.inParts(apart(piece), s.Colour) {
			p.fill(s.Colour, tubeOf(part, half, 0.2/p.scale))
		}
	}
}

// longestPart is how long a line is that is filled at once, pixels: to fill one takes as long as to fill a box round it, and of a long
// one that is not level most is not the line.
const longestPart = 96

// inParts cuts a line into parts, each of which is drawn with ends of its own. A colour that is seen through is not cut: it would be
// darker where parts meet.
func (p *Pixels) inParts(path []geometry.Point, ink color.NRGBA) (parts [][]geometry.Point) {
	if len(path) == 0 {
		return nil
	}
	if ink.A < 255 {
		return [][]geometry.Point{path}
	}
	part, long := path[:1:1], 0.0
	for _, to := range path[1:] {
		from := part[len(part)-1]
		step := to.Sub(from).Norm() * p.scale
		pieces := int(math.Ceil(step / longestPart))
		if from.X == to.X || from.Y == to.Y {
			pieces = 1
		}
		for k := 1; k <= pieces; k++ {
			if at := from.Add(to.Sub(from).Scale(float64(k) / float64(pieces))); long+step/float64(pieces) > longestPart && len(part) > 1 {
				parts = append(parts, part)
				part, long = []geometry.Point{part[len(part)-1], at}, step/float64(pieces)
			} else {
				part, long = append(part, at), long+step/float64(pieces)
			}
		}
	}
	return append(parts, part)
}

// fill fills outlines by the non-zero rule.
func (p *Pixels) fill(ink color.NRGBA, outline []geometry.Point) {
	low, high := outline[0], outline[0]
	for _, q := range outline {
		low = geometry.Point{X: min(low.X, q.X), Y: min(low.Y, q.Y)}
		high = geometry.Point{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	box := image.Rect(
		int(math.Floor(max(low.X*p.across, -1))), int(math.Floor(max(low.Y*p.scale, -1))),
		int(math.Ceil(min(high.X*p.across, 1e5)))+1, int(math.Ceil(min(high.Y*p.scale, 1e5)))+1,
	).Intersect(p.window)
	if box.Empty() {
		return
	}
	p.pen.Reset(box.Dx(), box.Dy())
	for i, q := range outline {
		x, y := float32(q.X*p.across-float64(box.Min.X)), float32(q.Y*p.scale-float64(box.Min.Y))
		if i == 0 {
			p.pen.MoveTo(x, y)
		} else {
			p.pen.LineTo(x, y)
		}
	}
	p.pen.ClosePath()
	p.pen.Draw(p.Picture, box, image.NewUniform(ink), image.Point{})
}

// Windowed cuts off at a box.
func (p *Pixels) Windowed(b Box, draw func()) {
	before := p.window
	p.window = before.Intersect(image.Rect(
		int(math.Round(b.Left*p.across)), int(math.Round(b.Top*p.scale)), int(math.Round(b.right()*p.across)), int(math.Round(b.bottom()*p.scale))))
	draw()
	p.window = before
}

// Write writes a text.
func (p *Pixels) Write(at geometry.Point, t Text) {
	face := p.font(t)
	box := BoxOf(0, 0, t)
	pad := 2 * rimOf(t.Size)
	scale := p.letters()
	w, h := int((box.Width+2*pad)*scale)+2, int((box.Height+2*pad)*scale)+2
	left, base := pad*scale, (pad+ascent*t.Size)*scale
	mask := image.NewAlpha(image.Rect(0, 0, w, h))
	pen := font.Drawer{Dst: mask, Src: image.Opaque, Face: face, Dot: fixed.Point26_6{X: fixed.Int26_6(left * 64), Y: fixed.Int26_6(base * 64)}}
	pen.DrawString(t.Words)
	place := geometry.Point{X: at.X*p.across + box.Left*scale - left, Y: at.Y*p.scale - base}
	if t.Turned {
		p.turned(mask, at, box, geometry.Point{X: left, Y: base}, t)
		return
	}
	to := mask.Bounds().Add(image.Pt(int(math.Round(place.X)), int(math.Round(place.Y))))
	p.stamp(mask, to, t)
}

// stamp lays a text's mask on the picture, its rim first.
func (p *Pixels) stamp(mask *image.Alpha, to image.Rectangle, t Text) {
	if t.Rim.A > 0 {
		r := int(math.Ceil(rimOf(t.Size) * p.letters()))
		p.lay(grown(mask, r), to.Inset(-r), t.Rim)
	}
	p.lay(mask, to, t.Colour)
}

// grown is a mask with all that is within r pixels of it, r more to every side.
func grown(mask *image.Alpha, r int) *image.Alpha {
	out := image.NewAlpha(image.Rect(0, 0, mask.Rect.Dx()+2*r, mask.Rect.Dy()+2*r))
	for i, a := range mask.Pix {
		if a == 0 {
			continue
		}
		x, y := i%mask.Stride, i/mask.Stride
		for dy := -r; dy <= r; dy++ {
			half := int(math.Sqrt(float64(r*r - dy*dy)))
			at := (y+r+dy)*out.Stride + x + r
			row := out.Pix[at-half : at+half+1]
			for k := range row {
				row[k] = max(row[k], a)
			}
		}
	}
	return out
}

func (p *Pixels) lay(mask *image.Alpha, to image.Rectangle, ink color.NRGBA) {
	seen := to.Intersect(p.window)
	draw.DrawMask(p.Picture, seen, image.NewUniform(ink), image.Point{}, mask, seen.Min.Sub(to.Min), draw.Over)
}

// turned lays a text that reads upwards.
func (p *Pixels) turned(mask *image.Alpha, at geometry.Point, box Box, origin geometry.Point, t Text) {
	w, h := mask.Bounds().Dx(), mask.Bounds().Dy()
	up := image.NewAlpha(image.Rect(0, 0, h, w))
	xdraw.NearestNeighbor.Transform(up, f64.Aff3{0, 1, 0, -1, 0, float64(w)}, mask, mask.Bounds(), draw.Src, nil)
	x, y := at.X*p.across-origin.Y, at.Y*p.scale-box.Left*p.letters()+origin.X-float64(w)
	p.stamp(up, up.Bounds().Add(image.Pt(int(math.Round(x)), int(math.Round(y)))), t)
}

// letters is how many pixels a mm of letters has: they are not stretched, and never take more room than they should.
func (p *Pixels) letters() float64 { return min(p.across, p.scale) }

func (p *Pixels) font(t Text) font.Face {
	key := fontKey{t.Bold, t.Size}
	if p.fonts[key] == nil {
		face, err := opentype.NewFace(faceOf(t.Bold).font, &opentype.FaceOptions{Size: t.Size * p.letters(), DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			panic("the program's own font can't be drawn: " + err.Error())
		}
		p.fonts[key] = face
	}
	return p.fonts[key]
}
