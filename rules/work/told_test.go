package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// of is what of a job a step is done to.
func of(t *testing.T, job vehicles.Job, id string) string {
	l := Of(judged(t, job))
	require.GreaterOrEqual(t, l.Index(id), 0, id)
	return l[l.Index(id)].Of
}

// Where the pilot hole came out is told along the van and across it, whichever way it went.
func TestAPilotHoleIsToldWhicheverWayItWent(t *testing.T) {
	for want, off := range map[string][2]float64{
		"8 mm forward and 1.5 mm right": {8, -1.5}, "8 mm back and 1.5 mm left": {-8, 1.5}, "3 mm back and 2 mm right": {-3, -2}, "0 mm forward and 4 mm left": {0, 4},
	} {
		job := with(func(j *vehicles.Job) { j.Datum.HookBelow = vehicles.Number{} })
		job = job.WithDrilled(&vehicles.Pair{survey.FromNumber(job.Cut.At[0]+off[0], false), survey.FromNumber(job.Cut.At[1]+off[1], false)})
		l := Of(judged(t, job))
		assert.Equal(t, "measured on Marks, "+want+" of its mark", l[l.Index("pilot-looked")].Known)
	}
}

// Drains are counted on exhaust and intake, and the muffler's is named beside them.
func TestDrainsAreCounted(t *testing.T) {
	drained := func(job vehicles.Job, of vehicles.RunKind, n int, muffler bool) vehicles.Job {
		run := *job.Run(of)
		run.Drains = []float64{100, 200, 300}[:n]
		if !muffler {
			run.Muffler = nil
		}
		return job.WithRun(of, &run)
	}
	for _, c := range []struct {
		exhaust, intake int
		muffler         bool
		want            string
	}{
		{0, 0, true, "the muffler's"}, {1, 0, true, "1 drain, the muffler's"}, {2, 1, true, "3 drains, the muffler's"}, {0, 1, false, "1 drain"}, {2, 0, false, "2 drains"},
	} {
		job := drained(drained(demo, vehicles.ExhaustRun, c.exhaust, c.muffler), vehicles.IntakeRun, c.intake, false)
		assert.Equal(t, c.want, of(t, job, "drain-down"))
	}
	assert.Negative(t, Of(judged(t, drained(demo, vehicles.ExhaustRun, 0, false))).Index("drain-down"), "nothing drains")
}

// A cable that nobody measured has no size: the step says where it goes, and no more.
func TestASupplyThatIsNotSizedSaysWhereItGoes(t *testing.T) {
	job := with(func(j *vehicles.Job) {
		j.Electrics.Cable, j.Wiring = vehicles.Number{}, vehicles.Wiring{Battery: "under the seat", Cable: "along the sill."}
	})
	assert.Equal(t, "under the seat, along the sill", of(t, job, "supply-laid"))
	job.Wiring = vehicles.Wiring{}
	assert.Empty(t, of(t, job, "supply-laid"))
	l := Of(judged(t, job))
	assert.Equal(t, Expected{}, l[l.Index("supply-laid")].Expected)
}

// Whatever makes a hole has its edges filed and its swarf taken out: a cut, bolts, a fuel hole, or clips alone.
func TestWhateverIsDrilledIsFiled(t *testing.T) {
	unheld := func(job vehicles.Job) vehicles.Job {
		for _, k := range vehicles.RunKinds {
			job = job.WithRun(k, nil)
		}
		return job
	}
	cutAlone := unheld(heater(func(h *vehicles.Heater) { h.Bolts = nil }))
	fuelAlone := with(func(j *vehicles.Job) { j.Heater, j.Cut = nil, nil })
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		fuelAlone = fuelAlone.WithRun(of, nil)
	}
	holeAlone := throughTheFloor()
	line := *holeAlone.Fuel
	line.Clips, line.Pump = nil, nil
	holeAlone.Cut, holeAlone.Exhaust, holeAlone.Intake, holeAlone.Fuel = nil, nil, nil, &line
	for name, c := range map[string]struct {
		job    vehicles.Job
		drills bool
	}{"a fuel line's hole alone": {holeAlone, true}, "a cut alone": {cutAlone, true}, "cut and bolts": {unheld(demo), true}, "a fuel line's clips alone": {fuelAlone, true}, "nothing": {bare, false}, "a heater that lies nowhere": {
		unheld(with(func(j *vehicles.Job) { j.Cut = nil })), false,
	}} {
		l := Of(judged(t, c.job))
		for _, id := range []string{"deburred", "swarf", "primed"} {
			assert.Equal(t, c.drills, l.Index(id) >= 0, "%s: %s", name, id)
		}
		tools := strings.Join(Tools(judged(t, c.job)), "; ")
		assert.Equal(t, c.drills, strings.Contains(tools, "half-round file"), name)
		assert.Equal(t, c.drills, strings.Contains(tools, "centre punch"), name)
	}
}

// The tools of the whole sample, one by one, in the order in which they are wanted: what is missing at hand is missed under the van.
func TestTheSamplesToolsInFull(t *testing.T) {
	assert.Equal(t, []string{
		"stands and chocks", "lamp", "goggles, ear defenders, gloves", "fire extinguisher", "tape, large square, straightedge, pencil, centre punch",
		"the template, printed at 100 %, either face", "drill with a stop, bit of 6 mm, board and props", "hole saw of 127 mm, 68 rpm, in steel, at most", "bit of 7 mm for the bolts",
		"bit for the clips' screws or rivets, riveter or spanner", "depth gauge", "scraper", "half-round file, magnet, vacuum, primer and brush",
		"sealant gun, torque wrench, spanners, crimping tool, multimeter with a clamp for the current", "pipe cutter, level, soapy water",
		"hose cutter, paper to wipe, a can for what drips", "carbon monoxide meter",
	}, Tools(judged(t, demo)))
	assert.Equal(t, []string{"stands and chocks", "lamp", "goggles, ear defenders, gloves", "fire extinguisher"}, Tools(judged(t, bare)))
	assert.Contains(t, Tools(judged(t, seats)), "what the van maker names for the seat")
	assert.NotContains(t, Tools(judged(t, timber)), "scraper", "nothing is scraped off timber")
}

// A step that was done while the cut is foul says so once it is ticked, and not before; one that measures nothing lacks nothing.
func TestWhatIsWrongIsSaidOnceItIsDone(t *testing.T) {
	wrong := func(job vehicles.Job, id string) string {
		l := Of(judged(t, job))
		return l.Wrong(l.Index(id))
	}
	assert.Empty(t, wrong(demo, "sawn"), "it is foul there, and nobody has sawn")
	assert.Contains(t, wrong(demo.WithDone(vehicles.Done{Step: "sawn", At: "2026-11-27"}), "sawn"), "foul now: cut: brake pipe across, and ")
	assert.Empty(t, wrong(demo.WithDone(vehicles.Done{Step: "mat-up", At: "2026-11-27"}), "mat-up"))
	assert.Equal(t, "hours cured not noted", wrong(demo.WithDone(vehicles.Done{Step: "primed", At: "2026-11-27"}), "primed"))
	assert.Empty(t, wrong(demo.WithDone(vehicles.Done{Step: "primed", At: "2026-11-27", Value: vehicles.Some(24)}), "primed"))
}
