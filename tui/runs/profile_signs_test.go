package runs

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// No sign of the profile stands in a name that is written there, wherever water stands and the muffler hangs: the mark of a place where water stands
// once stood in "muff!er 4.6°".
func TestNoSignOfTheProfileStandsInAName(t *testing.T) {
	pierced := regexp.MustCompile(`muf?f?l?e?!f?f?l?e?r? `)
	for _, drop := range []float64{190, 200, 205, 220} {
		for start := 2.; start < 170; start += 30 {
			d := screentest.New(t, New(), sagging(drop, start), 100, 27)
			_, profile, ok := strings.Cut(d.View(100, 27), "SEEN FROM BESIDE")
			require.True(t, ok)
			assert.Contains(t, profile, "! water stands.")
			assert.NotRegexp(t, pierced, profile, "%g deep, muffler at %g", drop, start)
		}
	}
}

// sagging is the sample with its exhaust's second point so deep that water stands there, the muffler hung somewhere before it.
func sagging(drop, start float64) vehicles.Job {
	job := vehicles.Demo()
	exhaust := *job.Exhaust
	exhaust.Path = slices.Clone(exhaust.Path)
	exhaust.Path[1].Drop = drop
	muffler := *exhaust.Muffler
	muffler.Leg, muffler.Start = 2, start
	exhaust.Muffler = &muffler
	job.Exhaust = &exhaust
	return job
}
