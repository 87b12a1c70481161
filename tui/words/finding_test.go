package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// under is a finding under a rule of the book.
func under(t *testing.T, id string, f rules.Finding) rules.Finding {
	limit, ok := rules.Builtin().Lookup(id, "")
	require.True(t, ok, id)
	f.Limit = &limit
	return f
}

func TestAFindingInWords(t *testing.T) {
	pipe := under(t, "cut.clearance", rules.Finding{
		Subject: rules.Thing{Sort: rules.TheCut}, Against: rules.Thing{Sort: rules.AnObstruction, Name: "brake pipe, right"}, Value: 48, Sigma: 1.5,
		Required: vehicles.Some(60), Margin: vehicles.Some(-12), Verdict: rules.Foul,
	})
	assert.Equal(t, "48 mm", Value(pipe, desk.Millimetres))
	assert.Equal(t, "60 mm", Required(pipe, desk.Millimetres))
	assert.Equal(t, "12 mm short", Margin(pipe, desk.Millimetres))
	assert.Equal(t, "-12", Signed(pipe, desk.Millimetres))
	assert.Equal(t, "± 2.9", PlusMinus(pipe, desk.Millimetres), "1.96 times 1.5")
	assert.Equal(t, `1/2" short`, Margin(pipe, desk.Inches), "12 mm is 7.56 sixteenths")
	assert.Equal(t, "at least", Sense(pipe))

	little := pipe
	little.Margin = vehicles.Some(-0.03)
	for u, want := range map[survey.Units][2]string{desk.Millimetres: {"0.03 mm short", "-0.03"}, desk.Inches: {`0.001" short`, `-0.001"`}} {
		assert.Equal(t, want, [2]string{Margin(little, u), Signed(little, u)}, "a break is never by 0")
	}
	facing := under(t, "intake.facing", rules.Finding{Required: vehicles.Some(90), Margin: vehicles.Some(-0.004), Verdict: rules.Foul})
	assert.Equal(t, [2]string{"0.004° short", "-0.004°"}, [2]string{Margin(facing, desk.Millimetres), Signed(facing, desk.Millimetres)})

	bends := under(t, "exhaust.bends", rules.Finding{
		Value: 200, Required: vehicles.Some(270), Margin: vehicles.Some(70), Verdict: rules.Clear,
	})
	assert.Equal(t, "200°", Value(bends, desk.Inches), "degrees are no length")
	assert.Equal(t, "70° to spare", Margin(bends, desk.Inches))
	assert.Equal(t, "at most", Sense(bends))

	assert.Equal(t, "70°", Signed(bends, desk.Inches), "in a column of lengths it has its own unit")
	assert.Equal(t, "", PlusMinus(bends, desk.Inches), "nothing measured enters")
	assert.Equal(t, "  exhaust bends", Named(bends))
	pipe.Weight = rules.Kills
	assert.Equal(t, "† cut: brake pipe, right", Named(pipe))
	for unit, want := range map[rules.Unit]string{
		rules.MM: "2.5", rules.Degree: "2.5°", rules.PerM: "2.5 mm/m", rules.Count: "2.5×", rules.Pure: "2.5u²",
	} {
		assert.Equal(t, want, InColumn(2.5, unit, desk.Millimetres))
	}

	nobody := under(t, "exhaust.length", rules.Finding{Value: 1800})
	assert.Equal(t, NoValue, Required(nobody, desk.Millimetres))
	assert.Equal(t, NoValue, Margin(nobody, desk.Millimetres))
	assert.Equal(t, "?", Signed(nobody, desk.Millimetres))

	assert.Equal(t, "1 foul, 1 doubtful", Tally([]rules.Finding{pipe, nobody, bends}))
	assert.Equal(t, "clear of what was entered", Tally([]rules.Finding{bends}))
	assert.Equal(t, rules.Foul, Worst([]rules.Finding{nobody, pipe}))
	assert.Equal(t, rules.Clear, Worst(nil))
	at, others := SplitAtCut([]rules.Finding{bends, pipe, nobody})
	assert.Equal(t, []rules.Finding{pipe}, at)
	assert.Equal(t, []rules.Finding{bends, nobody}, others)
}

// A margin below its own ± that is clear all the same says from where on it is; none else does.
func TestAClearMarginBelowItsOwnUncertaintyIsExplained(t *testing.T) {
	near := under(t, "intake.clearance", rules.Finding{Required: vehicles.Some(10), Margin: vehicles.Some(2.7), Sigma: 1.41, Verdict: rules.Clear})
	assert.Equal(t, "± 2.8", PlusMinus(near, desk.Millimetres))
	assert.Contains(t, WhyClear(near, desk.Millimetres), "clear from 2.3 mm to spare on: 95 % sure that it isn't short")
	near.Margin = vehicles.Some(2.8)
	assert.Empty(t, WhyClear(near, desk.Millimetres), "the ± says it")
	near.Margin, near.Verdict = vehicles.Some(2.1), rules.Doubtful
	assert.Empty(t, WhyClear(near, desk.Millimetres))
	near.Sigma, near.Verdict = 0, rules.Clear
	assert.Empty(t, WhyClear(near, desk.Millimetres), "nothing measured enters")
}

