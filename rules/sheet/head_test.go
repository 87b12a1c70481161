package sheet

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/template"
	"bench.example/undermark/vehicles"
)

// The van's name stands whole in the head of each page, for every van of the samples: on paper there is nowhere else to read whose it is.
func TestTheHeadHasTheVansWholeName(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	jobs := []vehicles.Job{vehicles.Demo()}
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		if job, err := vehicles.ParseJob(data, file); err == nil {
			jobs = append(jobs, job)
		}
	}
	require.GreaterOrEqual(t, len(jobs), len(files), "one of them has its sides swapped, and no sheet")
	for _, job := range jobs {
		for _, paper := range template.Papers {
			h := Head{Of: jobSheet, Job: job.Ref, Van: job.Vehicle, Date: "2026-11-27", Standing: "the place is doubtful"}
			p, b := Page{}, board{}
			h.put(&p, paper, 1, 9)
			p.Draw(&b)
			assert.Contains(t, said([]*board{&b}), tight(job.Vehicle), job.Ref)
		}
	}
}
