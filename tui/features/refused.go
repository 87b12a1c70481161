package features

import (
	"errors"
	"slices"
	"strings"

	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Called is what refused texts of the thing are kept under: its name, which no other of the list has.
func (h Record) Called(j vehicles.Job) (of, name string) {
	if h.Fresh {
		return "", ""
	}
	own, _ := h.called(j)
	name, _ = h.Name(j)
	return h.List.One() + " " + own, name
}

// Begun returns the job with the thing among the unfinished ones when it was not there yet.
func (h Record) Begun(j vehicles.Job) (vehicles.Job, form.Record) {
	if !h.Fresh {
		return j, h
	}
	return h.List.withUnfinished(j, h.List.unfinished(j).Insert(0, vehicles.Begun{})), Record{h.List, h.List.Len(j), false}
}

// needs says which blank fields are needed or, when none is blank, for which refused ones the thing waits.
func (h Record) needs(j vehicles.Job, missing []string, now texts) error {
	blank := slices.Clone(missing)
	for _, r := range form.Refused(h, j) {
		blank = slices.DeleteFunc(blank, func(key string) bool { return key == r.Field && r.Text != "" })
	}
	if len(blank) == 0 {
		return errors.New(form.Waits + h.lacking(j, missing, now))
	}
	return errors.New("needed: " + h.lacking(j, blank, now) + form.KeepsWhatItHad)
}

// forgotten returns the job without the refused texts of things that the list has no more.
func (l List) forgotten(j vehicles.Job) vehicles.Job {
	all := j.Refused()
	if len(all) == 0 {
		return j
	}
	there := map[string]bool{}
	for row := range l.Rows(j) {
		of, _ := Record{l, row, false}.Called(j)
		there[of] = true
	}
	return j.WithRefused(slices.DeleteFunc(all, func(r vehicles.Refusal) bool {
		return strings.HasPrefix(r.Of, l.One()+" ") && !there[r.Of]
	}))
}
