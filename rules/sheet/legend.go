package sheet

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
)

// Legend says what the patterns, lines and signs of a picture are, those that it has and that mean something by themselves.
type Legend struct{ Scene scene.Scene }

// A legend's samples, mm, and the words behind them that are of no pen.
const (
	sampleWide = 7
	sampleHigh = 2.8
	legendRow  = 3.3
)

var states = []string{"! foul", "? doubtful, or not measured", "dashed: behind the floor", "dotted: " + rules.NotMeasuredHere}

func (l Legend) lay(f *flow) {
	x, first := f.left, true
	next := func(wide float64) {
		if first || x+wide > f.left+f.wide {
			f.need(legendRow)
			x, first = f.left, false
			f.y += legendRow
		}
	}
	style := vector.Text{Size: small}
	for _, role := range l.roles() {
		style.Words = role.Pen().Means
		wide := sampleWide + 1.5 + vector.WidthOf(style) + 5
		next(wide)
		sample(f, role, vector.Box{Left: x, Top: f.y - sampleHigh, Width: sampleWide, Height: sampleHigh})
		f.write(x+sampleWide+1.5, f.y-0.5, style)
		x += wide
	}
	for _, words := range states {
		style.Words = words
		wide := vector.WidthOf(style) + 5
		next(wide)
		f.write(x, f.y-0.5, style)
		x += wide
	}
	f.y += 1
}

// roles are those of the picture that a legend speaks of.
func (l Legend) roles() (all []scene.Role) {
	for role := range scene.Role(scene.Roles) {
		has := slices.ContainsFunc(l.Scene.Items, func(it scene.Item) bool { return it.Role == role })
		if has && role.Pen().Means != "" {
			all = append(all, role)
		}
	}
	return all
}

// sample draws what has a role as a picture does.
func sample(f *flow, role scene.Role, box vector.Box) {
	size := geometry.Point{X: box.Width, Y: box.Height}
	it := scene.Item{Role: role, Solid: scene.Upright(geometry.NewRectangle(geometry.Point{X: 0.3, Y: 0.3}, size.Sub(geometry.Point{X: 0.3, Y: 0.3}), 0), 0, 1)}
	switch pen := role.Pen(); {
	case pen.Sign != scene.NoSign:
		it.Primitive, it.At = scene.Spot, size.Scale(0.5).At(0)
	case pen.Fill == scene.Unfilled:
		it.Primitive = scene.Outline
	}
	one := scene.Scene{Projection: scene.Above.Projection(), Items: []scene.Item{it}}
	look := vector.Black(small, func(scene.Measure) string { return "" }, printable)
	f.draw(func(b vector.Board) { vector.Draw(b, &one, vector.At(&one, box, size.Scale(0.5), 1), look) })
}
