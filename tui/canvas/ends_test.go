package canvas

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
)

// From behind the van's ends lie one before the other: only the nearer has its name, whole.
func TestTheEndsNamesNeverOverprint(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above, scene.FromRight, scene.FromBehind} {
		s := scene.Scene{Projection: view.Projection(), Items: []scene.Item{
			{Role: scene.Bumper, Label: "bumper", Solid: scene.Upright(box(-95, -25, -915, 915), 0, 200)},
			{Role: scene.Floor, Solid: scene.Upright(box(0, 3200, -890, 890), 0, 30)},
			{Role: scene.Nose, Label: "nose", Solid: scene.Upright(box(3200, 3460, -860, 860), 0, 200)},
		}}
		low := s.Projection.Point(pt(-100, -915).At(-300))
		high := s.Projection.Point(pt(3500, 915).At(300))
		s.Min, s.Max = pt(min(low.X, high.X), min(low.Y, high.Y)), pt(max(low.X, high.X), max(low.Y, high.Y))
		c := Paint(s, 100, 27, plainLook)
		var names []string
		for _, text := range c.Texts {
			names = append(names, text.Name)
			for i, r := range text.Name {
				assert.Equal(t, r, c.At(text.Col, text.Row+i).Rune, "%s of %s, from %s", string(r), text.Name, s.Projection.From)
			}
		}
		want := []string{"BUMPER", "NOSE"}
		if view == scene.FromBehind {
			want = want[:1]
		}
		assert.Equal(t, want, names, "from %s", s.Projection.From)
	}
}