func TestAWayInWords(t *testing.T) {
	s := desk.Settings{Nearside: desk.NearsideLeft}
	assert.Equal(t, "1.5 mm back, 0.8 mm offside", Way(geometry.Point{X: -1.5, Y: -0.8}, s))
	assert.Equal(t, "3 mm nearside", Way(geometry.Point{X: 0.04, Y: 3}, s))
	assert.Empty(t, Way(geometry.Point{X: 0.04, Y: -0.01}, s))
}

// A margin below nothing is what is short, never so much less than nothing to spare.
func TestWhatIsMissingIsShort(t *testing.T) {
	assert.Equal(t, "25 mm short", Spare(-25, survey.Millimetres))
	assert.Equal(t, "0 mm to spare", Spare(0, survey.Millimetres))
	assert.Equal(t, "38.5 mm to spare", Spare(38.5, survey.Millimetres))
	assert.Equal(t, `1" short`, Spare(-25.4, survey.Inches))
}

// A length without a ± says what it rests on.
func TestALengthThatNothingMeasuredEntersSaysSo(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	seen := 0
	for _, f := range result.Findings {
		if f.Rule.ID == "stub.in-cut" {
			seen++
			assert.Equal(t, "from the sizes entered", Unmeasured(f))
		}
		if PlusMinus(f, desk.Millimetres) != "" {
			assert.Empty(t, Unmeasured(f))
		}
	}
	assert.Positive(t, seen)
}

// The caution of a step says what there is to fear, and not only what it is called.
func TestACautionInBriefSaysWhatThereIsToFear(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	for _, step := range work.Of(&result) {
		if brief := StepCautionBrief(&step); step.Caution != "" {
			assert.Greater(t, len(brief), len("Caution: "+step.Caution+" (!)."), brief)
			assert.NotContains(t, brief, step.Caution+" (!)")
		}
	}
}

// A leg that goes straight down, or steeper than one in one, has no figure of mm in a metre that tells anybody anything: it is said in words.
func TestALegThatStandsHasNoFigure(t *testing.T) {
	of := func(fall float64) rules.Finding {
		return under(t, "exhaust.fall", rules.Finding{Value: fall, Margin: vehicles.Some(fall - 20), Required: vehicles.Some(20.0)})
	}
	for fall, want := range map[float64][3]string{
		rules.Upright: {"straight down", "enough", "enough"},
		3652.8:        {"steeper than 45°", "enough", "enough"}, 42313: {"steeper than 45°", "enough", "enough"}, 1010: {"steeper than 45°", "enough", "enough"},
		1000: {"1000 mm/m", "980 mm/m to spare", "980 mm/m"}, -1000: {"-1000 mm/m", "1020 mm/m short", "-1020 mm/m"},
		-52480: {"rises steeper than 45°", "far short", "far short"}, 34.3: {"34.3 mm/m", "14.3 mm/m to spare", "14.3 mm/m"}, 10: {"10 mm/m", "10 mm/m short", "-10 mm/m"},
	} {
		f := of(fall)
		assert.Equal(t, want[0], Value(f, desk.Millimetres))
		assert.Equal(t, want[1], Margin(f, desk.Millimetres))
		assert.Equal(t, want[2], Signed(f, desk.Millimetres))
	}
	assert.Equal(t, "straight up", Value(of(-rules.Upright), desk.Millimetres))
	assert.Equal(t, "straight down", InColumn(rules.Upright, rules.PerM, desk.Millimetres))
	assert.Equal(t, [3]string{"↓1000", "↓>45°", "↑>45°"}, [3]string{
		Fall(geometry.Point3{X: 10, Z: -10}), Fall(geometry.Point3{X: 10, Z: -424}), Fall(geometry.Point3{Y: 10, Z: 40}),
	})
	assert.Equal(t, "> 45°", InColumn(42313, rules.PerM, desk.Millimetres))
	assert.Equal(t, "> 45° up", InColumn(-42313, rules.PerM, desk.Millimetres))
	assert.Equal(t, "52480", InColumn(52480, rules.MM, desk.Millimetres))
	assert.Equal(t, "1000000", InColumn(rules.Upright, rules.MM, desk.Millimetres))
}

// What is counted, of which none may be, is too many or none: "2× short" says nothing.
func TestAMarginOfACountSaysHowManyTooMany(t *testing.T) {
	for margin, want := range map[float64]string{-2: "2 too many", -1: "1 too many", 0: "none"} {
		assert.Equal(t, want, spare(margin, rules.Count, desk.Millimetres))
	}
}
