package rules

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// A finding shows where it is: its first point is on what it is of, its second on the other thing, and they are as far apart as it says.
func TestWhatIsAskedInFullShowsWhereItIs(t *testing.T) {
	result := judged(t, vehicles.Demo())
	outlet := result.Plan.Exhaust.Path[len(result.Plan.Exhaust.Path)-1]
	mouth := result.Plan.Intake.Path[len(result.Plan.Intake.Path)-1]
	pump := result.Plan.Fuel.Line.At(result.Plan.Fuel.Pump.Value)
	seen := map[*Rule]int{}
	for _, f := range result.Findings {
		if !slices.Contains(askedInFull, f.Rule) {
			continue
		}
		seen[f.Rule]++
		if f.N != (geometry.Point3{}) {
			assert.InDelta(t, 1, f.N.Norm(), 1e-9, f.About())
		}
		a, b := f.At[0], f.At[1]
		apart := b.Sub(a)
		line := &result.Plan.Run(runKind(f.Subject.Sort)).Line
		switch f.Rule {
		case exhaustBlast, exhaustUpwind:
			assert.InDelta(t, f.Value, apart.Norm(), 1e-6, f.About())
			assert.Less(t, a.Sub(outlet).Norm(), followed+1e-6)
		case intakeUpwind:
			assert.Equal(t, mouth, a)
			assert.InDelta(t, f.Value, apart.Norm(), 1e-6)
		case exhaustFiller, intakeSpray:
			assert.InDelta(t, f.Value, apart.Plan().Norm(), 1e-6, f.About())
			assert.True(t, f.Flat)
			assert.Equal(t, map[Sort]geometry.Point{TheExhaust: outlet.Plan(), TheIntake: mouth.Plan()}[f.Subject.Sort], a.Plan())
		case pumpHeat:
			assert.InDelta(t, 0, a.Sub(pump).Norm(), 1e-6)
			assert.Less(t, apart.Norm()-f.Value, 34.001, f.About())
			assert.Positive(t, apart.X*f.N.X+apart.Y*f.N.Y+apart.Z*f.N.Z, "from the pump towards it")
		case FuelLift, FuelHead:
			assert.InDelta(t, f.Value, apart.Z, 1e-6)
			assert.InDelta(t, 1.632993, f.Sigma, 1e-6, "two heights, each 2 mm either way")
		case firstClip:
			along := f.Value
			if f.Subject.Sort == TheFuel {
				along = line.Length() - f.Value
			}
			assert.InDelta(t, 0, line.At(along).Sub(a).Norm(), 1e-6, f.About())
		case clipHold:
			radius := result.Plan.Run(runKind(f.Subject.Sort)).Radius
			assert.InDelta(t, f.Value, apart.Norm()-radius, 1e-6, f.About())
			assert.Positive(t, apart.Dot(f.N), f.About())
		case mufflerReach, pumpReach:
			require.Equal(t, Thing{Sort: TheGround}, f.Against)
			assert.InDelta(t, result.Job.Floor.Ground+a.Z, f.Value, 1e-6)
			under := pump
			if m := result.Plan.Exhaust.Muffler; f.Rule == mufflerReach {
				under = m.Axis[0].Add(m.Axis[1]).Scale(0.5).Sub(geometry.Point3{Z: m.Radius})
			}
			assert.InDelta(t, 0, a.Sub(under).Norm(), 1e-9, f.About())
		}
	}
	for _, r := range []*Rule{
		exhaustBlast, exhaustUpwind, intakeUpwind, exhaustFiller, intakeSpray, pumpHeat, FuelLift, FuelHead, firstClip, clipHold, mufflerReach, pumpReach,
	} {
		assert.Positive(t, seen[r], r.ID)
	}
}
