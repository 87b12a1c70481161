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

// When something was done is told to the minute and the second: two files that differ in nothing else differ in that.
func TestDifferencesTellTheTimeOfTheDay(t *testing.T) {
	one := NewJob("TL-43").WithDone(Done{Step: "stands", At: "2026-11-27T10:15:00", Due: "2026-12-01"})
	other := one.WithDone(Done{Step: "stands", At: "2026-11-27T11:15:00", Due: "2026-12-01"})
	day := one.WithDone(Done{Step: "stands", At: "2026-11-27", Due: "2026-12-02"})
	assert.Equal(t, []Difference{{`done "stands": at`, "2026-11-27T10:15:00", "2026-11-27T11:15:00"}}, Differences(one, other))
	assert.Equal(t, []Difference{
		{`done "stands": at`, "2026-11-27T10:15:00", "2026-11-27"}, {`done "stands": due`, "2026-12-01", "2026-12-02"},
	}, Differences(one, day))

	kept := func(text string) Job {
		job, err := ParseJob([]byte(head+"[extra]\nwhen = "+text+"\n"), "a.toml")
		require.NoError(t, err)
		return job
	}
	for a, b := range map[string]string{
		"07:32:00": "07:32:00.5", "2026-11-27T10:15:00Z": "2026-11-27T10:15:00+01:00", "2026-11-27": "2026-11-27T00:00:00", "1979-05-27T00:32:00.25": "1979-05-27T00:32:00",
	} {
		assert.Equal(t, []Difference{{"extra: when", a, b}}, Differences(kept(a), kept(b)), "what others keep, too")
	}
}
