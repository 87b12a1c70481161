package tui

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

func TestTheHeadingIsClearOnceAllIsAnswered(t *testing.T) {
	s := desk.State{Result: rules.Result{Verdict: rules.Clear, Job: vehicles.Job{Cut: &vehicles.Cut{}}}}
	assert.Equal(t, "clear", heading(s))
	s.Result.Unanswered = []string{"muffler drain", "where the heater's air comes from"}
	assert.Equal(t, "clear of what was entered; nobody has said: muffler drain, where the heater's air comes from", heading(s))
}
