package vector_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// A bar and a pipe that are filled have their names beside them; every name stands on bare ground, and none touches another.
func TestNamesStandOnBareGround(t *testing.T) {
	bar := scene.Item{Role: scene.Bumper, Solid: scene.Upright(geometry.NewRectangle(geometry.Point{X: 0, Y: -800}, geometry.Point{X: 70, Y: 800}, 0), 0, 1), Label: "rear"}
	pipe := scene.Item{
		Role: scene.Exhaust, Label: "pipe",
		Solid: scene.Upright(geometry.NewLine([]geometry.Point{{X: 500, Y: -600}, {X: 2500, Y: 600}}, 40), 0, 1),
	}
	box := scene.Item{Role: scene.Lines, Label: "fuel tank", Solid: scene.Upright(geometry.NewRectangle(geometry.Point{X: 1600, Y: -700}, geometry.Point{X: 2600, Y: -300}, 0), 0, 1)}
	near := box
	near.Label, near.Solid = "another tank", scene.Upright(geometry.NewRectangle(geometry.Point{X: 1650, Y: -700}, geometry.Point{X: 2650, Y: -300}, 0), 0, 1)
	s := sceneOf(bar, pipe, box, near)
	frame := vector.Fit(&s, page)
	var d diary
	vector.Draw(&d, &s, frame, vector.Black(3, nil, func(s string) string { return s }))
	names := map[string]vector.Box{}
	for i, a := range d.acts {
		if a.what != "text" {
			continue
		}
		names[a.text.Words] = vector.BoxOf(a.points[0].X, a.points[0].Y, a.text)
		require.Positive(t, i)
		under := d.acts[i-1]
		assert.Equal(t, "face", under.what, a.text.Words)
		assert.Equal(t, vector.White, under.ink, a.text.Words)
	}
	require.Len(t, names, 4)
	for _, it := range []scene.Item{bar, pipe} {
		for x := 0.0; x <= 1; x += 0.02 {
			for y := 0.0; y <= 1; y += 0.1 {
				b := names[it.Label]
				at := frame.Plane(geometry.Point{X: b.Left + x*b.Width, Y: b.Top + y*b.Height})
				require.False(t, it.Solid.Prism.Footprint.Contains(at), "%s on itself", it.Label)
			}
		}
	}
	for one, a := range names {
		for other, b := range names {
			gap := max(a.Left-b.Left-b.Width, b.Left-a.Left-a.Width, a.Top-b.Top-b.Height, b.Top-a.Top-a.Height)
			assert.True(t, one == other || gap >= 0.4, "%s and %s: %.2f mm", one, other, gap)
		}
	}
}
