// Package sizing reckons the sizes behind a job: what the floor asks of collar, screws and sealant, how long tank and battery last, cable
// and fuse, the heat a body loses, what a duct takes from the fan, how fast a saw turns. Nothing of it is a verdict. Nothing is guessed
// silently: a result says what nobody has said, without which there is none, and what was taken in its place where something usual is.
//
// All functions are pure: a judged job in, typed results out.
package sizing

import (
	"math"
	"slices"

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

// Find is one row of a job; ok is false where the job has none.
func Find(r *rules.Result, id ID) (row Row, ok bool) {
	for _, t := range topics {
		if t.topic != id.of {
			continue
		}
		m := maker{r: r, job: &r.Job, sizes: Usual()}
		t.reckon(&m)
		if i := slices.IndexFunc(m.rows, func(row Row) bool { return row.ID == id }); i >= 0 {
			return m.rows[i], true
		}
	}
	return Row{}, false
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
