package parts

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// cutAlone is a floor with nothing but a cut of 127 mm and its heater without bolts, and one thing of a kind so far ahead of the cut's centre.
func cutAlone(kind string, ahead float64) vehicles.Job {
	demo := vehicles.Demo()
	heater := *demo.Heater
	heater.Bolts = nil
	job := vehicles.Job{Ref: "TL-81", Floor: demo.Floor, Cut: demo.Cut, Heater: &heater}
	o := demo.Obstructions[0]
	o.Name, o.Kind = "ahead", kind
	x, at := job.Cut.At[0]+ahead, func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	o.Place = vehicles.Place{Shape: vehicles.Box, X: vehicles.Pair{at(x), at(x + 50)}, Y: vehicles.Pair{at(-800), at(800)}}
	job.Obstructions = vehicles.List[vehicles.Obstruction]{o}
	return job
}

// A box section is waxed where its side is no more than 300 mm from the edge of a hole: of a cut of 127 mm that is 363.5 mm from its centre.
func TestWaxGoesByTheHolesEdge(t *testing.T) {
	for _, c := range []struct {
		kind  string
		ahead float64
		cans  int
	}{
		{"crossmember", 363, 1}, {"crossmember", 364, 0}, {"chassis rail", 100, 1}, {"body sill", 363, 1}, {"brake line", 100, 0}, {"floor rib", 100, 0},
	} {
		row, there := listOf(t, cutAlone(c.kind, c.ahead)).row("cavity wax")
		assert.Equal(t, c.cans > 0, there, "%s %g ahead", c.kind, c.ahead)
		if there {
			assert.Equal(t, vehicles.Some(float64(c.cans)), row.Count)
			assert.Contains(t, row.Note, ": 1 within 300 mm, a metre of each at 0.2 mm: 80 ml", "a metre of 0.4 m round at 0.2 mm")
		}
	}
}

// Wax comes in cans of half a litre: six metres take 480 ml, which is one, and seven 560 ml, which is two.
func TestMoreThanACanOfWaxIsTwo(t *testing.T) {
	for metres, cans := range map[int]float64{6: 1, 7: 2} {
		job := cutAlone("crossmember", 100)
		for i := range metres - 1 {
			o := job.Obstructions[0]
			o.Name = strconv.Itoa(i)
			job.Obstructions = append(job.Obstructions, o)
		}
		row, there := listOf(t, job).row("cavity wax")
		require.True(t, there)
		assert.Equal(t, vehicles.Some(cans), row.Count, "%d m", metres)
		assert.Equal(t, "cans of 500 ml", row.Size)
		assert.Contains(t, row.Note, fmt.Sprintf(": %d ml", 80*metres))
	}
}

// Of a hole so large that one tin is not enough two are bought of either paint. By hand: 3000 mm through 250 mm is pi x 3000 x 250 at its edge and twice
// pi x 3025 x 25 round it, 2.83 m2 a coat; 10 m2 a litre take 283.2 ml, more than a tin of 250 ml.
func TestMoreThanATinIsTwoOfEither(t *testing.T) {
	job := cutAlone("brake line", 2000)
	cut := *job.Cut
	job.Cut, cut.Across, job.Floor.Thickness = &cut, 3000, 250
	paint, there := listOf(t, job).row("primer and top coat")
	require.True(t, there)
	assert.Equal(t, vehicles.Some(4), paint.Count)
	assert.Contains(t, paint.Note, "1 hole with a band of 25 mm round each, either face, 28314 cm² a coat: 284 ml of either")
	job.Floor.Deck = vehicles.Timber
	varnish, _ := listOf(t, job).row("varnish for cut timber")
	assert.Equal(t, vehicles.Some(4), varnish.Count, "849.4 ml in three coats")
}

// without is a job whose cut is not placed.
func without(job vehicles.Job) vehicles.Job {
	job.Cut = nil
	return job
}

