package sizing

import (
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

var onElectrics = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Electrics.Figures() })

// byClass is a blank in whose place the class of the heater speaks.
func byClass(vehicles.Job) string { return "by its class" }

// electricsSlots are what the supply is reckoned from, what is measured first.
var electricsSlots = form.Slots{
	onElectrics.slot("cable", "cable, one way", "mm", "as it is laid, from the battery to the heater", notSaid),
	onElectrics.slot("glow", "glow current", "A", "see the heater's instructions", byClass),
	onElectrics.slot("running", "running current", "A", "on an average night", byClass),
	onElectrics.slot("volts", "battery", "V", "", taken(func(s *sizing.Sizes) float64 { return s.Supply.Volts })),
	onElectrics.slot("drop", "may be lost", "V", "at the glow current, there and back", taken(func(s *sizing.Sizes) float64 { return s.Supply.Drop })),
	onElectrics.slot("fuse", "fuse", "A", "blank: by the glow current", func(vehicles.Job) string { return "by the glow current" }),
	onElectrics.slot("battery", "battery holds", "Ah", "", notSaid),
	onElectrics.slot("usable", "of it may be used", "%", "", taken(func(s *sizing.Sizes) float64 { return s.Supply.Usable })),
}

// wiringSlots are where it all goes, in words: nothing is reckoned from them, and Enter passes them.
var wiringSlots = form.Slots{
	placed(form.Field{Key: "battery_at", Label: "battery stands", Heading: "Where it goes"}, func(w *vehicles.Wiring) *string { return &w.Battery }),
	placed(form.Field{Key: "cable_way", Label: "cable goes"}, func(w *vehicles.Wiring) *string { return &w.Cable }),
	placed(form.Field{Key: "earth_at", Label: "minus ends"}, func(w *vehicles.Wiring) *string { return &w.Earth }),
	placed(form.Field{Key: "control_at", Label: "control is"}, func(w *vehicles.Wiring) *string { return &w.Control }),
	placed(form.Field{Key: "alarm_at", Label: "CO alarm hangs"}, func(w *vehicles.Wiring) *string { return &w.Alarm }),
}

// placed is a slot for where something goes.
func placed(f form.Field, at func(w *vehicles.Wiring) *string) form.Slot {
	f.Blank, f.Pass = vehicles.NotSaid, true
	return form.Line(f, func(j *vehicles.Job) *string { return at(&j.Wiring) })
}

// electricsAt is at which field the form is opened for each result.
var electricsAt = map[sizing.ID]string{
	sizing.Fuse: "fuse", sizing.CableByDrop: "cable", sizing.CableByFuse: "fuse", sizing.CableArea: "cable", sizing.CableDrop: "cable", sizing.BatteryLasts: "battery", sizing.BatteryNights: "battery", sizing.AfterRun: "cable",
}
