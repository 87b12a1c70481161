package rules

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/vehicles"
)

// demand is something asked of the place of the cut's centre, and what it is to keep away from.
type demand struct {
	name string
	field.Constraint
	thing *vehicles.Placed // of the plan; nil for the floor
}

// moved is what is asked when the thing is somewhere else.
func (d demand) moved(by geometry.Point) field.Constraint {
	c := d.Constraint.(field.Carried)
	c.Against = c.Against.Moved(0, by)
	return c
}

// asking returns the room that further demands leave.
func (r Room) asking(list []demand) Room {
	r.limits.Constraints, r.names = slices.Clip(r.limits.Constraints), slices.Clip(r.names)
	for _, d := range list {
		r.limits.Constraints = append(r.limits.Constraints, d.Constraint)
		r.names = append(r.names, d.name)
	}
	r.Margins = field.NewMargins(r.limits)
	return r
}

// level is the lift of what is at one height with what it keeps away from.
const level = -1

// heaterAt is what plate.on-floor, plate.fitting and body.space ask of the place of the cut when the heater is turned to
// yaw; nothing without a heater. Rules without a value ask nothing.
func (r *Result) heaterAt(yaw float64) (list []demand) {
	if r.Job.Heater == nil {
		return nil
	}
	heater := *r.Job.Heater
	heater.Yaw = yaw
	job, plan := r.Job.WithHeater(heater), r.Plan
	plan.Cut.At = geometry.Point{}
	plate, body := Plate(job, plan), Body(job, plan, true)
	if on, ok := r.asked("plate.on-floor"); ok {
		list = append(list, demand{name: "floor", Constraint: field.Contained{
			Body: plate, Min: plan.FloorMin, Max: plan.FloorMax, Need: on,
		}})
	}
	onPlate, flat := r.asked("plate.fitting")
	round, spaced := r.asked("body.space")
	for i := range plan.Fittings {
		thing, f := &plan.Fittings[i], &r.Job.Fittings[i]
		if flat && f.Rise.From <= 0 {
			list = append(list, carried(f.Name, thing, plate, onPlate, level))
		}
		if spaced {
			lift := max(thing.Prism.Low-body.High, body.Low-thing.Prism.High)
			list = append(list, carried(f.Name, thing, body.Footprint, round, lift))
		}
	}
	return list
}

// carried keeps an outline, as it lies when the cut is at the datum, away from a thing.
func carried(name string, thing *vehicles.Placed, outline geometry.Footprint, need, lift float64) demand {
	return demand{name, field.Carried{Body: outline, Against: thing.Prism.Footprint, Need: need, Lift: lift}, thing}
}

// asked returns the value of a rule, if the book has one.
func (r *Result) asked(id string) (value float64, ok bool) {
	rule := r.Book.find(id, "")
	if rule == nil || !rule.Value.Set {
		return 0, false
	}
	return rule.Value.Value, true
}
