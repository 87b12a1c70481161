package ontop

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A side of the van's skin at the centreline is none: what the field takes is what the job's file may hold.
func TestTheVansSkinLiesBesideItsCentreline(t *testing.T) {
	for _, side := range []string{"left", "right"} {
		r := screentest.New(t, New(), screentest.Van(t), 160, 47)
		r.Type("<enter>")
		for n := 0; !strings.Contains(r.View(160, 47), "▸ "+side+" "); n++ {
			require.Less(t, n, 40, "%s", r.View(160, 47))
			r.Type("<down>")
		}
		r.Type("<wipe>0")
		_, err := vehicles.ParseJob(r.State.Job.Format(), "job")
		assert.NoError(t, err, side)
		r.Type("<wipe>905")
		assert.Contains(t, string(r.State.Job.Format()), side+" = 905")
	}
}
