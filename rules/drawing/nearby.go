package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// besideMost is how far from a run's surface anything is seen beside it, mm: more is asked of gas on its way and of ends alone, not of the runs.
const besideMost = 200

// nearby has a fitting or another run seen beside a run that comes nearer to it than is asked, with what it is short of that.
func (d *drawer) nearby(run *vehicles.LaidRun, subject rules.Sort) {
	type thing struct {
		sort  rules.Sort
		index int
	}
	least := map[thing]*rules.Finding{}
	var order []thing
	for i := range d.result.Findings {
		f := &d.result.Findings[i]
		other, is := otherOf(f, subject)
		asked := f.Required.Or(0)
		if !is || f.Rule.Unit != rules.MM || f.Rule.Sense != rules.Least || f.Unsaid || !f.Margin.Set || f.Value >= asked || asked > besideMost {
			continue
		}
		key := thing{other.Sort, int(other.Index)}
		was := least[key]
		if was == nil {
			order = append(order, key)
		}
		if was == nil || f.Margin.Value < was.Margin.Value {
			least[key] = f
		}
	}
	for _, key := range order {
		f, sort := least[key], key.sort
		within := f.Required.Value + run.Radius
		if run.Muffler != nil {
			within = f.Required.Value + run.Muffler.Radius
		}
		short := &scene.Measure{Value: f.Margin.Value, Unit: scene.MM, Bare: true, Spare: true}
		if sort == rules.AFitting {
			it := d.fitting(key.index)
			it.State, it.Solid.SeenNear, it.Measure = stateOf(f.Verdict), within, short
			d.items = append(d.items, it)
			continue
		}
		kind := kindOf(sort)
		other := d.plan.Run(kind)
		role, _ := roleOf(kind)
		if from, to, meets := stretchNear(&other.Line, &run.Line, sort, subject, within+other.Radius); meets {
			d.add(scene.Item{
				Role: role, State: stateOf(f.Verdict), Solid: scene.Pipe(other.Line.PiecesOn(from, to), other.Radius), Label: role.Pen().Means, Measure: short,
			})
		}
	}
}

// otherOf is the fitting or the other run that a finding is of beside a run.
func otherOf(f *rules.Finding, subject rules.Sort) (other rules.Thing, is bool) {
	switch subject {
	case f.Subject.Sort:
		other = f.Against
	case f.Against.Sort:
		other = f.Subject
	default:
		return other, false
	}
	switch other.Sort {
	case rules.AFitting, rules.TheExhaust, rules.TheIntake, rules.TheFuel:
		return other, other.Sort != subject
	}
	return other, false
}

// kindOf is the run that findings of a sort are of.
func kindOf(sort rules.Sort) vehicles.RunKind {
	switch sort {
	case rules.TheIntake:
		return vehicles.IntakeRun
	case rules.TheFuel:
		return vehicles.FuelRun
	}
	return vehicles.ExhaustRun
}

// nearStep is how far apart places of two runs are tried, mm: no picture shows less.
const nearStep = 5

// stretchNear is from where to where a run is so near to another, axis to axis, from the first such place of it to the last. What counts as at
// their stubs is left out: those stand as near as the heater has them.
func stretchNear(of, to *geometry.Run, ofSort, toSort rules.Sort, within float64) (from, end float64, meets bool) {
	var path []geometry.Point3
	for s, last := behindStub(to, toSort); s <= last; s += nearStep {
		path = append(path, to.At(s))
	}
	if len(path) == 0 {
		return 0, 0, false
	}
	for s, last := behindStub(of, ofSort); s <= last; s += nearStep {
		if geometry.BetweenPaths([]geometry.Point3{of.At(s)}, path).Gap > within {
			continue
		}
		if !meets {
			from = s
		}
		end, meets = s, true
	}
	return from, end, meets
}

// behindStub is from where to where a run is laid that is not at its stub, mm along it: a fuel line's stub is at its end.
func behindStub(run *geometry.Run, sort rules.Sort) (from, to float64) {
	if sort == rules.TheFuel {
		return 0, run.Length() - rules.AtStub
	}
	return rules.AtStub, run.Length()
}
