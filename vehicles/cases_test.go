package vehicles

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sampleJobs are the sample jobs of the contract, readable and refused alike.
func sampleJobs(t testing.TB) []string {
	files, err := filepath.Glob("../testdata/cases/*.toml")
	require.NoError(t, err)
	require.Len(t, files, 34)
	return files
}

func TestSampleJobsAreReadAndWrittenBackAsTheSameJob(t *testing.T) {
	for _, file := range sampleJobs(t) {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		job, faults := parse(data, file)
		require.Empty(t, faults, file)
		again, faults := parse(job.Format(), "again")
		require.Empty(t, faults, string(job.Format()))
		assert.Equal(t, job, again, file)
		assert.Equal(t, string(job.Format()), string(again.Format()), file)
	}
}

func TestASampleJobWithSwappedSidesIsRefusedButWhole(t *testing.T) {
	for _, file := range sampleJobs(t) {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := ParseJob(data, file)
		if filepath.Base(file) != "17-swapped-sides.toml" {
			require.NoError(t, err, file)
			continue
		}
		var faults FileErrors
		require.ErrorAs(t, err, &faults)
		require.Len(t, faults, 1)
		assert.True(t, faults.WholeJob())
		assert.Contains(t, faults[0].Error(), "17-swapped-sides.toml:")
		assert.Contains(t, faults[0].Text, "swapped")
		assert.Len(t, job.Ties, 4)
	}
}

func mustRead(t testing.TB, file string) []byte {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	return data
}
