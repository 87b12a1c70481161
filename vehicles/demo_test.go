package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheSampleVanHasSomethingOfEverything(t *testing.T) {
	job := Demo()
	kinds := map[string]bool{}
	for _, o := range job.Obstructions {
		kinds[o.Kind] = true
	}
	assert.GreaterOrEqual(t, len(job.Obstructions), 16)
	assert.GreaterOrEqual(t, len(kinds), 8)
	assert.Contains(t, job.Notes, "invented")
	assert.Equal(t, string(demoFile), string(job.Format()), "the file is in the style that saving gives it")
}
