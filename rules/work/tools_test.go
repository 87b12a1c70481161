package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// Tools are those that the job calls for, in its sizes: no saw where nothing is cut, no pipe cutter where no exhaust is laid.
func TestToolsAreThoseOfTheJob(t *testing.T) {
	all := strings.Join(Tools(judged(t, demo)), "; ")
	for _, want := range []string{"the template, printed at 100 %, either face", "bit of 6 mm", "hole saw of 127 mm, 68 rpm", "bit of 7 mm for the screws", "level", "carbon monoxide meter", "torque wrench"} {
		assert.Contains(t, all, want)
	}
	all = strings.Join(Tools(judged(t, bare)), "; ")
	assert.Contains(t, all, "stands")
	for _, not := range []string{"template", "saw", "bit", "level", "meter"} {
		assert.NotContains(t, all, not)
	}
	all = strings.Join(Tools(judged(t, demo.WithRun(vehicles.ExhaustRun, nil))), "; ")
	assert.NotContains(t, all, "pipe cutter")
}
