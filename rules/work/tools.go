package work

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// Tools are what is wanted at hand before the first step, with the sizes that the job has: common practice, no source.
func Tools(r *rules.Result) (all []string) {
	add := func(wanted bool, format string, of ...any) {
		if wanted {
			all = append(all, fmt.Sprintf(format, of...))
		}
	}
	job := &r.Job
	add(true, "stands and chocks")
	add(true, "lamp")
	add(true, "goggles, ear defenders, gloves")
	add(true, "fire extinguisher")
	add(drills(r), "tape, large square, straightedge, pencil, centre punch")
	add(hasPlate(r), "the template, printed at 100 %%, either face")
	if hasCut(r) {
		add(true, "drill with a stop, bit of %s, board and props", survey.InMM(job.Cut.PilotAcross()))
		add(true, "hole saw of %s%s", survey.InMM(job.Cut.Across), sawSpeed(r))
		_, beside, _ := rules.OldPilot(r)
		add(beside.Board(), "a board to guide the saw, larger than the plate, and two clamps")
	}
	add(hasBolts(r), "bit of %s for the bolts", survey.InMM(bolt(job)))
	if hasFuelHole(r) {
		add(true, "bit of %s for the fuel line", survey.InMM(job.Fuel.Supply.HoleAcross()))
	}
	add(hasClips(r), "bit for the clips' screws or rivets, riveter or spanner")
	add(hasCut(r), "depth gauge")
	add(steelDeck(r), "scraper")
	add(hasSeats(r), "what the van maker names for the seat")
	add(drills(r), "half-round file, magnet, vacuum, primer and brush")
	add(hasHeater(r), "sealant gun, torque wrench, spanners, crimping tool, multimeter with a clamp for the current")
	add(hasHeater(r), "pipe cutter, level, soapy water")
	add(hasHeater(r), "hose cutter, paper to wipe, a can for what drips")
	add(hasHeater(r), "carbon monoxide meter")
	return all
}

func bolt(job *vehicles.Job) float64 {
	if job.Heater == nil {
		return 0
	}
	return job.Heater.Bolt
}

// sawSpeed is how fast the saw turns at most, as it is sized.
func sawSpeed(r *rules.Result) string {
	row, ok := sizing.Find(r, sizing.SawTurns)
	if !ok || !row.Value.Set {
		return ""
	}
	return ", " + row.Said()
}
