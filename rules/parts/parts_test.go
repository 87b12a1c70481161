package parts

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/vehicles"
)

func listOf(t *testing.T, job vehicles.Job) List {
	r, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return Of(&r, cutlist.Usual())
}

// row is the row of a part, whatever it is for; ok is false where the list has none.
func (l List) row(of string) (Row, bool) {
	for _, r := range l.Rows {
		if r.Of == of {
			return r, true
		}
	}
	return Row{}, false
}

// The sample van by hand: two kinds of pipe of 1 m each want two lengths where the kit has one, three exhaust clips of four.
func TestTheSamplesPartsByHand(t *testing.T) {
	l := listOf(t, vehicles.Demo())
	for _, want := range []Row{
		{For: "heater", Of: "heater", Size: "2 kW", Count: vehicles.Some(1), Unit: "pieces"},
		{For: "heater", Of: "collar", Size: "45 mm deep", Count: vehicles.Some(1), Unit: "pieces", Kit: vehicles.Some(1), Note: "comes with the heater"},
		{For: "heater", Of: "bolt, nut and two washers", Size: "for a hole of 7 mm, 45 mm long at least", Count: vehicles.Some(4), Unit: "sets", Note: "long enough for plate, floor and nut, and no longer"},
		{For: "exhaust", Of: "muffler", Size: "68 mm across, 180 mm long", Count: vehicles.Some(1), Unit: "pieces", Kit: vehicles.Some(1), Source: practice},
		{For: "exhaust", Of: "exhaust clip", Count: vehicles.Some(3), Unit: "pieces", Kit: vehicles.Some(4), Source: practice},
		{For: "intake", Of: "intake clip", Count: vehicles.Some(4), Unit: "pieces", Kit: vehicles.Some(2), Source: practice},
		{For: "fuel line", Of: "fuel joint", Size: "50 mm of hose", Count: vehicles.Some(4), Unit: "pieces", Kit: vehicles.Some(4), Note: "200 mm in all, unless the heater's instructions say another", Source: practice},
		{For: "fuel line", Of: "fuel clamp", Count: vehicles.Some(8), Unit: "pieces", Kit: vehicles.Some(8), Source: practice},
		{For: "fuel line", Of: "fuel take-off", Count: vehicles.Some(1), Unit: "pieces", Note: "for fuel tank"},
	} {
		got, there := l.row(want.Of)
		assert.True(t, there, want.Of)
		assert.Equal(t, want, got)
	}
	clips, _ := l.row("intake clip")
	assert.Equal(t, vehicles.Some(2), clips.Buy())
	sealant, _ := l.row("sealant")
	assert.Equal(t, vehicles.Some(1), sealant.Buy(), "30.5 ml of two beads: one cartridge")
	fuse, _ := l.row("fuse and its holder")
	assert.Equal(t, "15 A", fuse.Size, "1.25 times 9 A is 11.25 A")
	cable, _ := l.row("supply cable")
	assert.NotContains(t, cable.Note, "tape how long")
	assert.Equal(t, vehicles.Some(9.0), cable.Buy(), "4.2 m there and back, and 0.3 m more of each")
	held, _ := l.row("cable clip")
	assert.Equal(t, vehicles.Some(14.0), held.Buy(), "4.2 m by 0.3 m")
	bolts, _ := l.row("screw and nut, or rivet")
	assert.Equal(t, vehicles.Some(12.0), bolts.Buy(), "three, four and five clips")
	pipe, _ := l.row("exhaust pipe")
	assert.Equal(t, "26 mm across, 1000 mm long", pipe.Size)
	assert.Equal(t, "lengths", pipe.Unit)
}

// What the cut list counts is here as it is there, and nothing of it is lost.
func TestThePartsAreThoseOfTheCutList(t *testing.T) {
	r, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	cut, l := cutlist.Of(&r, cutlist.Usual()), Of(&r, cutlist.Usual())
	for _, p := range cut.Parts {
		row, there := l.row(string(p.Of))
		require.True(t, there, p.Of)
		assert.InDelta(t, float64(p.Count), row.Count.Value, 0)
		assert.InDelta(t, float64(p.Lacks()), row.Buy().Value, 0)
	}
	for _, s := range cut.Stock {
		row, there := l.row(string(s.Of))
		if s.Needed == 0 {
			assert.False(t, there)
		} else {
			assert.InDelta(t, float64(s.Needed), row.Count.Value, 0)
		}
		long := 0
		for _, other := range l.Rows {
			if strings.HasPrefix(other.Of, string(s.Of)+" in one piece") {
				long++
			}
		}
		assert.Equal(t, len(s.TooLong), long)
	}
	for _, text := range cut.Absent {
		assert.Contains(t, l.Absent, text)
	}
}

