package cutlist

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// judged is the sample van with runs of the test's own.
func judged(t require.TestingT, edit func(j vehicles.Job) vehicles.Job) *rules.Result {
	r, faults := rules.Judge(edit(vehicles.Demo()), rules.Builtin())
	require.Empty(t, faults)
	return &r
}

// straightDown is the sample van with its exhaust 300 mm down from the stub, then 500 mm towards the front, and nothing else laid.
func straightDown(muffler *vehicles.Muffler, bend vehicles.Number) func(j vehicles.Job) vehicles.Job {
	return func(j vehicles.Job) vehicles.Job {
		mouth, _ := j.Stub(vehicles.ExhaustRun)
		down := vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: 300 - mouth.Z}
		on := down
		on.X += 500
		run := vehicles.Run{Across: 26, Bend: bend, Path: []vehicles.RunPoint{down, on}, Hanging: vehicles.Hanging{Muffler: muffler, Clips: []float64{150, 500}}}
		j.Intake, j.Fuel = nil, nil
		return j.WithRun(vehicles.ExhaustRun, &run)
	}
}

// Two legs of 300 and 500 at a right angle, bent to a radius of 60: each gives 60 to the bend, which is a quarter of a circle. The cut adds
// 25 for the stub and 5 at each end.
func TestAPipeWithOneBendByHand(t *testing.T) {
	l := Of(judged(t, straightDown(nil, vehicles.Some(60))), Usual())
	require.Len(t, l.Pieces, 1)
	p := l.Pieces[0]
	assert.InDelta(t, 300+500-2*60+60*math.Pi/2, p.Developed, 1e-9)
	assert.InDelta(t, 774.2478+25+10, p.Cut, 1e-4)
	require.Len(t, p.Bits, 3)
	assert.InDelta(t, 240, p.Bits[0].Length, 1e-9)
	assert.InDelta(t, 60*math.Pi/2, p.Bits[1].Length, 1e-9, "radius times turn")
	assert.InDelta(t, 90, p.Bits[1].Turn, 1e-9)
	assert.InDelta(t, 60, p.Bits[1].Radius, 1e-9)
	assert.InDelta(t, 440, p.Bits[2].Length, 1e-9)
	assert.Equal(t, []Part{
		{vehicles.ExhaustRun, "exhaust clamp", 1, 3, 0}, {vehicles.ExhaustRun, "exhaust clip", 2, 4, 0}, {vehicles.ExhaustRun, "end sleeve", 1, 1, 0},
	}, l.Parts)
	assert.Equal(t, []string{"the exhaust has no muffler", "no intake is laid", "no fuel line is laid"}, l.Absent)
	require.Len(t, l.Stock, 1)
	assert.Equal(t, 1, l.Stock[0].Needed)
	assert.InDelta(t, 1000-809.2478, l.Stock[0].Left[0], 1e-4)
	assert.Zero(t, l.Stock[0].Lacks())
}

// A muffler of 180 that begins 100 mm along the second leg, 40 mm behind the bend: the pipe before it is 240 + 94.25 + 40, that behind it
// 500 - 280; the first goes over two ends, the second over one.
func TestAMufflerPartsThePipeByHand(t *testing.T) {
	l := Of(judged(t, straightDown(&vehicles.Muffler{Leg: 2, Start: 100, Length: 180, Across: 68}, vehicles.Some(60))), Usual())
	require.Len(t, l.Pieces, 2)
	assert.InDelta(t, 240+30*math.Pi+40, l.Pieces[0].Developed, 1e-9)
	assert.InDelta(t, l.Pieces[0].Developed+2*25+10, l.Pieces[0].Cut, 1e-9)
	assert.InDelta(t, 220, l.Pieces[1].Developed, 1e-9)
	assert.InDelta(t, 220+25+10, l.Pieces[1].Cut, 1e-9)
	assert.Equal(t, Part{vehicles.ExhaustRun, "muffler", 1, 1, 0}, l.Parts[0])
	assert.Equal(t, Part{vehicles.ExhaustRun, "exhaust clamp", 3, 3, 0}, l.Parts[1])
}

// A muffler that ends 9.9 mm before the outlet leaves a piece that nobody can saw and hold, said so; 10 mm are enough.
func TestAPieceTooShortToHoldIsSaid(t *testing.T) {
	for left, note := range map[float64]string{9.9: TooShort, 10: ""} {
		l := Of(judged(t, straightDown(&vehicles.Muffler{Leg: 2, Start: 500 - 180 - left, Length: 180, Across: 68}, vehicles.Some(60))), Usual())
		require.Len(t, l.Pieces, 2)
		assert.Empty(t, l.Pieces[0].Remark())
		assert.Equal(t, note, l.Pieces[1].Remark(), left)
		data, err := l.JSON()
		require.NoError(t, err)
		assert.Equal(t, note != "", strings.Contains(string(data), `"note":"`), left)
	}
}

