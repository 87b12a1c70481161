package sizing

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// basis is what a result rests on: it notes what was taken, and what is missing.
type basis struct {
	taken, lacks []string
	instructions bool // it rests on what the heater's own instructions have
}

// need returns a number that must be there; what says what it is.
func (b *basis) need(n vehicles.Number, what string) float64 {
	if !n.Set {
		b.lack(what)
	}
	return n.Value
}

func (b *basis) lack(what string) {
	if !slices.Contains(b.lacks, what) {
		b.lacks = append(slices.Clip(b.lacks), what) // others may have begun with the same
	}
}

// or returns a number, or what is usual, which is noted as taken.
func (b *basis) or(n vehicles.Number, usual float64, what string, unit Unit) float64 {
	if !n.Set {
		b.take(what, usual, unit)
	}
	return n.Or(usual)
}

// took notes what was taken, once.
func (b *basis) took(what string) {
	if !slices.Contains(b.taken, what) {
		b.taken = append(slices.Clip(b.taken), what) // as in lack
	}
}

func (b *basis) take(what string, v float64, unit Unit) {
	b.took(strings.TrimRight(what+" "+survey.Exact(v)+" "+string(unit), " "))
}

// begun notes that the van is as the job was begun with, as long as its floor's sizes are guesses.
func (m *maker) begun(b *basis) {
	if len(m.job.Guesses) > 0 {
		b.took("the van as the job was begun with: its floor is not measured yet")
	}
}

// heater are the sizes of the job's heater, by its class: what is taken from it is the instructions' to say.
func (m *maker) heater(b *basis) (c classSizes) {
	if m.job.Heater == nil {
		b.lack(whichHeater)
		return c
	}
	name := m.job.Heater.Class
	if m.job.Heater.Given&vehicles.HasClass == 0 {
		b.took("heater of " + name)
	}
	c, _ = m.sizes.class(name)
	b.instructions = true
	return c
}

// and is a basis of what two others rest on.
func (b basis) and(other basis) basis {
	for _, what := range other.lacks {
		b.lack(what)
	}
	for _, what := range other.taken {
		b.took(what)
	}
	b.instructions = b.instructions || other.instructions
	return b
}

// whichHeater is what is lacking where its class or its sizes are asked for.
const whichHeater = "which heater it is"