// What depends on the job is there in one that calls for it and not in one that doesn't.
func TestPartsAreThoseThatTheJobCallsFor(t *testing.T) {
	demo := vehicles.Demo()
	timber := demo
	timber.Floor.Deck = vehicles.Timber
	heated := *demo.Heater
	heated.Packed, heated.Duct, heated.DuctAcross = true, vehicles.Ends{Front: true, Rear: true}, 60
	shielded, tanked := *demo.Exhaust, *demo.Fuel
	shielded.Shielded.Names = []string{"spare wheel"}
	tanked.Supply.From = ""
	unlayered := demo // nobody has said of swages
	unlayered.Stack = nil
	for _, c := range []struct {
		part string
		has  vehicles.Job
		not  vehicles.Job
	}{
		{"steel plate", timber, demo}, {"varnish for cut timber", timber, demo}, {"cavity wax", demo, timber}, {"primer and top coat", demo, timber},
		{"metal packing", demo.WithHeater(heated), unlayered}, {"duct", demo.WithHeater(heated), demo}, {"heat shield", demo.WithRun(vehicles.ExhaustRun, &shielded), demo},
		{"fuel tank", demo.WithRun(vehicles.FuelRun, &tanked), demo}, {"fuel take-off", demo, demo.WithRun(vehicles.FuelRun, &tanked)},
		{"muffler", demo, demo.WithRun(vehicles.ExhaustRun, nil)}, {"fuse and its holder", demo, vehicles.Job{Ref: "TL-80", Floor: demo.Floor}},
	} {
		_, there := listOf(t, c.has).row(c.part)
		assert.True(t, there, c.part)
		_, there = listOf(t, c.not).row(c.part)
		assert.False(t, there, c.part)
	}
	clamps, _ := listOf(t, demo.WithHeater(heated)).row("duct clamp")
	assert.Equal(t, vehicles.Some(4), clamps.Count)
	empty := listOf(t, vehicles.Job{Ref: "TL-80", Floor: demo.Floor})
	assert.Empty(t, empty.Rows)
	assert.Contains(t, empty.Absent, "no heater is chosen")
}

// A cable of 4.3 m from battery to heater is 8.6 m of wire, and 0.3 m more of each for its ends: 9 A lose 0.5 V in at most 6.46 ohm a km, which takes 4 mm2 (IEC 60228, class 5:
// 4.95 ohm a km; 2.5 mm2 has 7.98). A duct of 2.4 m is ordered by that length.
func TestWhatIsSizedIsOrdered(t *testing.T) {
	job := vehicles.Demo()
	job.Electrics.Cable, job.Ductwork.Length = vehicles.Some(4300), vehicles.Some(2400)
	heater := *job.Heater
	heater.Duct = vehicles.Ends{Front: true}
	l := listOf(t, job.WithHeater(heater))
	cable, _ := l.row("supply cable")
	assert.InDelta(t, 9.2, cable.Count.Value, 1e-9)
	assert.Contains(t, cable.Size, "4 mm²")
	duct, _ := l.row("duct")
	assert.Equal(t, vehicles.Some(2.4), duct.Count)
}

// What keeps the floor sound is counted, too, from the holes. By hand: the cut of 127 mm through 21 mm, with a band of 25 mm round it on either face,
// is pi x 127 x 21 + 2 x pi x 152 x 25 = 32,255 mm2; a bolt hole of 7 mm pi x 7 x 21 + 2 x pi x 32 x 25 = 5,488 mm2, and there are four:
// 54,209 mm2; a clip's or the pump's of 6 mm pi x 6 x 21 + 2 x pi x 31 x 25 = 5,265 mm2, and there are 13: 122,658 mm2 a coat, at 10 m2 a litre 12.3 ml. Middle crossmember and left rail
// are by the cut, front crossmember and left sill by clips: four metres of wax at 0.4 m2 a metre and 0.2 mm are 320 ml.
func TestWhatKeepsTheFloorSoundIsCounted(t *testing.T) {
	job := vehicles.Demo()
	job.Floor.Thickness = 21
	l := listOf(t, job)
	for of, want := range map[string]struct {
		count float64
		said  string
	}{
		"primer and top coat": {2, "18 holes with a band of 25 mm round each, either face, 1227 cm² a coat: 13 ml of either"},
		"cavity wax":          {1, "4 within 300 mm, a metre of each at 0.2 mm: 320 ml"},
		"metal packing":       {1, "as large as the plate"},
		"grommet":             {1, "for the supply cable, where it goes through sheet"},
	} {
		row, there := l.row(of)
		require.True(t, there, of)
		assert.Equal(t, vehicles.Some(want.count), row.Count, of)
		assert.Contains(t, row.Note, want.said)
		assert.Equal(t, practice, row.Source)
	}
	packing, _ := l.row("metal packing")
	assert.Equal(t, "190 by 150 mm, 20 mm thick", packing.Size)
	job.Floor.Deck = vehicles.Timber
	varnish, _ := listOf(t, job).row("varnish for cut timber")
	assert.Equal(t, vehicles.Some(1), varnish.Count)
	assert.Contains(t, varnish.Note, "37 ml in three coats")
	pumpless := *job.Fuel
	pumpless.Pump = nil
	grommet, _ := listOf(t, job.WithRun(vehicles.FuelRun, &pumpless)).row("grommet")
	assert.Equal(t, vehicles.Some(1), grommet.Count)
}