// A corner that is not bent is said, and has no length.
func TestASharpCornerIsSaid(t *testing.T) {
	l := Of(judged(t, straightDown(nil, vehicles.Number{})), Usual())
	bits := l.Pieces[0].Bits
	require.Len(t, bits, 3)
	assert.InDelta(t, 90, bits[1].Turn, 1e-9)
	assert.Zero(t, bits[1].Length)
	assert.Zero(t, bits[1].Radius)
	assert.InDelta(t, 800, l.Pieces[0].Developed, 1e-9)
}

// The sample van's line: 520 to its pump and 682.4 from there, four joints with two clamps each.
func TestAFuelLineIsPartedByItsPump(t *testing.T) {
	l := Of(judged(t, func(j vehicles.Job) vehicles.Job { j.Exhaust, j.Intake = nil, nil; return j }), Usual())
	require.Len(t, l.Pieces, 2)
	assert.InDelta(t, 520, l.Pieces[0].Developed, 1e-9)
	assert.InDelta(t, 530, l.Pieces[0].Cut, 1e-9, "it butts: 5 at each end")
	joint := l.Parts[slices.IndexFunc(l.Parts, func(p Part) bool { return p.Of == FuelJoint })]
	assert.Equal(t, Part{Run: vehicles.FuelRun, Of: "fuel joint", Count: 4, Holds: 4, Each: 50}, joint)
	assert.InDelta(t, 200, joint.Total(), 1e-9, "all four out of one hose")
	assert.Contains(t, l.Parts, Part{vehicles.FuelRun, "fuel clamp", 8, 8, 0})
}

// A filter 100 before the pump parts the first piece into 420 and 100, with two joints more, wherever the pump is.
func TestAFuelLineIsPartedByItsFilter(t *testing.T) {
	l := Of(judged(t, func(j vehicles.Job) vehicles.Job {
		j.Exhaust, j.Intake = nil, nil
		fuel := *j.Fuel
		fuel.Filter = &vehicles.Filter{Leg: fuel.Pump.Leg, Start: fuel.Pump.Start - 100}
		return j.WithRun(vehicles.FuelRun, &fuel)
	}), Usual())
	require.Len(t, l.Pieces, 3)
	for i, want := range []struct {
		from, to string
		long     float64
	}{{"tank", "filter", 420}, {"filter", "pump", 100}} {
		assert.Equal(t, [2]string{want.from, want.to}, [2]string{l.Pieces[i].From, l.Pieces[i].To})
		assert.InDelta(t, want.long, l.Pieces[i].Developed, 1e-9)
	}
	assert.Equal(t, [2]string{"pump", "heater"}, [2]string{l.Pieces[2].From, l.Pieces[2].To})
	assert.Contains(t, l.Parts, Part{vehicles.FuelRun, "fuel joint", 6, 4, 50})
	assert.Contains(t, l.Parts, Part{vehicles.FuelRun, "fuel filter", 1, 0, 0})
	assert.NotContains(t, strings.Join(l.Absent, " "), "filter")
}

// Legs that go on in one direction are one straight, wherever among the bits: by hand, 100 and 50 to a corner, 80 and 20 behind it, unbent.
func TestStraightsThatGoOnAreOneBit(t *testing.T) {
	path := []geometry.Point3{{}, {X: 100}, {X: 150}, {X: 150, Y: 80}, {X: 150, Y: 100}}
	for bend, want := range map[float64][]Bit{
		0:  {{Length: 150}, {Turn: 90}, {Length: 100}},
		10: {{Length: 140}, {Length: 5 * math.Pi, Turn: 90, Radius: 10}, {Length: 90}},
	} {
		line := geometry.Rounded(path, bend)
		got := bits(&line, 0, line.Length())
		require.Len(t, got, len(want), "bent to %g mm: %v", bend, got)
		for i := range want {
			assert.InDelta(t, want[i].Length, got[i].Length, 1e-9)
			assert.InDelta(t, want[i].Turn, got[i].Turn, 1e-9)
			assert.InDelta(t, want[i].Radius, got[i].Radius, 1e-9)
		}
	}
}

// A corner is one from a ten-thousandth on, bent or sharp: what turns by less is laid as if it were straight, and is told as one length.
func TestWhatHardlyTurnsIsStraight(t *testing.T) {
	for _, bend := range []float64{0, 60} {
		for turn, want := range map[float64]int{0.95e-4: 1, 1.05e-4: 3} {
			line := geometry.Rounded([]geometry.Point3{{}, {X: 400}, {X: 800, Y: 400 * math.Tan(turn)}}, bend)
			got := bits(&line, 0, line.Length())
			assert.Len(t, got, want, "a turn of %g, bent to %g mm: %v", turn, bend, got)
			if want == 1 {
				assert.InDelta(t, line.Length(), got[0].Length, 1e-9)
			}
		}
	}
}

