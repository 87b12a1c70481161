package geometry_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The rooms, outermost first: a room may import itself and the rooms after it.
var rooms = []string{"cmd", "tui", "rules", "vehicles", "geometry"}

const module = "bench.example/undermark/"

func roomOf(path string) int {
	for i, room := range rooms {
		if inside := strings.TrimPrefix(path, module); inside == room || strings.HasPrefix(inside, room+"/") {
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
		room := roomOf(names[0])
		require.GreaterOrEqual(t, room, 0, "%s is in no room", names[0])
		for _, imported := range names[1:] {
			if strings.HasPrefix(imported, module) {
				require.GreaterOrEqual(t, roomOf(imported), room, "%s must not import %s", names[0], imported)
			}
		}
	}
}
