package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

func TestCheckSaysWhatIsNotInTheJob(t *testing.T) {
	job := vehicles.NewJob("TL-09").WithoutGuess("floor.from").WithRefused([]vehicles.Refusal{
		{Of: "obstruction fuel tank", Name: "fuel tank", Field: "low", Label: "bottom", Text: "203", Why: "the tape is too short"},
	})
	code, out, _ := call(string(job.Format()), "check", "-")
	assert.Equal(t, exitDoubtful, code)
	assert.Contains(t, out, "one reading was refused and is not in the job: bottom of fuel tank, 203")
	assert.Contains(t, out, "guessed and not measured: floor.length, floor.width, floor.thickness, floor.ground")
}
