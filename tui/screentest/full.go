package screentest

import (
	_ "embed"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

//go:embed full.toml
var full []byte

// Full is a van whose file says something under every table, and under every key that a screen must not lose: much of it is
// shown by no list.
func Full(t testing.TB) vehicles.Job {
	job, err := vehicles.ParseJob(full, "full.toml")
	require.NoError(t, err)
	return job
}
