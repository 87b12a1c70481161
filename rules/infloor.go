package rules

import "bench.example/undermark/vehicles"

// The rules of what runs inside the floor, under mat and lining. They go by the values of what hangs below it: a saw tells
// neither from the other.
var inFloorRules = []*Rule{
	{
		ID: "cut.fitting", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true, Values: cutClear,
		Word:   "cut",
		Title:  "Cut clear of what runs inside the floor",
		Ask:    "Looms, cables and pipes run under mat and lining, where nobody sees them from above or below.",
		Advice: "move the cut away from it, in Place, or lay it elsewhere.",
		short:  tooClose,
		check:  cutInFloor,
		keep:   keeper{AFitting, keepCutInFloor},
	},
	{
		ID: "hole.fitting", Unit: MM, Sense: Least, Weight: Damages, ByKind: AnObstruction, AtCut: true, Values: holeClear,
		Word:   "hole",
		named:  bothNamed,
		Title:  floorHoles + " clear of what runs inside the floor",
		Ask:    "A bit meets what runs under mat and lining before it meets the sheet.",
		Advice: leadFuelElsewhere,
		short:  tooClose,
		check:  holeInFloor,
		keep:   keeper{ThePlate, keepBoltsInFloor},
	},
}

// inFloorBelow is the least height of a foot above the finished floor, mm, that surely stands on top of it: what reaches lower
// may run under mat and lining. common practice, no source
const inFloorBelow = 5

// InsideFloor tells whether a fitting runs inside the floor, as far as anybody has said: its foot is below the finished floor, or it
// has a kind and its foot is lower than 5 mm above that. A swage is part of the sheet. One without a kind goes by the general value.
func InsideFloor(f *vehicles.Fitting) bool {
	if f.Kind == "" {
		return f.Rise.From < 0
	}
	return !f.Is(vehicles.InSheetMetal) && f.Rise.From < inFloorBelow
}

// flush tells whether a fitting lies inside the floor with nothing of it above: the heater's body stands over it.
func flush(f *vehicles.Fitting) bool { return f.Kind != "" && InsideFloor(f) && f.Rise.To <= 0 }

// inFloor lists the fittings, by index, that run inside the floor.
func (j *judge) inFloor() (list []int) {
	for i := range j.job.Fittings {
		if InsideFloor(&j.job.Fittings[i]) {
			list = append(list, i)
		}
	}
	return list
}

func cutInFloor(j *judge, r *Rule) {
	if j.job.Cut == nil {
		return
	}
	limits, cut := j.book.ofKinds(r), hole{the(TheCut), j.plan.Cut.At, j.job.Cut.Across / 2, j.theCut()}
	for _, i := range j.inFloor() {
		j.holeFromFitting(limits, &cut, i)
	}
}

func holeInFloor(j *judge, r *Rule) {
	holes := j.holes()
	if len(holes) == 0 {
		return
	}
	limits := j.book.ofKinds(r)
	for _, i := range j.inFloor() {
		outline := &j.plan.Fittings[i].Prism.Footprint
		j.holeFromFitting(limits, nearestHole(holes, func(h *hole) float64 { return outline.GapOnly(h.at) - h.radius }), i)
	}
}

// holeFromFitting judges a hole against a fitting inside the floor, which was measured from above.
func (j *judge) holeFromFitting(limits byKind, h *hole, i int) {
	thing := &j.plan.Fittings[i]
	s := thing.Prism.Footprint.GapCircle(h.at, h.radius)
	f := j.open(limits.of(j.job.Fittings[i].Kind), h.thing, j.fitting(i))
	f.Value = s.Gap
	f.flat(s.A, s.B)
	j.close(f, j.spread(f, h.putting, thing, true, s.B, s.N.At(0)))
}

func keepCutInFloor(j *judge, r *Rule) (list []keep) {
	limits, radius := j.book.ofKinds(r), j.cutRadius()
	for _, i := range j.inFloor() {
		f := &j.job.Fittings[i]
		k := keepCentre(f.Name, &j.plan.Fittings[i], radius+limits.of(f.Kind).least())
		k.above = true
		list = append(list, k)
	}
	return list
}

func keepBoltsInFloor(j *judge, r *Rule) (list []keep) {
	limits, bolts := j.book.ofKinds(r), j.bolts()
	for _, i := range j.inFloor() {
		f := &j.job.Fittings[i]
		for _, bolt := range bolts {
			list = append(list, carried(f.Name, &j.plan.Fittings[i], bolt, limits.of(f.Kind).least(), level))
		}
	}
	return list
}
