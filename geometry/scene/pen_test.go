package scene_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
)

// Without colour no role is taken for another: each says how it is told apart, and is.
func TestEveryRoleIsToldApartWithoutColour(t *testing.T) {
	type look struct {
		told   scene.Told
		fill   scene.Fill
		line   scene.Line
		weight scene.Weight
		sign   scene.Sign
	}
	seen := map[look]scene.Role{}
	for i := range scene.Roles {
		role, pen := scene.Role(i), scene.Role(i).Pen()
		assert.NotZero(t, pen.Front, "role %d has no pen", role)
		own := look{told: pen.Told}
		switch pen.Told {
		case scene.ByFill:
			assert.NotEqual(t, scene.Unfilled, pen.Fill)
			own.fill = pen.Fill
		case scene.ByLine:
			own.line, own.weight = pen.Line, pen.Weight
			assert.False(t, pen.Line == scene.Whole && pen.Weight == scene.Fine, "role %d has the line of everything else", role)
		case scene.BySign:
			assert.NotEqual(t, scene.NoSign, pen.Sign)
			own.sign = pen.Sign
		case scene.ByLabel, scene.ByShape:
			continue
		default:
			assert.Fail(t, "nothing tells it apart", "role %d", role)
		}
		other, taken := seen[own]
		assert.False(t, taken, "role %d looks like role %d", role, other)
		seen[own] = role
	}
}

// What is not measured is dotted before all else, what the floor hides is dashed, and anything else has its pen's line.
func TestLinesSayWhatIsHiddenAndUnsure(t *testing.T) {
	above := scene.Above.Projection()
	pipe := scene.Item{Role: scene.Lines, Layer: scene.Under}
	assert.Equal(t, scene.Dashed, above.LineOf(&pipe))
	below := scene.Below.Projection()
	assert.Equal(t, scene.Whole, below.LineOf(&pipe))
	assert.Equal(t, scene.Dashed, below.LineOf(&scene.Item{Role: scene.Intake}))
	pipe.Unsure = true
	assert.Equal(t, scene.Dotted, above.LineOf(&pipe))
}

func TestWhatIsPickedOutIsHeavyAndNamedFirst(t *testing.T) {
	order := []scene.Item{
		{Role: scene.Exhaust, State: scene.Foul},
		{Role: scene.Dimension, Selected: true},
		{Role: scene.Cut},
		{Role: scene.Movable, Selected: true},
		{Role: scene.Dimension},
		{Role: scene.Steel, State: scene.Foul},
		{Role: scene.Mark},
		{Role: scene.Steel, State: scene.Doubtful},
		{Role: scene.Muffler, State: scene.Foul},
	}
	for i := range order {
		if i > 0 {
			assert.Greater(t, order[i-1].Rank(), order[i].Rank(), "%d", i)
		}
		if order[i].Selected {
			assert.Equal(t, scene.Heavy, order[i].Weight())
		}
	}
}

// A muffler that is but a line is drawn as the barrel that it is; neither is a pipe heavy, nor the face of a muffler.
func TestAMufflerThatIsALineIsHeavy(t *testing.T) {
	assert.Equal(t, scene.Heavy, (&scene.Item{Role: scene.Muffler, Primitive: scene.Stroke}).Weight())
	assert.Equal(t, scene.Heavy, (&scene.Item{Role: scene.Exhaust, Primitive: scene.Stroke, Deadly: true}).Weight())
	for _, it := range []scene.Item{{Role: scene.Muffler, Primitive: scene.Area}, {Role: scene.Exhaust, Primitive: scene.Stroke}, {Role: scene.Intake, Primitive: scene.Stroke}} {
		assert.Equal(t, scene.Fine, it.Weight(), "%+v", it)
	}
}

// What lies over what, the lowest first: no thing of the van hides what is put in, no run its end, and nothing the cut, its centre and its pilot hole but what is in
// their way. Of what stands together none hides another by its pen.
func TestWhatHidesWhat(t *testing.T) {
	over := [][]scene.Role{
		{scene.Floor, scene.Bumper, scene.Nose, scene.Fitting, scene.Wheel},
		{scene.Steel, scene.Rail, scene.Rib, scene.Lines, scene.Hot, scene.Pressed, scene.Movable},
		{scene.Opening, scene.Plate, scene.Body, scene.Space},
		{scene.Exhaust, scene.Intake, scene.Fuel, scene.Muffler},
		{scene.Hole, scene.Dimension},
		{scene.Outlet, scene.Mouth, scene.Tie, scene.Mark, scene.Wish},
		{scene.Cut, scene.CutCentre, scene.Pilot},
		{scene.Conflict},
	}
	count := 0
	for i, together := range over {
		count += len(together)
		for _, role := range together {
			assert.Equal(t, together[0].Pen().Front, role.Pen().Front, "role %d", role)
			if i > 0 {
				assert.Greater(t, role.Pen().Front, over[i-1][0].Pen().Front, "role %d", role)
			}
		}
	}
	assert.Equal(t, scene.Roles, count)
}

// A run is named before all else, wherever it is drawn, and no louder than what is named after it.
func TestARunIsNamedFirstAndNotStressed(t *testing.T) {
	for _, role := range []scene.Role{scene.Exhaust, scene.Outlet, scene.Mouth} {
		run := scene.Item{Role: role}
		assert.Greater(t, run.Rank(), (&scene.Item{Role: scene.Dimension, Selected: true}).Rank(), role)
		assert.False(t, run.Stressed(), role)
		run.Selected = true
		assert.True(t, run.Stressed(), role)
	}
	for _, it := range []scene.Item{{Role: scene.Cut}, {Role: scene.Dimension}, {Role: scene.Steel, State: scene.Foul}, {Role: scene.Movable, Selected: true}} {
		assert.True(t, it.Stressed())
	}
	assert.False(t, (&scene.Item{Role: scene.Steel}).Stressed())
}

func TestWarningsBehindNames(t *testing.T) {
	for want, items := range map[string][]scene.Item{
		"!": {{State: scene.Foul}, {State: scene.Foul, Unsure: true}},
		"?": {{State: scene.Doubtful}, {State: scene.Clear, Unsure: true}, {Unsure: true}},
		"":  {{State: scene.Clear}, {}},
	} {
		for _, it := range items {
			assert.Equal(t, want, it.Warning(), "%+v", it)
		}
	}
}

// Of labels of one rank, where gas comes out goes before where air goes in, and what people find their way by before what else there is; what is
// aside before nothing.
func TestWhichOfEqualRankIsNamedFirst(t *testing.T) {
	order := []scene.Item{{Role: scene.Outlet}, {Role: scene.Mouth}, {Role: scene.Rail}, {Role: scene.Steel}}
	for i := range order[1:] {
		assert.Greater(t, order[i].Before(), order[i+1].Before(), "%d", i)
	}
	assert.Equal(t, (&scene.Item{Role: scene.Outlet}).Rank(), (&scene.Item{Role: scene.Mouth}).Rank())
	assert.Greater(t, (&scene.Item{Role: scene.Hot}).Before(), (&scene.Item{Role: scene.Hot, Aside: true}).Before())
}

// What floor and van hide of the heater is drawn near alone, and nothing that can be in the way: that is seen from however far away.
func TestNothingThatCanBeInTheWayIsLeftOut(t *testing.T) {
	for i := range scene.Roles {
		if pen := scene.Role(i).Pen(); pen.Rank >= scene.RankThing || pen.Fill != scene.Unfilled {
			assert.Equal(t, scene.Anywhere, pen.Range, "role %d", i)
			assert.False(t, pen.Yields, "role %d", i)
		}
	}
}
