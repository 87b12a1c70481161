package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func heaterOf(t *testing.T, text string) *Heater {
	job, faults := parse([]byte(head+"[heater]\n"+text), "a.toml")
	require.Empty(t, faults)
	again, faults := parse(job.Format(), "b.toml")
	require.Empty(t, faults)
	require.Equal(t, job.Heater, again.Heater)
	return job.Heater
}

// Where a duct takes the warm air away nothing is in its way: the heater fits under a seat.
func TestAnEndWithADuctNeedsNoFreeAir(t *testing.T) {
	for text, want := range map[string]Space{
		"":                 {200, 150, 50, 50},
		"duct = []":        {200, 150, 50, 50},
		`duct = ["front"]`: {60, 150, 50, 50},
		`duct = ["rear"]`:  {200, 60, 50, 50},
		"duct = [\"front\", \"rear\"]\nspace = { sides = 40 }":                       {60, 60, 40, 50},
		"duct = [\"front\", \"rear\"]\nspace = { front = 200, rear = 30 }":           {200, 30, 50, 50},
		"class = \"8 kW\"\nduct = [\"front\", \"rear\"]":                             {60, 60, 80, 80},
		"space = { front = 10, rear = 20, sides = 30, top = 40 }\nduct = [\"rear\"]": {10, 20, 30, 40},
	} {
		assert.Equal(t, want, heaterOf(t, text).Kept(), text)
	}
}

func TestTheAreaOfTheDucts(t *testing.T) {
	assert.InDelta(t, 28.2743, heaterOf(t, `duct = ["front"]`).DuctArea(), 1e-4, "pi / 4 * 6^2")
	assert.InDelta(t, 2*63.6173, heaterOf(t, "class = \"4 kW\"\nduct = [\"front\", \"rear\"]").DuctArea(), 1e-4, "pi / 4 * 9^2, twice")
	assert.InDelta(t, 44.1786, heaterOf(t, "duct = [\"rear\"]\nduct_across = 75").DuctArea(), 1e-4)
	assert.Zero(t, heaterOf(t, "duct_across = 75").DuctArea())
}

// A side of the space that the file does not say stays unsaid when the job is written: a duct put there later counts.
func TestASideOfTheSpaceThatIsNotSaidStaysUnsaid(t *testing.T) {
	job, faults := parse([]byte(head+"[heater]\nspace = { top = 40 }"), "a.toml")
	require.Empty(t, faults)
	assert.Contains(t, string(job.Format()), "space = { top = 40 }\n")
}

func TestWhatIsKeptInWords(t *testing.T) {
	assert.Equal(t, []string{"nothing"}, new(Stored).Words())
	both := Stored{Petrol: true, Lead: true}
	assert.Equal(t, []string{"petrol", "lead batteries"}, both.Words())
	assert.Equal(t, 2, both.Count())
	assert.Len(t, EveryStored(), 8)
}
