package work

import (
	"errors"
	"reflect"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// builtRecord is the form of what was made: what came out otherwise than planned is typed, and a blank is as planned.
type builtRecord struct{ of builtOf }

// builtOf is what of the job was made.
type builtOf uint8

// What is made: the cut, the heater with its collar, then the runs in the order of vehicles.RunKinds.
const (
	builtCut builtOf = iota
	builtHeater
	builtRuns
)

func (of builtOf) run() vehicles.RunKind { return vehicles.RunKind(of - builtRuns) }

// String is what it is called.
func (of builtOf) String() string {
	switch of {
	case builtCut:
		return "cut"
	case builtHeater:
		return words.BuiltTable(vehicles.BuiltHeater)
	}
	return of.run().String()
}

// there tells whether the job has it.
func (of builtOf) there(j *vehicles.Job) bool {
	switch of {
	case builtCut:
		return j.Cut != nil
	case builtHeater:
		return j.Heater != nil
	}
	return j.Run(of.run()) != nil
}

// builtRecords are the forms of all that the job has of it, planned or built.
func builtRecords(j *vehicles.Job) (out []form.Record) {
	asBuilt := j.AsBuilt()
	for of := range builtRuns + builtOf(len(vehicles.RunKinds)) {
		if of.there(j) || of.there(&asBuilt) {
			out = append(out, builtRecord{of})
		}
	}
	return out
}

// ID says which it is.
func (r builtRecord) ID() string { return "as built: " + r.of.String() }

// Fields are what may have come out otherwise.
func (r builtRecord) Fields(s desk.State, held map[string]string) []form.Field {
	if !r.of.there(&s.Job) {
		return nil
	}
	return r.slots(&s.Job, s.Plan.Fit).Fields(s, held)
}

// Set puts texts into the job; the job as it was built must be one that can be judged, too.
func (r builtRecord) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	if !r.of.there(&s.Job) {
		return s.Job, r, errors.New("it is planned no more: lay it first")
	}
	job, err := r.slots(&s.Job, s.Plan.Fit).Set(s, texts)
	return job, r, err
}

func (r builtRecord) slots(j *vehicles.Job, frames survey.Fit) form.Slots {
	switch r.of {
	case builtCut:
		return sawnSlots()
	case builtHeater:
		return heaterSlots()
	}
	return runSlots(r.of.run(), tapeTo{j, frames})
}

// made is a slot for a value of a thing that was made: get and put are of the thing as planned or built, of a copy.
func made[T any](f form.Field, of func(vehicles.Job) *T, with func(vehicles.Built, *T) vehicles.Built,
	get func(T) string, put func(*T, string) error,
) form.Slot {
	return form.Slot{
		Field: f,
		Get: func(s desk.State) string {
			planned, built := get(*of(s.Job)), get(*of(s.Job.AsBuilt()))
			if planned == built {
				return ""
			}
			return built
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text == "" {
				text = get(*of(j))
			}
			v := *of(j.AsBuilt())
			if err := put(&v, text); err != nil {
				return j, err
			}
			if reflect.DeepEqual(v, *of(j)) {
				return j.WithBuilt(with(j.BuiltOtherwise(), nil)), nil
			}
			return j.WithBuilt(with(j.BuiltOtherwise(), &v)), nil
		},
		Say: func(f *form.Field, s desk.State) { f.Blank = "as planned: " + get(*of(s.Job)) },
	}
}

// heaterSlots say which collar was fitted, and which way the heater points.
func heaterSlots() form.Slots {
	of := func(j vehicles.Job) *vehicles.Heater { return j.Heater }
	with := func(b vehicles.Built, h *vehicles.Heater) vehicles.Built {
		b.Heater = h
		return b
	}
	return form.Slots{
		made(form.Field{Key: "turret", Label: words.CollarsDepth, Unit: "mm"}, of, with,
			func(h vehicles.Heater) string { return h.Turret.Text() },
			func(h *vehicles.Heater, text string) (err error) {
				if text == "" {
					h.Turret = vehicles.Number{}
					return nil
				}
				var v float64
				if v, err = form.Length(text, vehicles.ASize); err == nil && vehicles.Some(v) != h.Turret {
					h.Turret, h.Given = vehicles.Some(v), h.Given|vehicles.HasTurret
				}
				return err
			}),
		made(form.Field{Key: "yaw", Label: words.WarmAirPoints, Unit: "°"}, of, with,
			func(h vehicles.Heater) string { return survey.Exact(geometry.WithinHalfTurn(h.Yaw)) },
			func(h *vehicles.Heater, text string) error {
				v, err := form.Degrees(text)
				if v = geometry.WithinHalfTurn(v); err == nil && v != geometry.WithinHalfTurn(h.Yaw) {
					h.Yaw, h.Given = v, h.Given|vehicles.HasYaw
				}
				return err
			}),
	}
}