// Whoever plans no cut, or no heater, reads that it is not counted.
func TestWhatIsNotPlannedIsSaidNotToBeCounted(t *testing.T) {
	demo := vehicles.Demo()
	l := listOf(t, without(demo))
	assert.Contains(t, l.Absent, "no cut is placed")
	for _, part := range []string{"primer and top coat", "cavity wax", "metal packing", "exhaust pipe"} {
		_, there := l.row(part)
		assert.False(t, there, part)
	}
	_, there := l.row("heater")
	assert.True(t, there, "the heater is ordered all the same")
	l = listOf(t, demo)
	assert.NotContains(t, l.Absent, "no cut is placed")
	heater := *demo.Heater
	heater.Bolts, heater.Turret = nil, vehicles.Number{}
	assert.Subset(t, listOf(t, demo.WithHeater(heater)).Absent, []string{"nobody has said how the heater is bolted down", "nobody has said how deep the collar is"})
}

// Pieces longer than what is sold are ordered by their length, each for itself: a straight exhaust of 2400 mm with its muffler of 180 from 1100 on has
// 1100 + two overlaps of 25 + two ends of 5 before it, and 2400 - 1280 = 1120 + 25 + 10 behind it.
func TestPiecesLongerThanTheUsualLengthAreOrderedOneByOne(t *testing.T) {
	job := cutAlone("brake line", -1000)
	demo := vehicles.Demo()
	run := *demo.Exhaust
	stub, there := job.Stub(vehicles.ExhaustRun)
	require.True(t, there)
	end := stub
	end.X -= 2400
	run.Path, run.Clips, run.Bend = vehicles.List[vehicles.RunPoint]{{X: end.X, Y: end.Y, Drop: -end.Z}}, nil, vehicles.Number{}
	muffler := *run.Muffler
	run.Muffler, muffler.Leg, muffler.Start = &muffler, 1, 1100
	var long []string
	for _, r := range listOf(t, job.WithRun(vehicles.ExhaustRun, &run)).Rows {
		if strings.Contains(r.Of, "in one piece") {
			long = append(long, r.Of+": "+r.Size)
			assert.Equal(t, vehicles.Some(1), r.Buy(), "none is in the kit")
		}
		assert.NotEqual(t, "exhaust pipe", r.Of, "no usual length is cut")
	}
	assert.Equal(t, []string{"exhaust pipe in one piece: 26 mm across, 1160 mm long", "exhaust pipe in one piece, number 2: 26 mm across, 1155 mm long"}, long)
}

// anyJob is the sample without some of what it has, on any floor.
func anyJob(t *rapid.T) vehicles.Job {
	job := vehicles.Demo()
	chance := func(what string) bool { return rapid.IntRange(0, 3).Draw(t, what) == 0 }
	for _, of := range vehicles.RunKinds {
		run := *job.Run(of)
		run.Clips = run.Clips[:rapid.IntRange(0, len(run.Clips)).Draw(t, "clips of "+of.String())]
		if chance("no clips said of " + of.String()) {
			run.Clips = nil
		}
		if job = job.WithRun(of, &run); chance("no " + of.String()) {
			job = job.WithRun(of, nil)
		}
	}
	heater := *job.Heater
	heater.Bolts = heater.Bolts[:rapid.IntRange(0, 4).Draw(t, "bolts")]
	job = job.WithHeater(heater)
	if chance("timber") {
		job.Floor.Deck = vehicles.Timber
	}
	if chance("no layers") {
		job.Stack = nil
	}
	if chance("no cable") {
		job.Electrics.Cable = vehicles.Number{}
	}
	switch rapid.IntRange(0, 7).Draw(t, "without") {
	case 0:
		job.Heater = nil
	case 1:
		job = without(job)
	}
	return job
}

