package vehicles

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const twoPipes = head + `
[[obstruction]]
name = "brake pipe"
kind = "brake line"
path = [[300, "R 410"], [1500, "R 410"]]
across = 8
drop = [20, 30]

[[obstruction]]
name = "loom"
kind = "wiring"
path = [[300, 0], [1500, "L 410"]]
across = 8

[cut]
at = [1210, 240]
across = 127
`

func TestDifferencesSayWhereTwoJobsDiffer(t *testing.T) {
	one, err := ParseJob([]byte(twoPipes), "one")
	require.NoError(t, err)
	other := one.WithCut(Cut{At: [2]float64{1256, 240}, Across: 127})
	pipe := other.Obstructions[0]
	pipe.Drop, pipe.Measured = Span{From: 20, To: 35, Set: true}, false
	other.Obstructions = other.Obstructions.With(0, pipe).Without(1)
	other.Fitter = "A"
	assert.Equal(t, []Difference{
		{"cut: at", "[1210, 240]", "[1256, 240]"},
		{"job: fitter", "", `"A"`},
		{`obstruction "brake pipe": drop`, "[20, 30]", "[20, 35]"},
		{`obstruction "brake pipe": measured`, "", "false"},
		{`obstruction "loom"`, "there", ""},
	}, Differences(one, other))
	assert.Empty(t, Differences(one, one))

	turned := one
	turned.Obstructions = turned.Obstructions.Move(0, 1)
	assert.Equal(t, []Difference{{"the order of its things", "one", "another"}}, Differences(one, turned))
}

// There is a difference when, and only when, the files are not the same; and it is the same from both sides.
func TestJobsDifferWhenTheirFilesDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one, other := anyJob(t), anyJob(t)
		if rapid.Bool().Draw(t, "same") {
			other = one
		}
		there, back := Differences(one, other), Differences(other, one)
		require.Equal(t, !bytes.Equal(one.Format(), other.Format()), len(there) > 0)
		require.Len(t, back, len(there))
		for i := range there {
			if there[i].Where != "the order of its things" {
				require.Equal(t, Difference{there[i].Where, there[i].Other, there[i].One}, back[i])
			}
		}
	})
}
