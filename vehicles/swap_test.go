package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

func TestSidesOfTiesChangeOver(t *testing.T) {
	y := func(text string) survey.Reading {
		r, err := survey.Parse(text, survey.Y)
		require.NoError(t, err)
		return r
	}
	for was, want := range map[string]string{
		"L 240": "R 240", "R310mm": "L310mm", "-12.5 mm": "12.5", "5in": "-127", `L 1'0"`: `R 1'0"`, "0": "0", "240": "-240",
	} {
		job := Job{Ties: []Tie{{Below: Pair{y("1"), y(was)}, Above: Pair{y("1"), y("7")}}}}
		got := job.WithTieSidesSwapped(true)
		assert.Equal(t, want, got.Ties[0].Below[1].Text, was)
		assert.Equal(t, "7", got.Ties[0].Above[1].Text)
		assert.Equal(t, was, job.Ties[0].Below[1].Text, "the old job stays")
		assert.Equal(t, "-7", job.WithTieSidesSwapped(false).Ties[0].Above[1].Text)
	}
}

// Swapping twice puts every reading back where it was, and swapping mirrors the places it comes to when both side
// edges are as far out.
func TestSwappingIsAMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReading(t, survey.Y)
		if r.Start == survey.On {
			return
		}
		job := Job{Floor: Floor{Width: 1780}, Ties: []Tie{{Name: "bolt", Use: true}}}
		job.Ties[0].Below = Pair{survey.FromNumber(1000, true), r}
		job.Ties[0].Above = job.Ties[0].Below
		once := job.WithTieSidesSwapped(true)
		before, _ := Reduce(job)
		after, _ := Reduce(once)
		again, _ := Reduce(once.WithTieSidesSwapped(true))
		require.InDelta(t, before.Ties[0].Below.Y, -after.Ties[0].Below.Y, 1e-9)
		require.InDelta(t, before.Ties[0].Below.Y, again.Ties[0].Below.Y, 1e-9)
	})
}

// Of several ties the one that is meant changes over, on the side that is meant.
func TestOneTieChangesOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var job Job
		for range rapid.IntRange(1, 4).Draw(t, "ties") {
			job.Ties = append(job.Ties, Tie{Below: anyPoint(t), Above: anyPoint(t)})
		}
		one, below := rapid.IntRange(0, len(job.Ties)-1).Draw(t, "tie"), rapid.Bool().Draw(t, "below")
		got, all := job.WithTieSideSwapped(one, below), job.WithTieSidesSwapped(below)
		for i := range job.Ties {
			want := job.Ties[i]
			if i == one {
				want = all.Ties[i]
			}
			require.Equal(t, want, got.Ties[i])
			require.Equal(t, job.Ties[i].Below[0], all.Ties[i].Below[0], "x stays")
			if below {
				require.Equal(t, job.Ties[i].Above, all.Ties[i].Above)
			}
		}
	})
}
