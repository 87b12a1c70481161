package rules

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The rules of what holds the runs. A job says whether it asks them; only where it says where the clips are.
var (
	firstClip = &Rule{
		ID: "runs.first-clip", Unit: MM, Sense: Most, Weight: Damages, ByKind: AStub,
		Word:   "first clip",
		named:  subjectNamed,
		Title:  "First clip from the stub",
		Ask:    "Between stub and first clip the run hangs on the heater: what shakes there works loose.",
		Advice: "put a clip nearer to the stub.",
		short:  tooMuch,
		check:  firstHeld,
	}
	otherClipSpan = &Rule{
		ID: "runs.clip-span", Unit: MM, Sense: Most, Weight: Damages, ByKind: AStub,
		Word:   "clips",
		named:  subjectNamed,
		Title:  "Longest stretch of intake or fuel line without a clip",
		Ask:    "What hangs free rubs through, sags and holds water or air.",
		Advice: addClip,
		short:  tooMuch,
		check:  otherSpans,
	}
	clipHold = &Rule{
		ID: "runs.clip-hold", Unit: MM, Sense: Most, Weight: Nuisance, ByKind: AStub,
		Word:   "clip's hold",
		named:  pairNamed,
		Title:  "From a clip to something that holds it",
		Ask:    "A clip wants a crossmember, a rail, a rib, a sill or the floor within reach of its bracket.",
		Advice: "move the clip to where a crossmember, a rail, a rib, a sill or the floor is near, or raise the run.",
		short:  tooMuch,
		check:  clipsHeld,
	}
)

// held are the places along a run that hold it, mm; ok is false while nobody has said where its clips are. A pump has its own clip. None
// can be within the floor: what is said to be there holds nothing.
func (j *judge) held(of Sort) (places []float64, ok bool) {
	hanging, laid := j.hanging(of), j.run(of)
	places = slices.Clone(hanging.Clips)
	if laid.Pump.Set {
		places = append(places, laid.Pump.Value)
	}
	places = slices.DeleteFunc(places, func(at float64) bool { return j.inThickness(laid.Line.At(at)) })
	return places, hanging.Clips != nil
}

// firstHeld judges each run's way from its stub to what holds it first, without any the whole run. The fuel line's stub is at its end.
func firstHeld(j *judge, r *Rule) {
	limits := j.book.ofKinds(r)
	for _, of := range j.runsInFull() {
		laid := j.run(of)
		length := laid.Line.Length()
		places, ok := j.held(of)
		if !ok {
			continue
		}
		if laid.Muffler != nil {
			places = append(places, laid.Muffler.From)
		}
		first := length
		for _, at := range places {
			if of == TheFuel {
				at = length - at
			}
			first = min(first, at)
		}
		f := j.open(limits.of(of.String()), the(of), Thing{})
		f.Value = first
		if of == TheFuel {
			first = length - first
		}
		f.at(laid.Line.At(first))
		j.close(f, 0)
	}
}

// otherSpans judges intake and fuel line; the exhaust has a rule of its own.
func otherSpans(j *judge, r *Rule) {
	limits := j.book.ofKinds(r)
	for _, of := range j.runsInFull() {
		if places, ok := j.held(of); ok && of != TheExhaust {
			f := j.open(limits.of(of.String()), the(of), Thing{})
			f.Value = longestSpan(j.run(of), places)
			j.close(f, 0)
		}
	}
}

// clipsHeld judges of each run the clip that is farthest from what would hold it.
func clipsHeld(j *judge, r *Rule) {
	limits := j.book.ofKinds(r)
	for _, of := range j.runsInFull() {
		laid, clips := j.run(of), j.hanging(of).Clips
		worst, hold, asked := surface{value: math.Inf(-1)}, -1, false
		for _, along := range clips {
			clip := laid.Line.At(along)
			if j.inSight(clip) || j.inThickness(clip) {
				continue
			}
			asked = true
			if s, by := j.holdOf(clip, laid.Radius); s.value > worst.value {
				worst, hold = s, by
			}
		}
		if !asked {
			continue
		}
		limit := limits.of(of.String())
		if hold >= 0 {
			j.measured(j.open(limit, the(of), j.obstruction(hold)), worst, &j.plan.Obstructions[hold])
			continue
		}
		f := j.open(limit, the(of), the(TheFloor))
		f.Value, f.N = worst.value, worst.N
		f.Spread.Height = j.runMark(worst.A)[2]
		f.between(worst.A, worst.B)
		j.close(f, 0)
	}
}

// inSight tells whether a clip is above the finished floor: whoever puts it there sees what holds it, and it is asked nothing.
func (j *judge) inSight(clip geometry.Point3) bool { return PointAbove(j.job, -clip.Z) }

// inThickness tells whether a place is where no clip can be put, and nothing else that hangs on a run.
func (j *judge) inThickness(at geometry.Point3) bool { return PointInFloor(j.job, -at.Z) }

// holdOf is what is nearest to a clip of all that would hold it, by its index; -1 is the floor above it.
func (j *judge) holdOf(clip geometry.Point3, radius float64) (nearest surface, by int) {
	floor := geometry.Point3{X: clip.X, Y: clip.Y}
	nearest = surface{value: math.Abs(clip.Z) - radius}
	nearest.A, nearest.B, nearest.N = clip, floor, geometry.Point3{Z: 1}
	by = -1
	for i := range j.plan.Obstructions {
		if !j.is(i, vehicles.BearsClips) {
			continue
		}
		before := nearest.value
		if nearest.nearer(j.plan.Obstructions[i].Prism.GapPoint(clip), radius); nearest.value < before {
			by = i
		}
	}
	return nearest, by
}

// heldWithin tells whether a clip has something surely within reach of its bracket, or is in sight.
func (j *judge) heldWithin(reach float64, clip geometry.Point3, radius float64) bool {
	if j.inSight(clip) {
		return true
	}
	s, by := j.holdOf(clip, radius)
	var f Finding
	if by < 0 {
		f.Spread.Height = j.runMark(s.A)[2]
	} else {
		j.spread(&f, putting{mark: j.runMark(s.A)}, &j.plan.Obstructions[by], false, s.B.Plan(), s.N)
	}
	return s.value+coverage*math.Sqrt(f.Spread.Sum()) <= reach
}
