package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// neighbour is an obstruction, a fitting, an opening or another run that a run has a distance to keep from.
type neighbour struct {
	of      rules.Thing
	least   *rules.Finding  // of the findings that have a margin the one with the least
	end     *rules.Finding  // of those of gas on its way and of the run's ends alone, the one with the least
	endAt   geometry.Point3 // where on the run that is
	within  float64         // how far from the run's axis it is asked to be where it is nearer, mm; 0 where it is nowhere
	stretch stretch         // of another run: what of it is so near
}

// stretch is a run from a place along it to another, mm; without a run it is none.
type stretch struct {
	run      *vehicles.LaidRun
	from, to float64
}

func (s *stretch) lowest() float64  { return s.run.Line.LowestOn(s.from, s.to).Z - s.run.Radius }
func (s *stretch) highest() float64 { return s.run.Line.HighestOn(s.from, s.to).Z + s.run.Radius }

// besideMost is how far from a run's surface anything but an obstruction is seen beside it, mm: more is asked of gas on its way and of the runs' ends alone.
const besideMost = 200

// neighbours are what the findings of a run that is laid are against, in their order.
func neighbours(result *rules.Result, of vehicles.RunKind) (list []neighbour) {
	run, subject, known := result.Plan.Run(of), rules.SortOf(of), map[rules.Thing]int{}
	for i := range result.Findings {
		f := &result.Findings[i]
		thing, own, is := neighbourIn(f, subject)
		asked := f.Required.Or(0)
		if !is || f.Rule.Unit != rules.MM || f.Rule.Sense != rules.Least || f.Unsaid {
			continue
		}
		k, met := known[thing]
		if !met {
			k = len(list)
			known[thing], list = k, append(list, neighbour{of: thing})
		}
		n := &list[k]
		switch ofEnd := f.OfEnd() || thing.Sort != rules.AnObstruction && asked > besideMost; {
		case !f.Margin.Set:
		case ofEnd && (n.end == nil || f.Margin.Value < n.end.Margin.Value):
			n.end, n.endAt = f, f.At[own]
			if f.OfEnd() { // what blows on from there is off the run
				n.endAt = run.Line.At(run.Line.Length())
			}
		case !ofEnd:
			if n.least == nil || f.Margin.Value < n.least.Margin.Value {
				n.least = f
			}
			if f.Value < asked {
				n.within = max(n.within, asked+radiusAt(run, f.At[own]))
			}
		}
	}
	for i := range list {
		n := &list[i]
		if kind, is := n.of.Sort.Run(); is && n.within > 0 {
			n.stretch = stretchNear(result.Plan.Run(kind), run, n.of.Sort, subject, n.within)
		}
	}
	return list
}

// neighbourIn is what a finding of a run is against, and which of its places is on the run.
func neighbourIn(f *rules.Finding, subject rules.Sort) (thing rules.Thing, own int, is bool) {
	switch subject {
	case f.Subject.Sort:
		thing = f.Against
	case f.Against.Sort:
		thing, own = f.Subject, 1
	}
	_, run := thing.Sort.Run()
	near := thing.Sort == rules.AnObstruction || thing.Sort == rules.AFitting || thing.Sort == rules.AnOpening
	return thing, own, near || run && thing.Sort != subject
}

// beside has what a run comes nearer to than is asked seen beside it, over all of the run that does, and what is foul or near with what it has to spare;
// what is so near to its end alone, and not seen beside it, is named there.
func (d *drawer) beside(list []neighbour) {
	obstructions := make([]*neighbour, len(d.plan.Obstructions))
	for i := range list {
		n := &list[i]
		seen := false
		switch {
		case n.of.Sort == rules.AnObstruction:
			obstructions[n.of.Index], seen = n, n.within > 0
		case n.of.Sort == rules.AFitting && n.within > 0:
			seen = true
			it := d.fitting(int(n.of.Index))
			it.State = stateOf(n.least.Verdict)
			n.shownOn(&it)
			d.items = append(d.items, it)
		case n.stretch.run != nil:
			seen = true
			kind, _ := n.of.Sort.Run()
			s := &n.stretch
			d.add(scene.Item{Role: roleOf(kind), State: stateOf(n.least.Verdict), Solid: scene.Pipe(s.run.Line.PiecesOn(s.from, s.to), s.run.Radius)})
			// a pipe itself is named by its end, which is not in the picture
			d.add(between(n.of, n.least, scene.Item{Primitive: scene.Stroke, Path: scene.Straight(n.least.At[:]...)}))
		}
		if n.end != nil && n.end.Verdict != rules.Clear && !seen {
			d.add(between(n.of, n.end, scene.Item{Primitive: scene.Spot, At: n.endAt}))
		}
	}
	for i := range d.items {
		if it := &d.items[i]; it.Layer == scene.Under && it.Ref >= 0 && it.Role != scene.Floor && obstructions[it.Ref] != nil {
			obstructions[it.Ref].shownOn(it)
		}
	}
}

// between is an item with the name of something that a finding is against, and what there is to spare.
func between(thing rules.Thing, f *rules.Finding, it scene.Item) scene.Item {
	it.Role, it.State, it.Label, it.Measure = scene.Dimension, stateOf(f.Verdict), nameOf(thing), spareOf(f)
	return it
}

// shownOn has an item seen as near as is asked, with its margin where that is foul or near.
func (n *neighbour) shownOn(it *scene.Item) {
	it.Solid.SeenNear = n.within
	if f := n.least; f != nil && (f.Verdict == rules.Foul || near(f)) {
		it.Measure = spareOf(f)
	}
}

// nearStep is how far apart places of two runs are tried, mm: no picture shows less.
const nearStep = 5

// stretchNear is what of a run comes so near to the axis of another, from the first such place of it to the last. What counts as at their stubs is
// left out: those stand as near as the heater has them.
func stretchNear(of, to *vehicles.LaidRun, ofSort, toSort rules.Sort, within float64) (s stretch) {
	from, end := behindStub(to, toSort)
	if from > end {
		return s
	}
	var other geometry.Tube
	other.AddRun(&to.Line, from, end, within+of.Radius)
	at, last := behindStub(of, ofSort)
	for at <= last {
		short := other.GapPath([]geometry.Point3{of.Line.At(at)}).Distance
		if short <= 0 {
			if s.run == nil {
				s.run, s.from = of, at
			}
			s.to = at
		}
		at += max(nearStep, short) // before that it cannot be near again
	}
	return s
}

// behindStub is from where to where a run is laid that is not at its stub, mm along it: a fuel line's stub is at its end.
func behindStub(run *vehicles.LaidRun, sort rules.Sort) (from, to float64) {
	if sort == rules.TheFuel {
		return 0, run.Line.Length() - rules.AtStub
	}
	return rules.AtStub, run.Line.Length()
}
