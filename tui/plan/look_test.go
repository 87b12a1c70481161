package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

func TestLookingAtAFinding(t *testing.T) {
	f := rules.Finding{At: [2]geometry.Point3{{X: 1000, Y: 200}, {X: 1100, Y: 260}}, Places: 2}
	c := LookAt(f, scene.Above, 80, 24, survey.Millimetres)
	assert.Equal(t, scene.Above, c.View)
	assert.Positive(t, c.Scale)
	assert.Equal(t, desk.Camera{View: scene.Below}, LookAt(rules.Finding{}, scene.Below, 80, 24, survey.Millimetres), "the whole floor")
}
