package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// routeJob is a floor with a cut and nothing under it.
const routeJob = bareJob + "[cut]\nat = [1000, 200]\nacross = 127\n"

func TestRouteAnswersPeopleAndPrograms(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(routeJob, "route", "exhaust", "--to", "1040,880,150", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "TL-07: the shortest exhaust there that keeps every rule. All in mm.\n")
	assert.Contains(t, out, "1\t1040\t880\t150\n")
	assert.Contains(t, out, "There is no [heater]: its stub was taken to be that of 2 kW, yaw 0.\n")
	assert.Contains(t, out, "There is no [exhaust]: it was taken to be 26 across, bend 60.\n")

	code, out, _ = call(routeJob, "route", "exhaust", "--to", "1040,880,150", "--json", "-")
	require.Zero(t, code)
	var said struct {
		Path    [][]float64
		Length  float64
		Bends   float64
		Verdict string
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.Equal(t, [][]float64{{1040, 880, 150}}, said.Path)
	assert.Equal(t, "clear", said.Verdict)
	assert.Zero(t, said.Bends)
	assert.Greater(t, said.Length, 600.0)
}

func TestRouteTellsTheNearestMiss(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(routeJob, "route", "exhaust", "--to", "1040,600,150", "-")
	assert.Equal(t, exitFoul, code, complaint)
	assert.Contains(t, out, "TL-07: no exhaust there keeps every rule. The nearest miss, all in mm, breaks:\n  outlet inside the outline: ends 240 mm too far under the van\n")
	assert.Regexp(t, `(?m)^length [0-9.]+, bends [0-9.]+°$`, out, "no margin of what it misses")

	code, out, _ = call(routeJob, "route", "exhaust", "--to", "1040,600,150", "--json", "-")
	assert.Equal(t, exitFoul, code)
	var said struct {
		Path   [][]float64
		Length *float64
		Miss   struct {
			Path   [][]float64
			Breaks []struct {
				ID     string
				Margin float64
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.Empty(t, said.Path)
	assert.Nil(t, said.Length)
	assert.Equal(t, [][]float64{{1040, 600, 150}}, said.Miss.Path)
	require.Len(t, said.Miss.Breaks, 1)
	assert.Equal(t, "exhaust.edge", said.Miss.Breaks[0].ID)
	assert.InDelta(t, -240, said.Miss.Breaks[0].Margin, 1e-9)
}

func TestRouteAlongAnEdge(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for edge, sign := range map[string]float64{"left": 1, "right": -1} {
		code, out, complaint := call(routeJob, "route", "exhaust", "--edge", edge, "--json", "-")
		require.Zero(t, code, complaint)
		var said struct{ Path [][]float64 }
		require.NoError(t, json.Unmarshal([]byte(out), &said))
		end := said.Path[len(said.Path)-1]
		assert.InDelta(t, sign*875, end[1], 40, edge)
	}
}

func TestRouteFindsBoth(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(routeJob, "route", "both", "--json", "-")
	require.Zero(t, code, complaint)
	var said struct {
		Exhaust, Intake struct{ Path [][]float64 }
	}
	require.NoError(t, json.Unmarshal([]byte(out), &said))
	assert.NotEmpty(t, said.Exhaust.Path)
	assert.NotEmpty(t, said.Intake.Path)
	code, out, _ = call(routeJob, "route", "both", "-")
	require.Zero(t, code)
	assert.Contains(t, out, "the exhaust of the pair that keeps most, which keeps every rule")
	assert.Contains(t, out, "the intake of the pair that keeps most, which keeps every rule")
}

func TestRouteFuelBeginsBelowTheFloor(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	code, out, complaint := call(routeJob, "route", "fuel", "--to", "2000,300,100", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "the shortest fuel line there that keeps every rule")
	code, _, complaint = call(routeJob, "route", "fuel", "--to", "2000,300,-100", "-")
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "would begin above the floor")

	tank := "[[obstruction]]\nname = \"TANK\"\nkind = \"fuel tank\"\nx = [1900, 2400]\ny = [100, 500]\ndrop = [40, 300]\n"
	code, out, complaint = call(routeJob+strings.ReplaceAll(tank, "TANK", "tank"), "route", "fuel", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "There is no [fuel]: the line was taken to begin at tank, with a usual pump.")
	assert.Contains(t, out, "1\t1900\t", "where the tank is nearest to the stub")
	code, _, complaint = call(routeJob+strings.ReplaceAll(tank, "TANK", "tank")+strings.ReplaceAll(tank, "TANK", "other tank"), "route", "fuel", "-")
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "(2 fuel tanks are entered): say --to X,Y,DROP")

	can := routeJob + "[fuel]\nacross = 4.5\npath = [[2000, 300, -200], [2000, 300, 100], [1040, 200, 60]]\n"
	code, out, complaint = call(can, "route", "fuel", "-")
	require.Zero(t, code, complaint)
	assert.Contains(t, out, "1\t2000\t300\t-200\n2\t2000\t300\t0\n")
	assert.Contains(t, out, "The line's first 2 points, above the floor and through it, stay as they are.\n")
}

func TestRouteSaysWhatIsMissing(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	for _, c := range []struct {
		code int
		says string
		args []string
	}{
		{exitFailed, "-:1: there is no [cut], so nobody knows where the stub is", []string{"exhaust", "--edge", "left", "-"}},
		{exitUsage, "route needs which run to find", nil},
		{exitUsage, `"muffler" is no run that can be found`, []string{"muffler", "-"}},
		{exitUsage, "route needs a job file behind intake", []string{"intake", "--edge", "left"}},
		{exitFailed, "there is no [fuel], so nobody knows where the line begins", []string{"fuel", "-"}},
		{exitUsage, "the fuel line begins at a place", []string{"fuel", "--edge", "left", "-"}},
		{exitUsage, "both looks along every edge", []string{"both", "--edge", "left", "-"}},
		{exitUsage, "say where the run is to end", []string{"intake", "-"}},
		{exitUsage, "keep one of them", []string{"intake", "-", "--edge", "left", "--to", "1,2,3"}},
		{exitUsage, `--edge "top": give left, right or rear`, []string{"intake", "-", "--edge", "top"}},
		{exitUsage, `--to "1,2": give three numbers of mm as X,Y,DROP`, []string{"intake", "-", "--to", "1,2"}},
		{exitUsage, `--to "1,2,NaN": give three numbers`, []string{"intake", "-", "--to", "1,2,NaN"}},
		{exitUsage, `--to "1,-99999,3": -99999 must be a length from -20000 to 20000 mm`, []string{"intake", "-", "--to", "1,-99999,3"}},
		{exitUsage, `--to "1,2,3,4": give three numbers`, []string{"intake", "-", "--to", "1,2,3,4"}},
	} {
		code, out, complaint := call(bareJob, append([]string{"route"}, c.args...)...)
		assert.Equal(t, c.code, code, c.args)
		assert.Empty(t, out)
		assert.Contains(t, complaint, c.says)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
}
