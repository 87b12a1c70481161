package rules

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// readingsOf are the places that a job's readings come to, with their standard uncertainties, and how near the cut comes to what, a line each, in mm.
func readingsOf(r *Result) string {
	var b strings.Builder
	placed := func(what string, i int, p *vehicles.Placed) {
		low, high := p.Prism.Footprint.Bounds()
		fmt.Fprintf(&b, "%s %d: x %.3f to %.3f, y %.3f to %.3f, z %.3f to %.3f; u %.4f, %.4f, top %.4f, low %.4f, turn %.6f\n", what, i+1, low.X, high.X, low.Y, high.Y,
			p.Prism.Low+0, p.Prism.High+0, p.X.U, p.Y.U, p.UTop, p.ULow, p.UTurn)
	}
	for i := range r.Plan.Obstructions {
		placed("obstruction", i, &r.Plan.Obstructions[i])
	}
	for i := range r.Plan.Openings {
		placed("opening", i, &r.Plan.Openings[i].Placed)
	}
	for i := range r.Plan.Fittings {
		placed("fitting", i, &r.Plan.Fittings[i])
	}
	c := r.Plan.Cut
	fmt.Fprintf(&b, "cut: meant %.3f, %.3f, is %.3f, %.3f; u %.4f, %.4f, mark %.4f, %.4f\n", c.Intended.X, c.Intended.Y, c.At.X, c.At.Y, c.UX, c.UY, c.UMark[0], c.UMark[1])
	for i := range r.Findings {
		if f := &r.Findings[i]; f.ID() == "cut.clearance" {
			fmt.Fprintf(&b, "%s: is %.3f, margin %.3f, sigma %.4f\n", f.Against.Name, f.Value, f.Margin.Or(0), f.Sigma)
		}
	}
	return b.String()
}

// The readings of every earlier version's job come to what they came to: places, uncertainties, and how near the cut is to what. The tables stand beside the jobs and are
// only ever added (UPDATE_GOLDEN=1 writes one that is missing).
func TestTheReadingsOfEveryEarlierVersionComeToTheSame(t *testing.T) {
	folder := filepath.Join("..", "testdata", "formats")
	for name := range earlier {
		job, err := vehicles.Load(filepath.Join(folder, name), Builtin())
		require.NoError(t, err)
		result, faults := Judge(job.Job, Builtin())
		require.Empty(t, faults, name)
		got := readingsOf(&result)
		require.Greater(t, strings.Count(got, "\n"), 1, name)
		table := filepath.Join(folder, strings.TrimSuffix(name, ".toml")+".readings")
		want, err := os.ReadFile(table)
		if errors.Is(err, fs.ErrNotExist) && os.Getenv("UPDATE_GOLDEN") != "" {
			require.NoError(t, os.WriteFile(table, []byte(got), 0o644))
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, string(want), got, name)
	}
}
