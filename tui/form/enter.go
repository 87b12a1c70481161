package form

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// How texts get into the job: all that are entered together are one edit. However many texts a record holds refused, an edit
// tries a bounded number of times.

const (
	// mostRounds is how often texts entered together are tried, each time without those that were to blame the time before: the
	// unreadable ones go at the first, and few are at odds with each other.
	mostRounds = 3
	// mostPairs is how many texts refused before are tried by themselves with the new ones: two edges of a thing belong
	// together, or the two readings of a point, and no more.
	mostPairs = 8
)

// entered is what came of entering texts.
type entered struct {
	editor  Editor
	state   desk.State // with the change done
	change  desk.Change
	refused int // how many of the texts
}

// enter puts texts into the job or the workshop's settings. What the job does not take is kept in it as refused. The error
// says why nothing was changed.
func (e Editor) enter(put []Put, s desk.State) (entered, error) {
	done := entered{editor: e, state: s}
	var rest []Put // of the job
	settler, _ := e.record.(Settler)
	for _, p := range put {
		p.Key = strings.TrimPrefix(p.Key, e.record.ID()+"/")
		if settler != nil {
			if set, mine := settler.Settings(done.state, p.Key, p.Text); mine {
				done.state.Settings, done.change.Settings = set, &set
				continue
			}
		}
		rest = append(rest, p)
	}
	if len(rest) == 0 {
		return done, nil
	}
	s, record, bad, why := e.take(rest, done.state)
	if len(bad) > 0 {
		var err error
		if s.Job, record, err = keep(record, bad, why, s); err != nil {
			return done, err
		}
	}
	job := s.Job
	done.state, done.editor.record, done.change.Job, done.refused = s, record, &job, len(bad)
	return done, nil
}

// take puts texts into the job, and returns the state with it and those texts that it does not take. Where the field that
// has the keys is among these, the job is as that was entered, with no part of the text that could be read. Why is why it
// takes none of them, nil where that is to be found out by trying them again.
func (e Editor) take(put []Put, s desk.State) (now desk.State, record Record, bad []Put, why error) {
	record = e.record
	entered := strings.TrimPrefix(e.from.key, e.record.ID()+"/")
	for round := 1; len(put) > 0; round++ {
		after, next, err := set(record, textsOf(put), s)
		if err == nil {
			s.Job = after
			if len(bad) > 0 {
				_, s.Faults = rules.Reduce(after, s.Book) // bad ones are judged against them
			}
			return s, next, bad, nil
		}
		why = nil
		if round == 1 && len(othersHeld(record, textsOf(put), s.Job)) == 0 {
			why = err // of these texts alone
		}
		var good []Put
		for _, p := range put {
			if round < mostRounds && !blamed(err, p.Key, put) {
				good = append(good, p)
				continue
			}
			bad = append(bad, p)
			if p.Key == entered {
				if !slices.EqualFunc(s.Faults, e.from.faults, func(f, g vehicles.Fault) bool { return f.Text == g.Text }) {
					why = nil // other faults are known there
				}
				s.Job, s.Faults, record = e.from.job, e.from.faults, e.from.record
			}
		}
		put = good
	}
	return s, record, bad, why
}

func textsOf(put []Put) map[string]string {
	out := map[string]string{}
	for _, p := range put {
		out[p.Key] = p.Text
	}
	return out
}

// blamed says whether an error is about the text of that key: all are to blame when it is about none of those put.
func blamed(err error, key string, put []Put) bool {
	if _, own := faultOf(err, key); own {
		return true
	}
	return !slices.ContainsFunc(put, func(p Put) bool { _, own := faultOf(err, p.Key); return own })
}

// faultOf returns the fault that an error finds in the text of that key.
func faultOf(err error, key string) (fault Fault, found bool) {
	var all Faults
	if !errors.As(err, &all) && errors.As(err, &fault) {
		all = Faults{fault}
	}
	i := slices.IndexFunc(all, func(f Fault) bool { return f.Key == key })
	if i < 0 {
		return Fault{}, false
	}
	return all[i], true
}

// othersHeld are the texts of a record that the job did not take, by key, but for those put in anew.
func othersHeld(record Record, texts map[string]string, j vehicles.Job) map[string]string {
	others := held(record, j)
	maps.DeleteFunc(others, func(key, _ string) bool { _, anew := texts[key]; return anew })
	return others
}

// set tries new texts together with texts the job has not taken before: two edges can often only be moved together. The texts
// that are taken are refused no more. The error is why the new texts alone are not taken.
func set(record Record, texts map[string]string, s desk.State) (job vehicles.Job, next Record, err error) {
	held := othersHeld(record, texts, s.Job)
	try := func(others map[string]string) bool {
		all := maps.Clone(others)
		maps.Copy(all, texts)
		if job, next, err = record.Set(s, all); err == nil {
			job = taken(s.Job, job, record, next, all)
		}
		return err == nil
	}
	if try(held) || len(held) == 0 {
		return job, next, err
	}
	first := len(held)
	maps.DeleteFunc(held, func(key, _ string) bool { _, unreadable := faultOf(err, key); return unreadable })
	if len(held) < first && len(held) > 1 && try(held) {
		return job, next, err
	}
	others := slices.Sorted(maps.Keys(held))
	for _, other := range others[:min(len(others), mostPairs)] {
		if try(map[string]string{other: held[other]}) {
			return job, next, err
		}
	}
	try(map[string]string{})
	return job, next, err
}
