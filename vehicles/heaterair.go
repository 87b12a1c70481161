package vehicles

import (
	"math"
	"slices"
	"strings"
)

// Ends are ends of the heater's body.
type Ends struct{ Front, Rear bool }

// The words of the job file for them.
const (
	frontEnd = "front"
	rearEnd  = "rear"
)

// Count is how many of the ends are meant.
func (e Ends) Count() int { return len(e.Words()) }

// Words are the ends, as the job file calls them.
func (e Ends) Words() (words []string) {
	if e.Front {
		words = append(words, frontEnd)
	}
	if e.Rear {
		words = append(words, rearEnd)
	}
	return words
}

// Where a heater may take the air from that it warms.
const (
	LivingSpace = "living space"
	Locker      = "locker"
	Outside     = "outside"
)

// AirPlaces are all of them.
var AirPlaces = []string{LivingSpace, Locker, Outside}

// Stored is what is kept in the space whose air a heater takes, of what must not be in it.
type Stored struct{ Petrol, Gas, Lead bool }

// The words of the job file for it; nothing stands alone.
const (
	storedPetrol = "petrol"
	storedGas    = "gas bottles"
	storedLead   = "lead batteries"
	storedNone   = "nothing"
)

// Words are what is kept, as the job file says it: "nothing" for none of it.
func (s Stored) Words() (words []string) {
	for _, w := range s.items() {
		if *w.is {
			words = append(words, w.word)
		}
	}
	if words == nil {
		words = []string{storedNone}
	}
	return words
}

// Count is how many of the three are kept.
func (s Stored) Count() (n int) {
	for _, w := range s.items() {
		if *w.is {
			n++
		}
	}
	return n
}

type storedItem struct {
	word string
	is   *bool
}

func (s *Stored) items() []storedItem {
	return []storedItem{{storedPetrol, &s.Petrol}, {storedGas, &s.Gas}, {storedLead, &s.Lead}}
}

// EveryStored are all things that Stored may say, nothing first.
func EveryStored() []Stored {
	all := make([]Stored, 0, 8)
	for n := range 8 {
		all = append(all, Stored{n&1 != 0, n&2 != 0, n&4 != 0})
	}
	return all
}

// ductSpace is what is kept free where a duct is fixed to an end of the body, mm: room for its clip and for a hand.
// common practice, no source.
const ductSpace = 60

// The ducts of the heater's classes, mm across. from memory: usual for heaters of 2 kW, and for larger ones.
const (
	smallDuct = 60
	largeDuct = 90
)

// Kept is the space kept free round the body: what the job says, else what the class asks for, and at an end with a duct no
// more than a duct needs.
func (h *Heater) Kept() Space {
	s := h.Space
	if h.Duct.Front && h.Given&HasFrontSpace == 0 {
		s.Front = min(s.Front, ductSpace)
	}
	if h.Duct.Rear && h.Given&HasRearSpace == 0 {
		s.Rear = min(s.Rear, ductSpace)
	}
	return s
}

// DuctArea is the area of the ducts at all ducted ends together, cm2; 0 without any.
func (h *Heater) DuctArea() float64 {
	return float64(h.Duct.Count()) * math.Pi / 4 * h.DuctAcross * h.DuctAcross / 100
}

// air reads where the air goes and comes from.
func (t *table) air(h *Heater) {
	if words, ok := t.words("duct", []string{frontEnd, rearEnd}); ok {
		h.Duct = Ends{slices.Contains(words, frontEnd), slices.Contains(words, rearEnd)}
		h.Given |= HasDuct
	}
	if across := t.number("duct_across", optional, ASize); across.Set {
		h.DuctAcross, h.Given = across.Value, h.Given|HasDuctAcross
	}
	if area := t.number("return_area", optional, AMeasure); area.Set {
		h.ReturnArea, h.Given = area, h.Given|HasReturnArea
	}
	if h.Air = t.choice("air", optional, AirPlaces); h.Air != "" {
		h.Given |= HasAir
	}
	t.stored(h)
}

func (t *table) stored(h *Heater) {
	words, ok := t.words("stored", []string{storedPetrol, storedGas, storedLead, storedNone})
	if !ok {
		return
	}
	if none := slices.Contains(words, storedNone); len(words) == 0 || none && len(words) > 1 {
		t.r.fault(joinKey(t.path, "stored"), " is %s; name what is kept there, or [%s] alone", wordList(words), quote(storedNone))
		return
	}
	for _, w := range h.Stored.items() {
		*w.is = slices.Contains(words, w.word)
	}
	h.Given |= HasStored
}

// words reads a list of some of the words, in any order; ok is false when it is not there or wrong.
func (t *table) words(key string, words []string) (list []string, ok bool) {
	accepted := "a list of some of: " + strings.Join(words, ", ")
	value, path, there := t.take(key, optional, accepted)
	if !there {
		return nil, false
	}
	items, isList := value.([]any)
	if !isList {
		t.wrong(path, value, accepted)
		return nil, false
	}
	ok = true
	for i, item := range items {
		word, isText := item.(string)
		if !isText || !slices.Contains(words, word) {
			t.wrong(joinIndex(path, i), item, "one of: "+strings.Join(words, ", "))
			ok = false
			continue
		}
		list = append(list, word)
	}
	return list, ok
}

// air writes where the air goes and comes from, as far as the file said it.
func (w *writer) air(h Heater) {
	said := func(key HeaterKeys, write func()) {
		if h.Given&key != 0 {
			write()
		}
	}
	said(HasDuct, func() { w.value("duct", wordList(h.Duct.Words())) })
	said(HasDuctAcross, func() { w.number("duct_across", h.DuctAcross) })
	said(HasReturnArea, func() { w.maybe("return_area", h.ReturnArea) })
	said(HasAir, func() { w.text("air", h.Air) })
	said(HasStored, func() { w.value("stored", wordList(h.Stored.Words())) })
}

// wordList is a list of words as a file has it.
func wordList(words []string) string {
	texts := make([]string, len(words))
	for i, word := range words {
		texts[i] = tomlText(word)
	}
	return "[" + strings.Join(texts, ", ") + "]"
}
