// Package sizing reckons the sizes behind a job: what the floor asks of collar, screws and sealant, how long tank and battery last, cable
// and fuse, the heat a body loses, what a duct takes from the fan, how fast a saw turns. Nothing of it is a verdict. Nothing is guessed
// silently: a result says what nobody has said, without which there is none, and what was taken in its place where something usual is.
//
// All functions are pure: a judged job in, typed results out.
package sizing

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Topic is what is sized, as it is called on the command line.
type Topic string

// The topics.
const (
	Floor     Topic = "floor"
	Fuel      Topic = "fuel"
	Electrics Topic = "electrics"
	Heat      Topic = "heat"
	Duct      Topic = "duct"
	Saw       Topic = "saw"
)

// Subject is all that is reckoned of a topic.
type Subject struct {
	Topic Topic
	Title string
	Rows  []Row
}

// Row is one result.
type Row struct {
	ID     string // within its subject, for programs
	Label  string
	Value  vehicles.Number // not set for what is said in words, and while something is missing
	Unit   Unit
	Text   string   // in words: in place of a value, or beside it
	Why    string   // how it is reckoned
	Source string   // of formula and coefficients
	Taken  []string // what was taken as nobody has said it
	Lacks  []string // what nobody has said, so that there is no result
	Amiss  string   // what must be put right; "" for nothing
	// Instructions tells that the heater's own instructions have the figure: they come first.
	Instructions bool
}

// Unit is what a value is in, as it is written.
type Unit string

// The units.
const (
	MM     Unit = "mm"
	MM2    Unit = "mm²"
	Volt   Unit = "V"
	Ampere Unit = "A"
	Hour   Unit = "h"
	Night  Unit = "nights"
	ML     Unit = "ml"
	Litre  Unit = "l"
	Stroke Unit = "strokes"
	Second Unit = "s"
	Minute Unit = "min"
	Watt   Unit = "W"
	RPM    Unit = "rpm"
	Pascal Unit = "Pa"
	Flow   Unit = "m³/h"
	Speed  Unit = "m/s"
	NoUnit Unit = ""
)

// places is how many decimals a value in a unit is worth.
var places = map[Unit]int{
	MM: 1, MM2: 2, Volt: 2, Ampere: 1, Hour: 1, Night: 1, ML: 1, Litre: 1, Stroke: 0, Second: 0, Minute: 0, Watt: 0, RPM: 0, Pascal: 0, Flow: 0, Speed: 1, NoUnit: 0,
}

// Figure is the value as people write it, without its unit; "" without one.
func (r Row) Figure() string {
	if !r.Value.Set {
		return ""
	}
	return figure(r.Value.Value, places[r.Unit])
}

// figure is a number to so many decimals, without those that say nothing.
func figure(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		text = "0"
	}
	return text
}

// Said is the result in few words: its value in its unit, what it is in words, or that something is missing.
func (r Row) Said() string {
	said := r.Figure()
	if said != "" && r.Unit != NoUnit {
		said += " " + string(r.Unit)
	}
	switch {
	case said == "" && len(r.Lacks) > 0:
		return "not known"
	case said == "":
		return r.Text
	case r.Text != "":
		return said + ", " + r.Text
	}
	return said
}

// topics are all topics: what people call each, and what reckons it.
var topics = []struct {
	topic  Topic
	title  string
	reckon func(*maker)
}{
	{Floor, "Floor stack", (*maker).floor},
	{Fuel, "Fuel", (*maker).fuel},
	{Electrics, "Electrics", (*maker).electrics},
	{Heat, "Heat", (*maker).heat},
	{Duct, "Warm-air duct", (*maker).duct},
	{Saw, "Hole saw", (*maker).saw},
}

// Topics are the topics, in the order in which they are shown.
func Topics() (all []Topic) {
	for _, t := range topics {
		all = append(all, t.topic)
	}
	return all
}

// Of reckons all topics of a judged job by the built-in sizes.
func Of(r *rules.Result) []Subject {
	var all []Subject
	for _, t := range topics {
		m := maker{r: r, job: &r.Job, sizes: Usual()}
		t.reckon(&m)
		all = append(all, Subject{t.topic, t.title, m.rows})
	}
	return all
}

// About is the subject of a topic.
func About(all []Subject, topic Topic) (Subject, bool) {
	i := slices.IndexFunc(all, func(s Subject) bool { return s.Topic == topic })
	if i < 0 {
		return Subject{}, false
	}
	return all[i], true
}

// maker makes the rows of a subject.
type maker struct {
	r     *rules.Result
	job   *vehicles.Job
	sizes *Sizes
	rows  []Row
}

// put adds a result that rests on so much: without a value where something is missing.
func (m *maker) put(row Row, on basis) {
	row.Taken, row.Lacks = append(row.Taken, on.taken...), append(row.Lacks, on.lacks...)
	if len(row.Lacks) > 0 {
		row.Value, row.Text, row.Amiss, row.Why = vehicles.Number{}, "", "", ""
	}
	if v := row.Value.Value; math.IsNaN(v) || math.IsInf(v, 0) {
		row.Value, row.Text = vehicles.Number{}, "beyond reckoning"
	}
	row.Instructions = row.Instructions || on.instructions
	m.rows = append(m.rows, row)
}

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
		b.lacks = append(b.lacks, what)
	}
}

// or returns a number, or what is usual, which is noted as taken.
func (b *basis) or(n vehicles.Number, usual float64, what string, unit Unit) float64 {
	if !n.Set {
		b.take(what, usual, unit)
	}
	return n.Or(usual)
}

func (b *basis) take(what string, v float64, unit Unit) {
	b.taken = append(b.taken, strings.TrimRight(what+" "+survey.Exact(v)+" "+string(unit), " "))
}

// begun notes that the van is as the job was begun with, as long as its floor's sizes are guesses.
func (m *maker) begun(b *basis) {
	if len(m.job.Guesses) > 0 {
		b.taken = append(b.taken, "the van as the job was begun with: its floor is not measured yet")
	}
}

// heater are the sizes of the job's heater, by its class: what is taken from it is the instructions' to say.
func (m *maker) heater(b *basis) (c classSizes) {
	if m.job.Heater == nil {
		b.lack("which heater it is")
		return c
	}
	name := m.job.Heater.Class
	if name == "" {
		name = vehicles.DefaultHeaterClass
		b.taken = append(b.taken, "heater of "+name)
	}
	c, _ = m.sizes.class(name)
	b.instructions = true
	return c
}

// and is a basis of what two others rest on.
func (b basis) and(other basis) basis {
	for _, what := range other.lacks {
		b.lacks = slices.Clip(b.lacks)
		b.lack(what)
	}
	for _, what := range other.taken {
		if !slices.Contains(b.taken, what) {
			b.taken = append(slices.Clip(b.taken), what)
		}
	}
	b.instructions = b.instructions || other.instructions
	return b
}

// round is a number to so many decimals.
func round(v float64, decimals int) float64 {
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'f', decimals, 64), 64)
	return rounded
}
