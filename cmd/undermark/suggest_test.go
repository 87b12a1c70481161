package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSuggestTellsTheYawOnlyWhenAsked(t *testing.T) {
	job := filepath.Join(cases, "09-things-above.toml")
	places := func(args ...string) (list []map[string]any) {
		code, out, complaint := call("", append([]string{"suggest", "--json", job}, args...)...)
		require.Zero(t, code, complaint)
		var said struct{ Places []map[string]any }
		require.NoError(t, json.Unmarshal([]byte(out), &said))
		require.NotEmpty(t, said.Places)
		return said.Places
	}
	for _, p := range places() {
		assert.NotContains(t, p, "yaw")
	}
	for _, p := range append(places("--yaw"), places("--yaw", "--near", "1200,100")...) {
		yaw := p["yaw"].(float64)
		assert.True(t, yaw > -180 && yaw <= 180, "%v", yaw)
	}
	assert.LessOrEqual(t, places("--yaw")[0]["margin"].(float64), places()[0]["margin"].(float64)+0.1, "a heater takes no less room than its cut")

	code, out, _ := call("", "suggest", "--yaw", job)
	assert.Zero(t, code)
	assert.Contains(t, out, "yaw")
	assert.Contains(t, out, "°")
	code, out, _ = call("", "suggest", job)
	assert.Zero(t, code)
	assert.NotContains(t, out, "yaw")
}

func TestSuggestYawNeedsAHeater(t *testing.T) {
	code, out, complaint := call(bareJob, "suggest", "--yaw", "-")
	assert.Equal(t, 1, code)
	assert.Empty(t, out)
	assert.Equal(t, "-:1: there is no [heater] to turn: enter one, or leave --yaw out\n", complaint)
	assert.Equal(t, 1, strings.Count(complaint, "\n"))
	code, _, _ = call(bareJob, "suggest", "-")
	assert.Zero(t, code)
}

// However many turns a job's yaw has, every command says the same of it as of what points the same way.
func TestCommandsSayTheSameOfAYawHoweverItIsWritten(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(cases, "24-everything.toml"))
	require.NoError(t, err)
	turned := func(yaw string) string {
		job := regexp.MustCompile(`(?m)^yaw = .*$`).ReplaceAllString(string(text), "yaw = "+yaw)
		require.NotEqual(t, string(text), job)
		return job
	}
	for _, args := range [][]string{{"check"}, {"check", "--json"}, {"marks"}, {"marks", "--json"}, {"suggest", "--yaw"}} {
		args = append(args, "-")
		code, want, _ := call(turned("90"), args...)
		for _, yaw := range []string{"-270", "450"} {
			got, out, _ := call(turned(yaw), args...)
			assert.Equal(t, code, got, args)
			assert.Equal(t, want, out, args)
		}
	}
}

func TestTablesNameTheDatum(t *testing.T) {
	job := filepath.Join(cases, "32-datum-is-a-step.toml")
	for _, command := range []string{"marks", "suggest"} {
		code, out, complaint := call("", command, job)
		require.Zero(t, code, complaint)
		assert.Contains(t, out, "step of the sliding door")
		assert.NotContains(t, out, "bumper")
	}
	_, out, _ := call("", "marks", "--json", job)
	assert.Contains(t, out, `"bumper"`, "the keys stay")
}
