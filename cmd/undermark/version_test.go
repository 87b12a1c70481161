package main

import (
	"encoding/json"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestVersionIsOfTheBuild(t *testing.T) {
	devel := debug.Module{Version: "(devel)"}
	revision := []debug.BuildSetting{{Key: "vcs.revision", Value: "0f1e"}, {Key: "vcs.modified", Value: "true"}}
	for name, c := range map[string]struct {
		of   build
		info debug.BuildInfo
		want build
	}{
		"released":             {build{Version: "1.2.0", Commit: "abcd"}, debug.BuildInfo{GoVersion: "go1.26", Main: devel, Settings: revision}, build{Version: "1.2.0", Commit: "abcd", Go: "go1.26"}},
		"fetched as a module":  {build{}, debug.BuildInfo{GoVersion: "go1.26", Main: debug.Module{Version: "v1.1.0"}}, build{Version: "1.1.0", Go: "go1.26"}},
		"built in a work tree": {build{}, debug.BuildInfo{GoVersion: "go1.26", Main: devel, Settings: revision}, build{Commit: "0f1e", Changed: true, Go: "go1.26"}},
	} {
		got := c.of
		got.read(&c.info)
		assert.Equal(t, c.want, got, name)
	}
}

func TestVersionIsToldToPeopleAndPrograms(t *testing.T) {
	code, out, complaint := call("", "version")
	assert.Equal(t, 0, code, complaint)
	assert.Regexp(t, `^undermark \S+\n(commit [0-9a-f]+(, with changes)?\n)?go1\.\S+\njob file format 1\n$`, out)

	code, out, complaint = call("", "version", "--json")
	require.Equal(t, 0, code, complaint)
	var b build
	require.NoError(t, json.Unmarshal([]byte(out), &b))
	assert.Equal(t, thisBuild(), b)
	assert.Equal(t, vehicles.FormatVersion, b.Format)

	code, _, complaint = call("", "version", "1")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "version takes nothing behind it")
}