// Who orders and who works read of the same job: as many bolts, clips and holes, the same sealant, fuse and cable, by whatever list.
func TestThePartsAreThoseThatTheWorkTakes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) > 0 {
			t.Skip(faults[0].Text)
		}
		l, steps := Of(&r, cutlist.Usual()), work.Of(&r)
		said := func(id string) string {
			if i := steps.Index(id); i >= 0 {
				return steps[i].Of
			}
			return ""
		}
		count := func(of string) float64 { row, _ := l.row(of); return row.Count.Value }
		same := func(what string, ordered float64, text string) {
			if taken := leading(text); taken != ordered {
				t.Fatalf("%s: %g are ordered, the step says %q", what, ordered, text)
			}
		}
		same("bolts", count("bolt, nut and two washers"), said("bolts-drilled"))
		same("bolts drawn up", count("bolt, nut and two washers"), said("fastened"))
		clips := 0.0
		for of, id := range map[string]string{"exhaust clip": "exhaust-hung", "intake clip": "intake-hung", "fuel line clip": "fuel-clipped"} {
			if clips += count(of); job.Cut != nil && job.Heater != nil { // else no run has an end, and no step hangs it
				same(of, count(of), said(id))
			}
		}
		if screws := count("screw and nut, or rivet"); screws != clips {
			t.Fatalf("%g screws for %g clips", screws, clips)
		}
		if mounts, pumps := count("rubber mount"), count("pump"); mounts != pumps {
			t.Fatalf("%g mounts for %g pumps", mounts, pumps)
		}
		if row, there := l.row("supply cable"); there && row.Size != "" && !strings.HasPrefix(said("supply-laid"), row.Size) {
			t.Fatalf("a cable of %q is ordered, the step says %q", row.Size, said("supply-laid"))
		}
		if row, there := l.row("fuse and its holder"); there && row.Size != "" && !strings.HasPrefix(steps[steps.Index("fuse")].Expected.Text(""), row.Size) {
			t.Fatalf("a fuse of %s is ordered, expected is %q", row.Size, steps[steps.Index("fuse")].Expected.Text(""))
		}
		paintedByHand(t, &r, l)
	})
}

// leading is the number that a text begins with, 0 for none.
func leading(text string) float64 {
	v, _ := strconv.ParseFloat(regexp.MustCompile(`^[0-9]*`).FindString(text), 64)
	return v
}

// paintedByHand reckons the paint anew from the steps that drill: each hole's edge and a ring of 25 mm on either face.
func paintedByHand(t *rapid.T, r *rules.Result, l List) {
	row, there := l.row("primer and top coat")
	if steel := r.Job.Cut != nil && r.Job.Deck() != vehicles.Timber; there != steel {
		t.Fatalf("paint on the list: %v, steel that is cut: %v", there, steel)
	}
	if !there {
		return
	}
	area, holes := 0.0, 0
	add := func(n int, across float64) {
		holes += n
		area += float64(n) * math.Pi * (across*r.Job.Floor.Thickness + 2*25*(across+25))
	}
	add(1, r.Job.Cut.Across)
	add(len(rules.Bolts(&r.Job, &r.Plan)), 7)
	clips, pump := rules.ClipHoles(&r.Job, &r.Plan)
	add(len(clips)+len(pump), rules.ClipHole)
	add(len(rules.FuelHoles(&r.Job, &r.Plan)), 12)
	if want := fmt.Sprintf(" %.0f cm² a coat: %.0f ml", area/100, math.Ceil(area/1e4-1e-6)); !strings.Contains(row.Note, want) {
		t.Fatalf("%d holes take %s; said is %q", holes, want, row.Note)
	}
}

// Lengths by the metre are written as a shop reads them, whatever the cable and the duct were taped at: to a tenth of a millimetre, and no digits that adding up
// left behind. 1000.1 mm of cable are 2 x 1300.1 mm of wire.
func TestLengthsByTheMetreAreWrittenPlainly(t *testing.T) {
	figures := regexp.MustCompile(`^[0-9]+(\.[0-9]{1,4})?$`)
	duct := *vehicles.Demo().Heater
	duct.Duct, duct.DuctAcross = vehicles.Ends{Front: true}, 60
	rapid.Check(t, func(t *rapid.T) {
		job := vehicles.Demo().WithHeater(duct)
		tenths := rapid.IntRange(5000, 90000).Draw(t, "tenths")
		job.Electrics.Cable, job.Ductwork.Length = vehicles.Some(float64(tenths)/10), vehicles.Some(float64(tenths)/10)
		r, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		l := Of(&r, cutlist.Usual())
		for of, want := range map[string]float64{"supply cable": 2 * (float64(tenths) + 3000) / 1e4, "sleeve": float64(tenths) / 1e4, "duct": float64(tenths) / 1e4} {
			row, there := l.row(of)
			if text := row.Buy().Text(); !there || !figures.MatchString(text) || math.Abs(row.Count.Value-want) > 1e-9 {
				t.Fatalf("%s: %q for %g m", of, text, want)
			}
		}
	})
}
