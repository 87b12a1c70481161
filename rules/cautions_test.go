package rules

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// lying is an obstruction of a kind: low x, low y, high x, high y.
func lying(kind string, box [4]float64) vehicles.Obstruction {
	o := vehicles.Obstruction{Name: "the " + kind, Kind: kind, Measured: true, Drop: vehicles.Span{From: 20, To: 200, Set: true}}
	o.X = vehicles.Pair{survey.FromNumber(box[0], false), survey.FromNumber(box[2], false)}
	o.Y = vehicles.Pair{survey.FromNumber(box[1], false), survey.FromNumber(box[3], false)}
	return o
}

// drilledInto is a job with a thing under its floor: a cut of 127 at x 1210, y 240, and nothing else, but what change adds.
func drilledInto(o vehicles.Obstruction, change func(*vehicles.Job)) vehicles.Job {
	job := tidy()
	job.Exhaust, job.Intake, job.Fuel, job.Heater = nil, nil, nil, nil
	job.Obstructions = append(slices.Clone(job.Obstructions), o)
	if change != nil {
		change(&job)
	}
	return job
}

// each caution that depends on the job, with jobs in which it applies and jobs in which it doesn't. The cut's rim is at
// x 1273.5, so that 300 mm from it is x 1573.5.
var dangerous = []struct {
	name, about, kind string
	box               [4]float64
	change            func(*vehicles.Job)
	applies           bool
}{
	{"cable just within reach of the cut", "High voltage", "high-voltage cable", [4]float64{1573, 200, 1600, 300}, nil, true},
	{"cable just beyond", "High voltage", "high-voltage cable", [4]float64{1574, 200, 1600, 300}, nil, false},
	{"battery under the cut", "High voltage", "traction battery", [4]float64{1000, 0, 1500, 500}, nil, true},
	{"a loom is none", "High voltage", "wiring", [4]float64{1300, 200, 1320, 300}, nil, false},
	{"nothing is to be drilled", "High voltage", "traction battery", [4]float64{1000, 0, 1500, 500}, func(j *vehicles.Job) { j.Cut = nil }, false},
	{"beside a run", "High voltage", "high-voltage cable", [4]float64{2500, 200, 2520, 300}, func(j *vehicles.Job) {
		h, _ := vehicles.HeaterClass("2 kW")
		j.Heater = &h
		j.Intake = &vehicles.Run{Across: 28, Bend: vehicles.Some(60), Path: []vehicles.RunPoint{{X: 1175, Y: 265, Drop: 120}, {X: 2200, Y: 265, Drop: 120}}}
	}, true},
	{"beside a bolt", "High voltage", "high-voltage cable", [4]float64{1580, 200, 1600, 300}, func(j *vehicles.Job) {
		h, _ := vehicles.HeaterClass("2 kW")
		h.Bolts = [][2]float64{{80, 0}}
		j.Heater = &h
	}, true},
	{"tank near the cut", "Petrol", "fuel tank", [4]float64{1500, 100, 2000, 500}, nil, true},
	{"tank just within reach", "Petrol", "fuel tank", [4]float64{1573, 100, 2000, 500}, nil, true},
	{"tank far away", "Petrol", "fuel tank", [4]float64{1574, 100, 2000, 500}, nil, false},
	{"another tank", "Petrol", "water tank", [4]float64{1500, 100, 2000, 500}, nil, false},
	{"tank that holds petrol", "Petrol", "fuel tank", [4]float64{1500, 100, 2000, 500}, holding("petrol"), true},
	{"tank that holds diesel", "Petrol", "fuel tank", [4]float64{1500, 100, 2000, 500}, holding("diesel"), false},
	{"tank that a diesel heater drinks from", "Petrol", "fuel tank", [4]float64{1500, 100, 2000, 500}, func(j *vehicles.Job) {
		j.Fuel = lineFrom(vehicles.Diesel, "the fuel tank", 1550)
	}, false},
	{"tank that a petrol heater drinks from", "Petrol", "fuel tank", [4]float64{1500, 100, 2000, 500}, func(j *vehicles.Job) {
		j.Fuel = lineFrom("petrol", "the fuel tank", 1550)
	}, true},
	{"the fuel line's own hole", "Petrol", "fuel tank", [4]float64{2000, 100, 2400, 500}, func(j *vehicles.Job) {
		j.Fuel = lineFrom(vehicles.Diesel, "", 1900)
	}, true},
	{"beside a run only", "Petrol", "fuel tank", [4]float64{2000, 100, 2400, 500}, func(j *vehicles.Job) {
		h, _ := vehicles.HeaterClass("2 kW")
		j.Heater = &h
		j.Intake = &vehicles.Run{Across: 28, Bend: vehicles.Some(60), Path: []vehicles.RunPoint{{X: 1175, Y: 265, Drop: 120}, {X: 1900, Y: 265, Drop: 120}}}
	}, false},
}

