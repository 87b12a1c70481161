package form

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// counted is a record of n readings that are kept in the job's notes, a line each, and of how often it was asked. It takes
// digits; 13 is at odds with all others, which is found only by trying.
type counted struct {
	n     int
	count *counts
}

type counts struct{ sets, texts, fields int }

func (h counted) ID() string { return "counted" }

func (h counted) Fields(s desk.State, _ map[string]string) []Field {
	h.count.fields++
	out := make([]Field, h.n)
	for i, text := range h.lines(s.Job) {
		out[i] = Field{Key: fmt.Sprint(i), Label: fmt.Sprint("reading ", i), Text: text}
	}
	return out
}

func (h counted) lines(j vehicles.Job) []string {
	lines := strings.Split(j.Notes, "\n")
	return append(lines, make([]string, h.n)...)[:h.n]
}

func (h counted) Set(s desk.State, texts map[string]string) (vehicles.Job, Record, error) {
	h.count.sets++
	h.count.texts += len(texts)
	lines, faults, odd := h.lines(s.Job), Faults{}, false
	for i := range lines {
		text, edited := texts[fmt.Sprint(i)]
		if !edited {
			continue
		}
		if strings.Trim(text, "0123456789") != "" {
			faults = append(faults, Fault{Key: fmt.Sprint(i), Why: "not digits"})
		}
		odd = odd || text == "13"
		lines[i] = text
	}
	switch {
	case len(faults) > 0:
		return s.Job, h, faults
	case odd:
		return s.Job, h, errors.New("at odds with the others")
	}
	job := s.Job
	job.Notes = strings.Join(lines, "\n")
	return job, h, nil
}

// pasting pastes n lines into a record of as many fields.
func pasting(t *testing.T, n int, line func(i int) string) (e Editor, change desk.Change, c counts) {
	var count counts
	var s desk.State
	e = Editor{}.Open(counted{n, &count}, "", s)
	count = counts{}
	lines := make([]string, n)
	for i := range lines {
		lines[i] = line(i)
	}
	e, change, _ = e.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Join(lines, "\n")), Paste: true}, s)
	require.NotNil(t, change.Job, change.Say)
	return e, change, count
}

func TestAPasteIsTakenAtOnce(t *testing.T) {
	for _, n := range []int{1, 2, 10, 50, mostPasted} {
		e, change, c := pasting(t, n, func(i int) string { return fmt.Sprint(100 + i) })
		assert.Equal(t, 1, c.sets, "%d lines", n)
		assert.Equal(t, n, c.texts)
		assert.LessOrEqual(t, c.fields, n+5, "the fields are looked at once a line")
		assert.Equal(t, n, strings.Count(change.Job.Notes, "\n")+1)
		assert.Empty(t, change.Step, "it is an undo step of its own")
		assert.Empty(t, change.Job.Refused())
		assert.Equal(t, fmt.Sprint(n-1), e.On())
	}
}

func TestWhatAPasteRefusesIsJudgedOnce(t *testing.T) {
	for _, n := range []int{2, 10, 50, mostPasted} {
		_, change, c := pasting(t, n, func(i int) string { return "?" })
		assert.LessOrEqual(t, c.sets, 2, "one try, one look for the reasons: %d lines", n)
		require.Len(t, change.Job.Refused(), n)
		for i, r := range change.Job.Refused() {
			assert.Equal(t, "not digits", r.Why)
			assert.Equal(t, fmt.Sprint(i), r.Field)
		}
		assert.Equal(t, fmt.Sprintf("0 of %d lines taken, %d refused and not in the job", n, n), change.Say)
	}
	_, change, c := pasting(t, 50, func(i int) string { return []string{"7", "?"}[i%2] })
	assert.Equal(t, 25, strings.Count(change.Job.Notes, "7"), "what can be read is taken")
	assert.Len(t, change.Job.Refused(), 25)
	assert.LessOrEqual(t, c.sets, 3)
	_, change, c = pasting(t, mostPasted, func(i int) string { return "13" })
	assert.Len(t, change.Job.Refused(), mostPasted)
	assert.LessOrEqual(t, c.sets, mostRounds+1+mostAlone)
}

// However many texts a record holds refused, a key tries as often.
func TestAKeyBesideManyRefusedTexts(t *testing.T) {
	sets := func(n int, text, key string) int {
		var count counts
		var all []vehicles.Refusal
		for i := range n {
			all = append(all, vehicles.Refusal{Of: "counted", Name: "counted", Field: fmt.Sprint(i + 1), Label: "reading", Text: text, Why: "old"})
		}
		s := desk.State{Job: vehicles.Job{}.WithRefused(all)}
		e := Editor{}.Open(counted{n + 1, &count}, "0", s)
		count = counts{}
		_, change, _ := e.Update(letters(key), s)
		require.NotNil(t, change.Job, change.Say)
		return count.sets
	}
	for _, text := range []string{"13", "?", "7"} {
		for _, key := range []string{"?", "5"} {
			most := sets(50, text, key)
			assert.LessOrEqual(t, most, mostPairs+mostAlone+4, "%s beside %s", key, text)
			assert.Equal(t, most, sets(vehicles.MostRefused-1, text, key), "%s beside %s", key, text)
		}
	}
}

func TestNoMoreTextsAreRefusedThanAJobKeeps(t *testing.T) {
	var count counts
	var all []vehicles.Refusal
	for i := range vehicles.MostRefused {
		all = append(all, vehicles.Refusal{Of: "counted", Name: "counted", Field: fmt.Sprint(i + 1), Label: "reading", Text: "?"})
	}
	s := desk.State{Job: vehicles.Job{Notes: "5"}.WithRefused(all)}
	e := Editor{}.Open(counted{vehicles.MostRefused + 1, &count}, "0", s)
	for _, msg := range []tea.KeyMsg{letters("?"), {Type: tea.KeyRunes, Runes: []rune("?\n!"), Paste: true}} {
		after, change, _ := e.Update(msg, s)
		assert.True(t, change.Job == nil)
		assert.Equal(t, errFull.Error(), change.Say)
		assert.Equal(t, e.View(s, 60, 20), after.View(s, 60, 20), "the field is as it was")
	}
	_, change, _ := e.Update(letters("6"), s)
	require.NotNil(t, change.Job, "what can be read is taken")
	assert.Len(t, change.Job.Refused(), vehicles.MostRefused)
	e = e.Open(counted{vehicles.MostRefused + 1, &count}, "1", s)
	_, change, _ = e.Update(letters("!"), s)
	require.NotNil(t, change.Job, "one goes on typing what is refused already")
	assert.Len(t, change.Job.Refused(), vehicles.MostRefused)
}

func TestEachOfSeveralFaultsIsSaidOfItsField(t *testing.T) {
	slots := Slots{}
	for _, key := range []string{"width", "length"} {
		slots = append(slots, Required(Field{Key: key, Label: key}, vehicles.ASize, func(j *vehicles.Job) *float64 { return &j.Floor.Width }))
	}
	_, err := slots.Set(desk.State{}, map[string]string{"width": "7x", "length": "-5"})
	for key, says := range map[string]string{"width": "unit", "length": "more than 0"} {
		fault, found := faultOf(err, key)
		require.True(t, found)
		assert.Contains(t, fault.Why, says)
	}
}
