package sizing

import (
	"cmp"
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

var (
	onBody = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Body.Figures() })
	onDuct = figures(func(j *vehicles.Job) []vehicles.Figure { return j.Ductwork.Figures() })
)

// heatSlots are what the heat is reckoned from, beside the surfaces.
var heatSlots = form.Slots{
	onBody.slot("inside", "warm inside", "°C", "", notSaid),
	onBody.slot("outside", "cold outside", "°C", "the coldest night it must do", notSaid),
	onBody.slot("volume", "air in it", "m³", "length times width times height, less what fills it", notSaid),
	onBody.slot("changes", "air changes an hour", "", "a tight van with open vents about 1, a leaky one 3", notSaid),
	onBody.slot("hours", "heater runs a night", "h", "", notSaid),
}

// heatAt is at which field the form is opened for each result.
var heatAt = map[sizing.ID]string{
	sizing.AirChanged: "volume", sizing.HeatLost: "inside", sizing.Class: "outside", sizing.Burning: "hours", sizing.FuelANight: "hours", sizing.WarmIn: "inside",
}

// ductSlots are what the duct is reckoned from.
var ductSlots = form.Slots{
	onDuct.slot("length", "duct, along it", "mm", "", notSaid),
	bendsSlot(),
	onDuct.slot("flow", "air wanted", "m³/h", "", byClass),
	fanSlot(),
	onDuct.slot("rough", "rough inside", "mm", "", taken(func(s *sizing.Sizes) float64 { return s.Duct.Rough })),
}

// ductAt is at which field the form is opened for each result.
var ductAt = map[sizing.ID]string{sizing.NoDuct: "length", sizing.DuctAir: "flow", sizing.DuctLoss: "length", sizing.DuctFlow: "fan"}

// noBends is what is typed for a duct that has none.
const noBends = "0"

// bendsSlot is how far each bend turns, parted by blanks.
func bendsSlot() form.Slot {
	return form.Slot{
		Field: form.Field{Key: "bends", Label: "its bends", Unit: "°", Blank: nobodySaid, Note: "how far each turns, with blanks between: 90 45; 0 for none"},
		Get: func(s desk.State) string {
			if bends := s.Job.Ductwork.Bends; bends != nil && len(bends) == 0 {
				return noBends
			}
			return numbersText(s.Job.Ductwork.Bends)
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if j.Ductwork.Bends = nil; text == noBends {
				j.Ductwork.Bends = []float64{}
			}
			if text == "" || text == noBends {
				return j, nil
			}
			for _, word := range strings.Fields(text) {
				v, err := form.NumberIn(word, vehicles.ABend)
				if err != nil {
					return j, fmt.Errorf("%s: %w", form.Quoted(word), err)
				}
				j.Ductwork.Bends = append(j.Ductwork.Bends, v)
			}
			return j, nil
		},
	}
}

func numbersText(list []float64) string {
	texts := make([]string, len(list))
	for i, v := range list {
		texts[i] = survey.Exact(v)
	}
	return strings.Join(texts, " ")
}

// fanSlot is the fan's curve: points of a flow and a pressure, parted by commas.
func fanSlot() form.Slot {
	return form.Slot{
		Field: form.Field{Key: "fan", Label: "fan: m³/h Pa, ...", Blank: nobodySaid, Note: "from the heater's instructions: 0 150, 60 100, 100 0"},
		Get: func(s desk.State) string {
			var texts []string
			for _, p := range s.Job.Ductwork.Fan {
				texts = append(texts, numbersText([]float64{p.Flow, p.Pressure}))
			}
			return strings.Join(texts, ", ")
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			fan, err := fanOf(text)
			if err == nil {
				j.Ductwork.Fan = fan
			}
			return j, err
		},
	}
}

// fanOf reads a fan's curve; nil for none.
func fanOf(text string) (fan vehicles.List[vehicles.FanPoint], err error) {
	if text == "" {
		return nil, nil
	}
	for _, point := range strings.Split(text, ",") {
		words := strings.Fields(point)
		if len(words) != 2 {
			return nil, fmt.Errorf("%q is no point: two figures, m³/h and Pa, with a comma before the next", form.Quoted(strings.TrimSpace(point)))
		}
		flow, wrong := form.NumberIn(words[0], vehicles.ARate)
		pressure, also := form.NumberIn(words[1], vehicles.ARate)
		if err := cmp.Or(wrong, also); err != nil {
			return nil, fmt.Errorf("%s: %w", form.Quoted(strings.TrimSpace(point)), err)
		}
		fan = append(fan, vehicles.FanPoint{Flow: flow, Pressure: pressure})
	}
	if !vehicles.FanFalls(fan) {
		return nil, fmt.Errorf("two points or more, each with more m³/h than the one before and no more Pa")
	}
	return fan, nil
}
