package sheet

import (
	"os"
	"path/filepath"
	"strings"
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

// However long a job's reference is, it ends before the page's number, and its first letters are on both halves.
func TestALongReferenceLeavesThePagesNumberItsPlace(t *testing.T) {
	for letters := 2; letters < 80; letters++ {
		for name, paper := range template.Papers {
			h := Head{Of: jobSheet, Job: "TL-" + strings.Repeat("7", letters), Van: "a van", Date: "2026-11-27", Standing: "the place is doubtful"}
			p, b := Page{}, board{}
			h.put(&p, paper, 12, 34)
			p.Draw(&b)
			begins := 0
			for i, text := range b.texts {
				if strings.HasPrefix(text.Words, "TL-77") {
					begins++
				}
				for k, other := range b.boxes[:i] {
					require.LessOrEqual(t, over(b.boxes[i], other), 0.6, "%s, %d letters: %q lies over %q", name, letters, text.Words, b.texts[k].Words)
				}
				require.LessOrEqual(t, b.boxes[i].Left+b.boxes[i].Width, paper.Wide-aside+1e-6, text.Words)
			}
			require.Equal(t, 2, begins)
		}
	}
}