// What rounding leaves of a leg is no bend, in the list as along the run.
func TestALegMadeOfRoundingIsNoBend(t *testing.T) {
	line := geometry.Rounded([]geometry.Point3{{}, {X: 100}, {X: 100, Y: 1e-20}, {X: 200, Y: 1e-20}}, 0)
	assert.Equal(t, []Bit{{Length: 200}}, bits(&line, 0, line.Length()))
}

// The bits of a piece come to what lies between its ends along the run, whatever the run, and to the same whether it is taken whole
// or in two.
func TestBitsComeToTheLengthBetweenTheEnds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		coordinate := rapid.Float64Range(-1500, 1500)
		path := make([]geometry.Point3, rapid.IntRange(2, 7).Draw(rt, "points"))
		for i := range path {
			path[i] = geometry.Point3{X: coordinate.Draw(rt, "x"), Y: coordinate.Draw(rt, "y"), Z: coordinate.Draw(rt, "z") / 5}
		}
		line := geometry.Rounded(path, rapid.Float64Range(0, 90).Draw(rt, "bend"))
		share := rapid.Float64Range(0, 1)
		from, to := share.Draw(rt, "from")*line.Length(), share.Draw(rt, "to")*line.Length()
		if from > to {
			from, to = to, from
		}
		sum := func(from, to float64) (length, turn float64) {
			for _, b := range bits(&line, from, to) {
				length, turn = length+b.Length, turn+b.Turn
			}
			return length, turn
		}
		part, _ := sum(from, to)
		assert.InDelta(rt, to-from, part, 1e-6)
		whole, turn := sum(0, line.Length())
		assert.InDelta(rt, line.Length(), whole, 1e-6)
		assert.InDelta(rt, line.Turns(), turn, 0.01*float64(len(path)), "what counts as straight on is left out")
		before, _ := sum(0, from)
		after, _ := sum(from, line.Length())
		assert.InDelta(rt, whole, before+after, 1e-6)
	})
}

// What is cut and what is left over are all of the lengths begun; no length is cut twice, and no two could have been one.
func TestStockIsCutUpWhole(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := maker{kit: Usual()}
		cut := 0.0
		for _, v := range rapid.SliceOfN(rapid.Float64Range(1, 1400), 1, 12).Draw(rt, "cuts") {
			m.Pieces = append(m.Pieces, Piece{Of: "intake hose", Cut: v})
			if v <= 1000 {
				cut += v
			}
		}
		m.pack("intake hose")
		s := m.Stock[0]
		left := 0.0
		for _, v := range s.Left {
			assert.GreaterOrEqual(rt, v, 0.0)
			left += v
		}
		assert.InDelta(rt, float64(s.Needed)*1000, cut+left, 1e-6)
		fewest := int(math.Ceil(cut/1000 - 1e-9))
		assert.GreaterOrEqual(rt, s.Needed, fewest)
		for i, a := range s.Left {
			for _, b := range s.Left[i+1:] {
				assert.Less(rt, (1000-a)+(1000-b), 2000.0)
				assert.Greater(rt, (1000-a)+(1000-b), 1000.0, "both fit into one")
			}
		}
	})
}

// The sample van's intake hose is longer than a length: the kit lacks it, whatever it holds, once in each writing.
func TestAPieceLongerThanALengthIsLacking(t *testing.T) {
	l := Of(judged(t, func(j vehicles.Job) vehicles.Job { j.Exhaust, j.Fuel = nil, nil; return j }), Usual())
	require.Len(t, l.Stock, 1)
	require.Len(t, l.Stock[0].TooLong, 1)
	assert.Zero(t, l.Stock[0].LacksLengths())
	assert.Equal(t, 1, l.Stock[0].Lacks())
	data, err := l.JSON()
	require.NoError(t, err)
	assert.Contains(t, string(data), `"kit":1,"lacks":1}`)
	var text strings.Builder
	require.NoError(t, l.CSV(&text, "TL-07"))
	rows, err := csv.NewReader(strings.NewReader(text.String())).ReadAll()
	require.NoError(t, err)
	lacks := 0
	for _, row := range rows {
		if strings.HasPrefix(row[2], "intake hose, ") {
			n, err := strconv.Atoi(row[len(row)-1])
			require.NoError(t, err)
			lacks += n
		}
	}
	assert.Equal(t, 1, lacks)
}

