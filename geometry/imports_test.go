package geometry_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The tiers, outermost first: a tier may import itself and the tiers after it.
var tiers = []string{"cmd", "tui", "rules", "vehicles", "geometry"}

const module = "bench.example/undermark/"

func tierOf(path string) int {
	for i, tier := range tiers {
		if inside := strings.TrimPrefix(path, module); inside == tier || strings.HasPrefix(inside, tier+"/") {
			return i
		}
	}
	return -1
}

func TestImportsPointOneWay(t *testing.T) {
	list, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Imports \" \"}}", module+"...").Output()
	require.NoError(t, err)
	packages := strings.Split(strings.TrimSpace(string(list)), "\n")
	require.Greater(t, len(packages), 5)
	for _, line := range packages {
		names := strings.Fields(line)
		tier := tierOf(names[0])
		require.GreaterOrEqual(t, tier, 0, "%s is in no tier", names[0])
		for _, imported := range names[1:] {
			if strings.HasPrefix(imported, module) {
				require.GreaterOrEqual(t, tierOf(imported), tier, "%s must not import %s", names[0], imported)
			}
		}
	}
}
