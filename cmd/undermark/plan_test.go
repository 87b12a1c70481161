package main

import (
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// demoFile is the sample in a file.
func demoFile(t *testing.T) string {
	file := filepath.Join(t.TempDir(), "demo.toml")
	require.NoError(t, os.WriteFile(file, vehicles.Demo().Format(), 0o600))
	return file
}

func TestAPlanIsDrawnInEachFormat(t *testing.T) {
	notRaced(t)
	job := demoFile(t)
	for _, args := range [][]string{{}, {"--from", "above"}, {"--around", "300"}} {
		dir := t.TempDir()
		for _, name := range []string{"plan.svg", "plan.pdf", "plan.PNG"} {
			code, out, complaint := call("", append([]string{"plan", job, "-o", filepath.Join(dir, name)}, args...)...)
			assert.Zero(t, code, complaint)
			assert.Empty(t, out)
		}
		words := svgWords(t, filepath.Join(dir, "plan.svg"))
		assert.Contains(t, words, "TL-07")
		assert.Contains(t, words, "nose >")
		f, err := os.Open(filepath.Join(dir, "plan.PNG"))
		require.NoError(t, err)
		picture, err := png.Decode(f)
		require.NoError(t, err)
		assert.Equal(t, 297*8, picture.Bounds().Dx())
		require.NoError(t, f.Close())
	}
	assert.NotEqual(t, svgWords(t, drawn(t, job)), svgWords(t, drawn(t, job, "--around", "150")), "other things are seen")
}

// drawn is a job's plan as SVG.
func drawn(t *testing.T, job string, args ...string) string {
	file := filepath.Join(t.TempDir(), "plan.svg")
	code, _, complaint := call("", append([]string{"plan", job, "-o", file}, args...)...)
	require.Zero(t, code, complaint)
	return file
}

// svgWords reads an SVG file with the standard library's XML reader: all that is written in it.
func svgWords(t *testing.T, file string) string {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	var words strings.Builder
	for d := xml.NewDecoder(strings.NewReader(string(data))); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return words.String()
		}
		require.NoError(t, err)
		if text, is := token.(xml.CharData); is {
			words.Write(text)
		}
	}
}

func TestEverySampleJobIsDrawn(t *testing.T) {
	notRaced(t)
	for _, job := range sampleJobs(t) {
		if expectedOf(t, job).Check == nil {
			continue
		}
		assert.Contains(t, svgWords(t, drawn(t, job)), "seen from below", job)
	}
}

// Names of others become harmless, and what XML can't have is no part of a file.
func TestAHostileJobMakesAWholePlan(t *testing.T) {
	job := filepath.Join(t.TempDir(), "job.toml")
	require.NoError(t, os.WriteFile(job, []byte(hostileJob(t)), 0o600))
	words := svgWords(t, drawn(t, job))
	assert.NotContains(t, words, "\u202e")
	assert.NotContains(t, words, "\x1b")
}

func TestWhatAPlanCanNotBe(t *testing.T) {
	job := demoFile(t)
	out := filepath.Join(t.TempDir(), "plan.svg")
	for want, args := range map[string][]string{
		"ends in .svg, .pdf or .png":      {job},
		"plan.txt":                        {job, "-o", "plan.txt"},
		"the van is seen from below":      {job, "-o", out, "--from", "beside"},
		"--around -3: give mm":            {job, "-o", out, "--around", "-3"},
		"plan needs one job file":         {job, job, "-o", out},
		"plan needs one job file, or - f": {"-o", out},
	} {
		code, _, complaint := call("", append([]string{"plan"}, args...)...)
		assert.Equal(t, exitUsage, code, complaint)
		assert.Contains(t, complaint, want)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	bare := filepath.Join(t.TempDir(), "bare.toml")
	require.NoError(t, os.WriteFile(bare, []byte("format = 1\njob = { ref = \"B\" }\n[floor]\nfrom = 0\nlength = 3000\nwidth = 1700\nthickness = 20\nground = 400\n"), 0o600))
	code, _, complaint := call("", "plan", bare, "-o", out, "--around", "300")
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "bare.toml")
	assert.Contains(t, complaint, "there is no [cut] to draw round")
	assert.NoFileExists(t, out, "nothing is written of a job that can't be drawn")
}

// Independent readers take the files: librsvg, poppler and qpdf, where they are installed.
func TestOtherProgramsReadThePlans(t *testing.T) {
	job, dir := demoFile(t), t.TempDir()
	readers := map[string][]string{
		"plan.svg": {"rsvg-convert", "-o", filepath.Join(dir, "out.png"), filepath.Join(dir, "plan.svg")},
		"plan.pdf": {"qpdf", "--check", filepath.Join(dir, "plan.pdf")},
	}
	for name, reader := range readers {
		if _, err := exec.LookPath(reader[0]); err != nil {
			t.Skip(reader[0] + " is not installed")
		}
		code, _, complaint := call("", "plan", job, "-o", filepath.Join(dir, name))
		require.Zero(t, code, complaint)
		told, err := exec.Command(reader[0], reader[1:]...).CombinedOutput()
		assert.NoError(t, err, "%s: %s", name, told)
	}
}

// A run laid out straight: its length, the fall of each leg, what it passes under and what it comes too near to, in each format. By hand the
// sample's exhaust falls 12 mm in 350 and 3 in 350 behind its first leg: 34 and 9 mm in a metre.
func TestARunIsDrawnAlong(t *testing.T) {
	notRaced(t)
	job := demoFile(t)
	for _, name := range []string{"plan.svg", "plan.pdf", "plan.png"} {
		file := filepath.Join(t.TempDir(), name)
		code, out, complaint := call("", "plan", job, "--from", "along the exhaust", "-o", file)
		assert.Zero(t, code, complaint)
		assert.Empty(t, out)
		assert.FileExists(t, file)
	}
	words := svgWords(t, drawn(t, job, "--from", "along the exhaust"))
	for _, want := range []string{"TL-07, exhaust: 872.3 mm long", "down 34", "down 9", "stub", "outlet", "chassis rail, left 26.8 to spare", "middle crossmember 14.8 short", "muffler 0.5°", "ground lower by 239.9 mm"} {
		assert.Contains(t, words, want)
	}
	assert.Contains(t, svgWords(t, drawn(t, job, "--from", "along the fuel line")), "TL-07, fuel line: ")
	assert.Contains(t, svgWords(t, drawn(t, job, "--from", "along the intake")), "mouth")

	out := filepath.Join(t.TempDir(), "plan.svg")
	code, _, complaint := call("", "plan", job, "--from", "along the exhaust", "--around", "100", "-o", out)
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "a run is shown whole")
	code, _, complaint = call("", "plan", job, "--from", "along the gutter", "-o", out)
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, complaint, "along the fuel line", "what there is, is named")
	bare := filepath.Join(t.TempDir(), "bare.toml")
	require.NoError(t, os.WriteFile(bare, vehicles.Demo().WithRun(vehicles.IntakeRun, nil).Format(), 0o600))
	code, _, complaint = call("", "plan", bare, "--from", "along the intake", "-o", out)
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "there is no intake to draw along")
	assert.NoFileExists(t, out)
}
