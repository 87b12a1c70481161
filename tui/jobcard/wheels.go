package jobcard

import (
	"errors"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// wheelSlots say where the van's wheels stand: an axle puts a wheel on either side, and the rest is of all of them alike.
var wheelSlots = form.Slots{
	axleSlot("rear", "rear axle", true),
	axleSlot("front", "front axle", false),
	ofWheels("tyre", "tyre, diameter", "mm", func(w *vehicles.Wheel) (float64, bool) { return w.Across, w.Across != 0 },
		func(w *vehicles.Wheel, mm float64) { w.Across = mm }),
	ofWheels("tread", "tyre, width", "mm", func(w *vehicles.Wheel) (float64, bool) { return w.Width, w.Width != 0 },
		func(w *vehicles.Wheel, mm float64) { w.Width = mm }),
	ofWheels("track", "track", "mm", func(w *vehicles.Wheel) (float64, bool) { return 2 * math.Abs(w.At[1]), true },
		func(w *vehicles.Wheel, mm float64) { w.At[1] = math.Copysign(mm/2, w.At[1]) }),
}

// usualInset is how far inside the floor's edge the middle of a tyre stands while nobody has said the track, mm. common practice,
// no source
const usualInset = 100

// axleSlot is where the wheels of an axle stand, from the datum; blank for an axle that nobody has entered.
func axleSlot(key, label string, rear bool) form.Slot {
	slot := form.Slot{Field: form.Field{Key: key, Label: label, Unit: "mm", Blank: "not entered", Pass: true, Note: "middle of the wheel, level from the datum"}}
	slot.Get = func(s desk.State) string {
		for _, w := range s.Job.Wheels {
			if s.Job.AtRear(w) == rear {
				return survey.Exact(w.At[0])
			}
		}
		return ""
	}
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		if text == "" {
			return j.WithAxle(rear, vehicles.Number{}, usualInset), nil
		}
		x, err := form.Length(text, vehicles.ALength)
		if err == nil && j.AtRear(vehicles.Wheel{At: [2]float64{x}}) != rear {
			err = errors.New("the rear axle stands behind the middle of the floor, the front axle before it")
		}
		if err != nil {
			return j, err
		}
		return j.WithAxle(rear, vehicles.Some(x), usualInset), nil
	}
	return slot
}

// ofWheels is a length that all wheels have alike; blank where they differ, or nobody has said.
func ofWheels(key, label, unit string, get func(*vehicles.Wheel) (float64, bool), put func(*vehicles.Wheel, float64)) form.Slot {
	slot := form.Slot{Field: form.Field{Key: key, Label: label, Unit: unit, Blank: vehicles.NotKnown, Pass: true}}
	slot.Get = func(s desk.State) string {
		text := ""
		for i := range s.Job.Wheels {
			mm, ok := get(&s.Job.Wheels[i])
			if !ok || text != "" && text != survey.Exact(mm) {
				return ""
			}
			text = survey.Exact(mm)
		}
		return text
	}
	slot.Set = func(j vehicles.Job, text string) (vehicles.Job, error) {
		if text == "" {
			return j, nil
		}
		mm, err := form.Length(text, vehicles.ASize)
		switch {
		case err != nil:
			return j, err
		case len(j.Wheels) == 0:
			return j, errors.New("say first where an axle stands")
		}
		for i, w := range j.Wheels {
			put(&w, mm)
			j.Wheels = j.Wheels.With(i, w)
		}
		return j, nil
	}
	return slot
}
