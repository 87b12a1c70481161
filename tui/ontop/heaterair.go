package ontop

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// option is one answer to a question about the heater.
type option struct {
	letter rune
	name   string
	put    func(h *vehicles.Heater)
}

// question is the slot of a key of the heater that has some answers; the last option takes back what was said.
func question(f form.Field, bit vehicles.HeaterKeys, options []option, said func(h vehicles.Heater) string) form.Slot {
	f.Blank = vehicles.NotSaid
	for _, o := range options {
		f.Choices = append(f.Choices, form.Choice{Letter: o.letter, Name: o.name})
	}
	return form.Slot{
		Field: f,
		Get: func(s desk.State) string {
			if h := heaterOf(s.Job); h.Given&bit != 0 {
				return said(h)
			}
			return ""
		},
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			if text == "" {
				text = vehicles.NotSaid
			}
			i := slices.IndexFunc(options, func(o option) bool { return o.name == text })
			if i < 0 {
				return j, errors.New("that is none of its answers")
			}
			h := heaterOf(j)
			options[i].put(&h)
			if h.Given |= bit; text == vehicles.NotSaid {
				h.Given &^= bit
			}
			return j.WithHeater(h), nil
		},
	}
}

func ductSlot() form.Slot {
	f := form.Field{
		Key: "duct", Label: "duct at", Heading: "The air it warms",
		Note: "the free space its class asks for is for a bare end",
	}
	ends := func(letter rune, name string, e vehicles.Ends) option {
		return option{letter, name, func(h *vehicles.Heater) { h.Duct = e }}
	}
	options := []option{
		ends('n', "neither end", vehicles.Ends{}), ends('f', "its front", vehicles.Ends{Front: true}),
		ends('r', "its rear", vehicles.Ends{Rear: true}), ends('b', "both ends", vehicles.Ends{Front: true, Rear: true}),
		ends('-', vehicles.NotSaid, vehicles.Ends{}),
	}
	return question(f, vehicles.HasDuct, options, func(h vehicles.Heater) string {
		for _, o := range options {
			var other vehicles.Heater
			if o.put(&other); other.Duct == h.Duct {
				return o.name
			}
		}
		return vehicles.NotSaid
	})
}

func returnSlot() form.Slot {
	return form.Slot{
		Field: form.Field{Key: "return_area", Label: "air back, cm²", Blank: vehicles.NotMeasured},
		Get:   func(s desk.State) string { return heaterOf(s.Job).ReturnArea.Text() },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			h := heaterOf(j)
			var err error
			if h.ReturnArea, h.Given = (vehicles.Number{}), h.Given&^vehicles.HasReturnArea; text != "" {
				h.ReturnArea.Value, err = form.NumberIn(text, vehicles.AMeasure)
				h.ReturnArea.Set, h.Given = true, h.Given|vehicles.HasReturnArea
			}
			return j.WithHeater(h), err
		},
		Say: func(f *form.Field, s desk.State) {
			h := heaterOf(s.Job)
			f.Note = "all " + rules.AirComesBackBy + " it, together"
			if ducts := h.DuctArea(); ducts > 0 {
				f.Note += "; the ducts have " + survey.Figure(ducts) + " cm²"
			}
		},
	}
}

func airSlot() form.Slot {
	from := func(letter rune, name, air string) option {
		return option{letter, name, func(h *vehicles.Heater) { h.Air = air }}
	}
	f := form.Field{Key: "air", Label: "takes air from", Note: "the air it warms, not the one it burns"}
	return question(f, vehicles.HasAir, []option{
		from('l', vehicles.LivingSpace, vehicles.LivingSpace), from('k', vehicles.Locker, vehicles.Locker),
		from('o', vehicles.Outside, vehicles.Outside), from('-', vehicles.NotSaid, ""),
	}, func(h vehicles.Heater) string { return h.Air })
}

func storedSlot() form.Slot {
	name := func(s vehicles.Stored) string { return strings.Join(s.Words(), ", ") }
	var options []option
	for _, s := range vehicles.EveryStored() {
		options = append(options, option{rune(name(s)[0]), name(s), func(h *vehicles.Heater) { h.Stored = s }})
	}
	options = append(options, option{'-', vehicles.NotSaid, func(h *vehicles.Heater) { h.Stored = vehicles.Stored{} }})
	f := form.Field{Key: "stored", Label: "kept there", Note: "the letter again for the next that has it"}
	return question(f, vehicles.HasStored, options, func(h vehicles.Heater) string { return name(h.Stored) })
}

func packedSlot() form.Slot {
	packed := func(letter rune, name string, is bool) option {
		return option{letter, name, func(h *vehicles.Heater) { h.Packed = is }}
	}
	f := form.Field{Key: "packed", Label: "swages packed", Note: "are swages under the plate flattened or packed out?"}
	return question(f, vehicles.HasPacked, []option{packed('y', "yes", true), packed('n', "no", false), packed('-', vehicles.NotSaid, false)},
		func(h vehicles.Heater) string {
			if h.Packed {
				return "yes"
			}
			return "no"
		})
}

// noBolts is what a heater's bolts say when it has none.
const noBolts = "none"

func boltsSlot() form.Slot {
	return form.Slot{
		Field: form.Field{
			Key: "bolts", Label: "bolts at", Heading: "Bolts and plate", Blank: vehicles.NotSaid,
			Note: "from the cut's centre, along then left: 80 60, 80 -60; or " + noBolts,
		},
		Get: func(s desk.State) string { return boltsText(heaterOf(s.Job)) },
		Set: func(j vehicles.Job, text string) (vehicles.Job, error) {
			h := heaterOf(j)
			var err error
			h.Bolts, h.Given = nil, h.Given&^vehicles.HasBolts
			if text != "" {
				h.Given |= vehicles.HasBolts
				h.Bolts, err = boltsIn(text)
			}
			return j.WithHeater(h), err
		},
	}
}

func boltsText(h vehicles.Heater) string {
	if len(h.Bolts) == 0 {
		if h.Given&vehicles.HasBolts != 0 {
			return noBolts
		}
		return ""
	}
	texts := make([]string, len(h.Bolts))
	for i, b := range h.Bolts {
		texts[i] = survey.Exact(b[0]) + " " + survey.Exact(b[1])
	}
	return strings.Join(texts, ", ")
}

// boltsIn reads where bolts are: pairs of numbers of mm, a comma between two pairs.
func boltsIn(text string) (bolts [][2]float64, err error) {
	if strings.EqualFold(text, noBolts) {
		return nil, nil
	}
	for _, pair := range strings.Split(text, ",") {
		words := strings.Fields(pair)
		if len(words) != 2 {
			return nil, fmt.Errorf("%q is no bolt: two numbers each, along and to the left, like 80 -60", form.Quoted(strings.TrimSpace(pair)))
		}
		var at [2]float64
		for i, word := range words {
			if at[i], err = form.NumberIn(word, vehicles.ALength); err != nil {
				return nil, err
			}
		}
		bolts = append(bolts, at)
	}
	return bolts, nil
}
