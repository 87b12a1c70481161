package vehicles

import "slices"

// DefaultHeaterClass is the class of a heater whose table names none.
const DefaultHeaterClass = "2 kW"

// heaterClasses are generic sizes of fuel-burning air heaters by heat output: common practice, no source. They fill
// a job in until the heater is on the bench; your heater's own sheet decides. Space is on its generous side, and the
// collar's depth is that of the floors such heaters are made for.
var heaterClasses = []Heater{
	{
		Class: "2 kW", Body: [3]float64{320, 125, 125}, Plate: [2]float64{190, 150},
		Space: Space{Front: 200, Rear: 150, Sides: 50, Top: 50}, Turret: Some(45), StubDrop: 45,
		ExhaustStub: [2]float64{35, 25}, IntakeStub: [2]float64{-35, 25}, FuelStub: [2]float64{0, -35}, DuctAcross: smallDuct,
	},
	{
		Class: "4 kW", Body: [3]float64{380, 150, 160}, Plate: [2]float64{210, 170},
		Space: Space{Front: 250, Rear: 200, Sides: 60, Top: 60}, Turret: Some(45), StubDrop: 45,
		ExhaustStub: [2]float64{38, 25}, IntakeStub: [2]float64{-38, 25}, FuelStub: [2]float64{0, -38}, DuctAcross: largeDuct,
	},
	{
		Class: "5 kW", Body: [3]float64{400, 155, 165}, Plate: [2]float64{210, 170},
		Space: Space{Front: 300, Rear: 200, Sides: 60, Top: 60}, Turret: Some(45), StubDrop: 45,
		ExhaustStub: [2]float64{38, 25}, IntakeStub: [2]float64{-38, 25}, FuelStub: [2]float64{0, -38}, DuctAcross: largeDuct,
	},
	{
		Class: "8 kW", Body: [3]float64{560, 200, 220}, Plate: [2]float64{250, 200},
		Space: Space{Front: 400, Rear: 250, Sides: 80, Top: 80}, Turret: Some(50), StubDrop: 50,
		ExhaustStub: [2]float64{42, 28}, IntakeStub: [2]float64{-42, 28}, FuelStub: [2]float64{0, -42}, DuctAcross: largeDuct,
	},
}

// HeaterClasses are the names of the classes, smallest first.
func HeaterClasses() []string {
	names := make([]string, len(heaterClasses))
	for i, h := range heaterClasses {
		names[i] = h.Class
	}
	return names
}

// HeaterClass returns a heater of the class with every size the class gives and only the class Given; ok is false
// for a class there is not.
func HeaterClass(name string) (h Heater, ok bool) {
	i := slices.Index(HeaterClasses(), name)
	if i < 0 {
		return Heater{}, false
	}
	h = heaterClasses[i]
	h.Bolt, h.Given = defaultBolt, HasClass
	return h, true
}

// heater reads the heater's table over what its class gives.
func (t *table) heater() *Heater {
	class := t.choice("class", optional, HeaterClasses())
	h, ok := HeaterClass(class)
	if !ok {
		h, _ = HeaterClass(DefaultHeaterClass)
		h.Given = 0
	}
	if yaw := t.number("yaw", optional, AnAngle); yaw.Set {
		h.Yaw, h.Given = yaw.Value, h.Given|HasYaw
	}
	for _, size := range []struct {
		key string
		has HeaterKeys
		to  []float64
		l   Limits
	}{
		{"body", HasBody, h.Body[:], ASize},
		{"body_at", HasBodyAt, h.BodyAt[:], ALength},
		{"plate", HasPlate, h.Plate[:], ASize},
		{"exhaust_stub", HasExhaustStub, h.ExhaustStub[:], ALength},
		{"intake_stub", HasIntakeStub, h.IntakeStub[:], ALength},
		{"fuel_stub", HasFuelStub, h.FuelStub[:], ALength},
	} {
		if v := t.numbers(size.key, len(size.to), optional, size.l); v != nil {
			copy(size.to, v)
			h.Given |= size.has
		}
	}
	if turret := t.number("turret", optional, ASize); turret.Set {
		h.Turret, h.Given = turret, h.Given|HasTurret
	}
	if drop := t.number("stub_drop", optional, ADistance); drop.Set {
		h.StubDrop, h.Given = drop.Value, h.Given|HasStubDrop
	}
	if s := t.sub("space", optional); s != nil {
		s.space(&h)
	}
	t.bolts(&h)
	t.air(&h)
	t.done()
	return &h
}

// defaultBolt is the diameter of the holes for a heater's bolts, mm: of M6. Source: ISO 273, coarse series, from memory; the
// contract's default.
const defaultBolt = 7

// bolts reads what is drilled beside the cut, and what lies under the plate.
func (t *table) bolts(h *Heater) {
	if value, path, ok := t.take("bolts", optional, acceptedBolts); ok {
		list, isList := value.([]any)
		if !isList || len(list) > 0 && !slices.ContainsFunc(list, isAList) {
			t.wrong(path, value, acceptedBolts)
			list = nil
		}
		for i, v := range list {
			if p := t.figures(joinIndex(path, i), v, 2, ALength, "a point [u, v] of two numbers of mm"); p != nil {
				h.Bolts = append(h.Bolts, [2]float64{p[0], p[1]})
			}
		}
		h.Given |= HasBolts
	}
	if across := t.number("bolt", optional, ASize); across.Set {
		h.Bolt, h.Given = across.Value, h.Given|HasBolt
	}
	if t.has("packed") {
		h.Given |= HasPacked
	}
	h.Packed = t.flag("packed", false)
}

const acceptedBolts = "a list of points [[u, v], ...] in mm"

// space reads what must be kept free round the body; what is left out stays as the class has it.
func (t *table) space(h *Heater) {
	for _, side := range h.Space.sides() {
		if v := t.number(side.key, optional, ADistance); v.Set {
			*side.at, h.Given = v.Value, h.Given|side.has
		}
	}
	t.done()
}

// spaceSide is one side of the space kept free: its key, and where it is.
type spaceSide struct {
	key string
	has HeaterKeys
	at  *float64
}

func (s *Space) sides() []spaceSide {
	return []spaceSide{
		{"front", HasFrontSpace, &s.Front}, {"rear", HasRearSpace, &s.Rear}, {"sides", HasSideSpace, &s.Sides}, {"top", HasTopSpace, &s.Top},
	}
}
