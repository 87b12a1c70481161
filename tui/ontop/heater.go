package ontop

import (
	"errors"
	"fmt"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// size is one size of the heater, which its class gives when the job does not.
type size struct {
	key, label, head string
	second           bool
	limits           vehicles.Limits
	bit              vehicles.HeaterKeys
	at               func(h *vehicles.Heater) *float64
}

var sizes = []size{
	{"body_u", "body, along", "Body", false, vehicles.ASize, vehicles.HasBody, func(h *vehicles.Heater) *float64 { return &h.Body[0] }},
	{"body_v", "body, across", "", false, vehicles.ASize, vehicles.HasBody, func(h *vehicles.Heater) *float64 { return &h.Body[1] }},
	{"body_h", "body, height", "", false, vehicles.ASize, vehicles.HasBody, func(h *vehicles.Heater) *float64 { return &h.Body[2] }},
	{"at_u", "body's middle at", "", false, vehicles.ALength, vehicles.HasBodyAt, func(h *vehicles.Heater) *float64 { return &h.BodyAt[0] }},
	{"at_v", "middle, leftward", "", true, vehicles.ALength, vehicles.HasBodyAt, func(h *vehicles.Heater) *float64 { return &h.BodyAt[1] }},
	{"front", "free in front", "Space kept free round the body", false, vehicles.ADistance, vehicles.HasFrontSpace, func(h *vehicles.Heater) *float64 { return &h.Space.Front }},
	{"rear", "free behind", "", false, vehicles.ADistance, vehicles.HasRearSpace, func(h *vehicles.Heater) *float64 { return &h.Space.Rear }},
	{"sides", "free at sides", "", false, vehicles.ADistance, vehicles.HasSideSpace, func(h *vehicles.Heater) *float64 { return &h.Space.Sides }},
	{"over", "free on top", "", false, vehicles.ADistance, vehicles.HasTopSpace, func(h *vehicles.Heater) *float64 { return &h.Space.Top }},
	{"plate_u", "plate along, wide", "Plate, collar, stubs (along, then to its left)", false, vehicles.ASize, vehicles.HasPlate, func(h *vehicles.Heater) *float64 { return &h.Plate[0] }},
	{"plate_v", "plate, across", "", true, vehicles.ASize, vehicles.HasPlate, func(h *vehicles.Heater) *float64 { return &h.Plate[1] }},
	{"collar", words.CollarsDepth, "", false, vehicles.ASize, vehicles.HasTurret, func(h *vehicles.Heater) *float64 { return &h.Turret.Value }},
	{"stub_drop", "stubs end at drop", "", false, vehicles.ADistance, vehicles.HasStubDrop, func(h *vehicles.Heater) *float64 { return &h.StubDrop }},
	{"exhaust_u", "exhaust stub at", "", false, vehicles.ALength, vehicles.HasExhaustStub, func(h *vehicles.Heater) *float64 { return &h.ExhaustStub[0] }},
	{"exhaust_v", "exhaust stub, left", "", true, vehicles.ALength, vehicles.HasExhaustStub, func(h *vehicles.Heater) *float64 { return &h.ExhaustStub[1] }},
	{"intake_u", "intake stub at", "", false, vehicles.ALength, vehicles.HasIntakeStub, func(h *vehicles.Heater) *float64 { return &h.IntakeStub[0] }},
	{"intake_v", "intake stub, left", "", true, vehicles.ALength, vehicles.HasIntakeStub, func(h *vehicles.Heater) *float64 { return &h.IntakeStub[1] }},
	{"fuel_u", "fuel stub at", "", false, vehicles.ALength, vehicles.HasFuelStub, func(h *vehicles.Heater) *float64 { return &h.FuelStub[0] }},
	{"fuel_v", "fuel stub, left", "", true, vehicles.ALength, vehicles.HasFuelStub, func(h *vehicles.Heater) *float64 { return &h.FuelStub[1] }},
}

// pairs are the keys of the file whose two sizes share a row.
var pairs = map[vehicles.HeaterKeys]bool{
	vehicles.HasBodyAt: true, vehicles.HasPlate: true, vehicles.HasExhaustStub: true, vehicles.HasIntakeStub: true,
	vehicles.HasFuelStub: true,
}

// The sizes among the heater's other values.
var (
	ductAcross = size{"duct_across", "duct, across", "", false, vehicles.ASize, vehicles.HasDuctAcross, func(h *vehicles.Heater) *float64 { return &h.DuctAcross }}
	boltAcross = size{"bolt", "bolt holes across", "", false, vehicles.ASize, vehicles.HasBolt, func(h *vehicles.Heater) *float64 { return &h.Bolt }}
	allSizes   = append(slices.Clone(sizes), ductAcross, boltAcross)
)

var heaterSlots = func() form.Slots {
	out := form.Slots{classSlot(), yawSlot()}
	for _, z := range sizes {
		out = append(out, z.slot())
	}
	return append(out, ductSlot(), ductAcross.slot(), returnSlot(), airSlot(), storedSlot(), boltsSlot(), boltAcross.slot(), packedSlot())
}()

// heaterOf is the job's heater, or the usual one when it has none; it may be changed.
func heaterOf(j vehicles.Job) vehicles.Heater {
	if j.Heater != nil {
		return *j.Heater
	}
	h, _ := vehicles.HeaterClass(vehicles.DefaultHeaterClass)
	return h
}

// classOf is a heater as its class has it.
func classOf(h vehicles.Heater) vehicles.Heater {
	c, known := vehicles.HeaterClass(h.Class)
	if !known {
		c, _ = vehicles.HeaterClass(vehicles.DefaultHeaterClass)
	}
	return c
}

func classSlot() form.Slot {
	f := form.Field{Key: "class", Label: "class", Blank: "none yet: press a figure", Note: "by heat output; its own sheet decides on every size"}
	for _, name := range vehicles.HeaterClasses() {
		f.Choices = append(f.Choices, form.Choice{Letter: rune(name[0]), Name: name})
	}
	return form.Slot{
		Field: f,
		Get: func(s desk.State) string {
			if s.Job.Heater == nil {
				return ""
			}
			return s.Job.Heater.Class
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			h, known := vehicles.HeaterClass(text)
			if !known {
				return j, errors.New("there is no such class")
			}
			if j.Heater != nil {
				h = withOwn(h, *j.Heater)
			}
			return j.WithHeater(h), nil
		},
	}
}

// withOwn returns the old heater as one of the class h: the sizes that were those of its own class are those of h, all else
// is as it was.
func withOwn(h, old vehicles.Heater) vehicles.Heater {
	was, now := classOf(old), old
	now.Class, now.Given = h.Class, old.Given|h.Given
	for _, z := range allSizes {
		if *z.at(&now) == *z.at(&was) {
			*z.at(&now) = *z.at(&h)
		}
	}
	return now
}

// slot is the slot of a size: blank for what the class says.
func (z size) slot() form.Slot {
	return form.Slot{
		Field: form.Field{Key: z.key, Label: z.label, Heading: z.head, Unit: "mm", Second: z.second},
		Get: func(s desk.State) string {
			if h := heaterOf(s.Job); h.Given&z.bit != 0 {
				return survey.Exact(*z.at(&h))
			}
			return ""
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			h := heaterOf(j)
			class := classOf(h)
			v, err := *z.at(&class), error(nil)
			if text != "" {
				v, err = form.Length(text, z.limits)
			}
			*z.at(&h) = v
			h.Turret.Set = true
			h.Given |= z.bit
			if text == "" && asClass(h, class, z.bit) {
				h.Given &^= z.bit
			}
			return j.WithHeater(h), err
		},
		Say: func(f *form.Field, s desk.State) {
			h := heaterOf(s.Job)
			class := classOf(h)
			own := *z.at(&class)
			class.Duct = h.Duct
			class.Space = class.Kept()
			f.Blank = survey.Exact(*z.at(&class))
			switch {
			case *z.at(&class) != own:
				f.Blank += ", with a duct"
			case !pairs[z.bit]:
				f.Blank += ", its class"
			}
		},
	}
}

// asClass says whether all sizes of one key of the file are as the class has them.
func asClass(h, class vehicles.Heater, bit vehicles.HeaterKeys) bool {
	for _, z := range allSizes {
		if z.bit == bit && *z.at(&h) != *z.at(&class) {
			return false
		}
	}
	return true
}

func yawSlot() form.Slot {
	f := form.Field{Key: "yaw", Label: words.WarmAirPoints, Unit: "°", Blank: "0", Nudge: func(text string, by int) string {
		deg, err := form.Degrees(text)
		if err != nil {
			deg = 0
		}
		return survey.Exact(geometry.WithinHalfTurn(deg + float64(by)*desk.TurnStep))
	}}
	return form.Slot{
		Field: f,
		Get:   func(s desk.State) string { return survey.Exact(geometry.WithinHalfTurn(heaterOf(s.Job).Yaw)) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text == "" {
				text = "0"
			}
			h := heaterOf(j)
			deg, err := form.Degrees(text)
			h.Yaw, h.Given = geometry.WithinHalfTurn(deg), h.Given|vehicles.HasYaw
			return j.WithHeater(h), err
		},
		Say: func(f *form.Field, s desk.State) {
			f.Note = fmt.Sprintf("= %s; ← and → turn it by %d°", Points(heaterOf(s.Job).Yaw, s.Settings), desk.TurnStep)
		},
	}
}

// Points says where something turned by deg from straight ahead points: "to the front and left".
func Points(deg float64, set desk.Settings) string {
	return rules.Toward(deg, desk.Left(set), desk.Right(set))
}