// Every name that a list may have is in the kit, or making the list would fail.
func TestTheKitKnowsAllThatIsListed(t *testing.T) {
	l := Of(judged(t, func(j vehicles.Job) vehicles.Job {
		for _, of := range vehicles.RunKinds {
			run := *j.Run(of)
			run.Clips = []float64{100}
			j = j.WithRun(of, &run)
		}
		fuel := *j.Fuel
		fuel.Path = append(vehicles.List[vehicles.RunPoint]{{X: fuel.Path[0].X, Y: fuel.Path[0].Y, Drop: -100}}, fuel.Path...)
		pump := *fuel.Pump
		pump.Leg++
		fuel.Pump, fuel.Filter = &pump, &vehicles.Filter{Leg: pump.Leg, Start: pump.Start - 20}
		return j.WithRun(vehicles.FuelRun, &fuel)
	}), Usual())
	var names []Thing
	for _, p := range l.Parts {
		names = append(names, p.Of)
	}
	for _, p := range Usual().Part {
		assert.Contains(t, names, p.Of, "the kit names nothing that is never listed")
	}
	assert.Len(t, l.Stock, len(Usual().Stock))
	assert.Equal(t, "common practice, no source", l.Source)
}

func TestCSVIsReadBack(t *testing.T) {
	l := Of(judged(t, straightDown(nil, vehicles.Some(60))), Usual())
	var text strings.Builder
	require.NoError(t, l.CSV(&text, `van "7", blue`))
	rows, err := csv.NewReader(strings.NewReader(text.String())).ReadAll()
	require.NoError(t, err)
	for _, row := range rows {
		assert.Len(t, row, len(Columns))
		assert.Equal(t, `van "7", blue`, row[0])
	}
	text.Reset()
	require.NoError(t, l.CSV(&text, "=1+1"))
	assert.True(t, strings.HasPrefix(text.String(), "'=1+1,"), "no sum for a spreadsheet")
	assert.Equal(t, []string{"exhaust", "exhaust pipe", "stub", "outlet", "1", "809.2", "774.2", "", ""}, rows[0][1:])
}

func TestJSONHasTheFieldsItIsSaidToHave(t *testing.T) {
	l := Of(judged(t, func(j vehicles.Job) vehicles.Job { return j }), Usual())
	data, err := l.JSON()
	require.NoError(t, err)
	var out struct {
		Pieces []struct {
			Run, Of, From, To      string
			Across, Developed, Cut *float64
			Bits                   []struct{ Length, Turn, Radius float64 }
		}
		Stock []struct {
			Of                 string
			Length             float64
			Needed, Kit, Lacks *int
			Left, Too          []float64
			TooLong            []float64 `json:"too_long"`
		}
		Parts []struct {
			Run, Of           string
			Count, Kit, Lacks *int
		}
		Absent []string
		Source string
	}
	require.NoError(t, json.Unmarshal(data, &out))
	require.Len(t, out.Pieces, 5)
	for _, p := range out.Pieces {
		sum := 0.0
		for _, b := range p.Bits {
			sum += b.Length
		}
		assert.InDelta(t, *p.Developed, sum, 0.05*float64(len(p.Bits)+1), "to 0.1 each")
		assert.Greater(t, *p.Cut, *p.Developed)
	}
	for _, s := range out.Stock {
		assert.NotNil(t, s.Needed)
		assert.NotNil(t, s.TooLong)
		assert.Len(t, s.Left, *s.Needed)
	}
	for _, p := range out.Parts {
		assert.Equal(t, max(0, *p.Count-*p.Kit), *p.Lacks)
	}
	assert.NotEmpty(t, out.Absent)
	assert.NotEmpty(t, out.Source)

	empty := Of(judged(t, func(j vehicles.Job) vehicles.Job { j.Exhaust, j.Intake, j.Fuel = nil, nil, nil; return j }), Usual())
	data, err = empty.JSON()
	require.NoError(t, err)
	assert.JSONEq(t, `{"pieces": [], "stock": [], "parts": [], "absent": ["no exhaust is laid", "no intake is laid", "no fuel line is laid"], "source": "common practice, no source"}`, string(data))
}

// A part that a kit does not name is counted, and lacking.
func TestAKitHoldsNoneOfWhatItDoesNotName(t *testing.T) {
	kit := *Usual()
	kit.Part = slices.DeleteFunc(slices.Clone(kit.Part), func(p PartOf) bool { return p.Of == "pump" })
	r := judged(t, func(j vehicles.Job) vehicles.Job { return j })
	for _, p := range Of(r, &kit).Parts {
		if p.Of == "pump" {
			assert.Equal(t, 1, p.Lacks())
			return
		}
	}
	assert.Fail(t, "the pump is not counted")
}