func holding(fuel string) func(*vehicles.Job) {
	return func(j *vehicles.Job) {
		last := len(j.Obstructions) - 1
		o := j.Obstructions[last]
		o.Holds = fuel
		j.Obstructions = j.Obstructions.With(last, o)
	}
}

// lineFrom is a fuel line that comes down through the floor at x.
func lineFrom(fuel, from string, x float64) *vehicles.Run {
	return &vehicles.Run{Across: 4.5, Supply: vehicles.Supply{Kind: fuel, From: from}, Path: []vehicles.RunPoint{
		{X: x, Y: 300, Drop: -50}, {X: x, Y: 300, Drop: 50}, {X: 1210, Y: 205, Drop: 50},
	}}
}

func TestCautionsThatDependOnTheJob(t *testing.T) {
	seen := map[string][2]bool{}
	for _, c := range dangerous {
		result := judged(t, drilledInto(lying(c.kind, c.box), c.change))
		applies := seen[c.about]
		for _, caution := range Cautions() {
			if caution.About == c.about {
				assert.Equal(t, c.applies, caution.AppliesTo(&result), c.name)
				assert.Equal(t, c.applies, len(Dangers(&result)) == 1 && Dangers(&result)[0] == caution.Brief, c.name)
			}
		}
		applies[map[bool]int{true: 1}[c.applies]] = true
		seen[c.about] = applies
	}
	for _, caution := range Cautions() {
		if caution.applies == nil {
			assert.Empty(t, caution.Brief, caution.About)
			continue
		}
		assert.NotEmpty(t, caution.Brief, caution.About)
		assert.Equal(t, [2]bool{true, true}, seen[caution.About], "%s: a job in which it applies, and one in which it doesn't", caution.About)
	}
}

func TestEachCautionIsReadOnce(t *testing.T) {
	result := judged(t, drilledInto(lying("traction battery", [4]float64{1300, 200, 1500, 300}), nil))
	said := map[string]bool{}
	for when := EveryTime; when <= FirstRun; when++ {
		list := CautionsFor(when, &result)
		assert.NotEmpty(t, list)
		for _, c := range list {
			assert.False(t, said[c.About] || said[c.Say], c.About)
			said[c.About], said[c.Say] = true, true
		}
	}
	assert.False(t, said["Petrol"], "there is no tank")
	assert.Len(t, said, 2*(len(Cautions())-1))
	assert.Equal(t, "High voltage", CautionsFor(BeforeDrilling, &result)[0].About, "what this job is in danger of comes first")
}

// What the trade asks to be said; no source but where one is named.
func TestTheCautionsNameEveryDanger(t *testing.T) {
	var text strings.Builder
	for _, c := range Cautions() {
		text.WriteString(c.About + " " + c.Say + " ")
	}
	for _, words := range []string{
		"stands", "maker's points only", "level ground", "battery", "wait", "seat", "belt", "nobody under the van", "a stop on the bit", "a board between bit and tank, held by props",
		"look again from below", "bit out", "saw", "above and below the bit", "brake line", "eyes", "ear", "swarf", "kills",
		"own instructions", "local code", "licensed", "extinguisher", "en 50291-2, tested", "do not drill; trained people only", "within 300 mm (12 in) of the cut, of a hole or of a run:", "within 300 mm (12 in) of the cut or of a hole, unless", "lowered and taken out", "or another place is chosen",
		"in the open, doors shut, nobody inside", "read from outside, stays at 0", "awning", "garage", "dry grass", "snow", "long after", "never cut the power",
		"pull the fuse and get out", "refuelled", "notice at the filler", "un regulation no. 122", "fuse at the battery", "no fuel joint inside",
	} {
		assert.Contains(t, strings.ToLower(text.String()), words)
	}
}

// The README tells the same dangers.
func TestTheREADMENamesEachCaution(t *testing.T) {
	data, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	for _, c := range Cautions() {
		assert.Contains(t, string(data), "\n- **"+c.About+".** ")
	}
}

func TestWhatToDoAboutWhatKillsAtATouch(t *testing.T) {
	for _, c := range []struct {
		about  string
		o      vehicles.Obstruction
		change func(*vehicles.Job)
		want   string
	}{
		{"high voltage", lying("traction battery", [4]float64{1300, 200, 1500, 300}), nil, "do not drill near it, trained people only; move the cut away from it, in Place."},
		{"petrol", lying("fuel tank", [4]float64{1300, 200, 1500, 300}), nil, "lower the tank and take it out, or move the cut away from it, in Place."},
		{"diesel", lying("fuel tank", [4]float64{1300, 200, 1500, 300}), holding("diesel"), "move the cut away from it, in Place."},
	} {
		result := judged(t, drilledInto(c.o, c.change))
		f := one(t, result.Job, "cut.clearance", c.o.Name)
		assert.Equal(t, c.want, result.Advice(&f), c.about)
	}
}