// Wax is for box sections: where none is near a hole no can is ordered.
func TestNoWaxWithoutABoxSection(t *testing.T) {
	job := vehicles.Demo().WithRun(vehicles.FuelRun, nil)
	job.Obstructions = nil
	_, there := listOf(t, job).row("cavity wax")
	assert.False(t, there)
}

// Whatever is made larger or more, no less is ordered.
func TestMoreHolesTakeNoLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := vehicles.Demo()
		counted := func() (tins, wax float64) {
			r, faults := rules.Judge(job, rules.Builtin())
			require.Empty(t, faults)
			l := Of(&r, cutlist.Usual())
			paint, _ := l.row("primer and top coat")
			can, _ := l.row("cavity wax")
			return paint.Count.Value, can.Count.Value
		}
		tins, wax := counted()
		cut, heater := *job.Cut, *job.Heater
		cut.Across += rapid.Float64Range(0, 400).Draw(t, "wider")
		heater.Bolt += rapid.Float64Range(0, 20).Draw(t, "bolts wider")
		job = job.WithHeater(heater)
		job.Cut = &cut
		job.Floor.Thickness += rapid.Float64Range(0, 100).Draw(t, "thicker")
		more, can := counted()
		assert.GreaterOrEqual(t, more, tins)
		assert.GreaterOrEqual(t, can, wax)
	})
}

// No two rows are of the same thing for the same, and each has a unit and says where its count comes from or that the job says it.
func TestEachRowStandsOnce(t *testing.T) {
	seen := map[[2]string]bool{}
	for _, r := range listOf(t, vehicles.Demo()).Rows {
		assert.False(t, seen[[2]string{r.For, r.Of}], r.Of)
		seen[[2]string{r.For, r.Of}] = true
		assert.NotEmpty(t, r.Unit, r.Of)
		assert.NotEmpty(t, r.For, r.Of)
		assert.True(t, r.Count.Set || r.Note != "" || r.Source != "", r.Of)
	}
}

func TestTheListIsReadBack(t *testing.T) {
	l := listOf(t, vehicles.Demo())
	var text strings.Builder
	require.NoError(t, l.CSV(&text, `=van "7", blue`, true))
	rows, err := csv.NewReader(strings.NewReader(text.String())).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, Columns, rows[0])
	require.Len(t, rows, 1+len(l.Rows)+len(l.Absent))
	for i, r := range l.Rows {
		assert.Equal(t, []string{`'=van "7", blue`, r.For, r.Of, r.Size}, rows[i+1][:4])
		assert.Equal(t, r.Unit, rows[i+1][5])
		for col, n := range map[int]vehicles.Number{4: r.Count, 6: r.Kit, 7: r.Buy()} {
			back, err := strconv.ParseFloat(rows[i+1][col], 64)
			assert.Equal(t, n.Set, err == nil, "%s, %s: %q", r.Of, Columns[col], rows[i+1][col])
			assert.Equal(t, n.Set, rows[i+1][col] != "", "%s, %s: %q", r.Of, Columns[col], rows[i+1][col])
			assert.InDelta(t, n.Value, back, 1e-12, r.Of)
		}
	}
	data, err := l.JSON()
	require.NoError(t, err)
	var out struct {
		Parts []struct {
			Of         string
			Count, Buy *float64
			Unit       string
		}
		Absent []string
	}
	require.NoError(t, json.Unmarshal(data, &out))
	require.Len(t, out.Parts, len(l.Rows))
	for i, r := range l.Rows {
		assert.Equal(t, r.Of, out.Parts[i].Of)
		assert.Equal(t, r.Count.Set, out.Parts[i].Count != nil)
		assert.Equal(t, r.Count.Set, out.Parts[i].Buy != nil)
	}
	assert.Equal(t, l.Absent, out.Absent)
}

// Of a cable nobody has measured it is asked how long it is, not what the heater's instructions say.
func TestACableThatNobodyMeasuredIsAskedFor(t *testing.T) {
	job := vehicles.Demo()
	job.Electrics.Cable = vehicles.Number{}
	l := listOf(t, job)
	cable, there := l.row("supply cable")
	require.True(t, there)
	assert.False(t, cable.Count.Set)
	assert.Contains(t, cable.Note, "tape how long it is")
	assert.NotContains(t, cable.Source, "heater's figure")
}
