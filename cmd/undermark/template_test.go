package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The sample's template fits a page of either paper a face; poppler and qpdf, independent readers, take the file.
func TestTheTemplateIsAFileThatOthersRead(t *testing.T) {
	job, dir := demoFile(t), t.TempDir()
	for paper, size := range map[string]string{"a4": "595.28 x 841.89 pts (A4)", "letter": "612 x 792 pts (letter)"} {
		out := filepath.Join(dir, paper+".pdf")
		code, _, complaint := call("", "template", job, "-o", out, "--paper", paper)
		require.Zero(t, code, complaint)
		again, err := os.ReadFile(out)
		require.NoError(t, err)
		code, _, _ = call("", "template", job, "-o", out, "--paper", paper)
		require.Zero(t, code)
		data, err := os.ReadFile(out)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(again, data), "the same job is the same bytes")
		if _, err := exec.LookPath("qpdf"); err == nil {
			told, err := exec.Command("qpdf", "--check", out).CombinedOutput()
			assert.NoError(t, err, string(told))
		}
		if _, err := exec.LookPath("qpdf"); err == nil {
			told, err := exec.Command("qpdf", "--json", out).CombinedOutput()
			assert.NoError(t, err, string(told))
			assert.Regexp(t, `"/Type": "/Catalog",\s+"/ViewerPreferences": \{\s+"/PrintScaling": "/None"`, string(told), "it asks to be printed unscaled")
		}
		if _, err := exec.LookPath("pdfinfo"); err == nil {
			told, err := exec.Command("pdfinfo", out).CombinedOutput()
			require.NoError(t, err, string(told))
			assert.Contains(t, string(told), size)
			assert.Regexp(t, `Pages: +2\n`, string(told))
			words, err := exec.Command("pdftotext", out, "-").CombinedOutput()
			require.NoError(t, err)
			for _, said := range []string{"THIS FACE UP", "UNDER THE VAN", "100 mm", "van's front", "warm air", "cut, 127 mm", "bolt hole 4, 7 mm", "The place is foul"} {
				assert.Contains(t, string(words), said)
			}
		}
	}
}

func TestATemplateThatCannotBeDrawnSaysWhy(t *testing.T) {
	job, dir := demoFile(t), t.TempDir()
	out := filepath.Join(dir, "t.pdf")
	for want, args := range map[string][]string{
		`--paper "a3": say a4 or letter`:            {job, "-o", out, "--paper", "a3"},
		`-o "": name a file that ends in .pdf`:      {job},
		`-o "t.svg": name a file that ends in .pdf`: {job, "-o", "t.svg"},
		"template needs one job file":               {"-o", out},
	} {
		code, _, complaint := call("", append([]string{"template"}, args...)...)
		assert.Equal(t, exitUsage, code, complaint)
		assert.Contains(t, complaint, want)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	bare := filepath.Join(dir, "bare.toml")
	require.NoError(t, os.WriteFile(bare, []byte("format = 1\njob = { ref = \"B\" }\n[floor]\nfrom = 0\nlength = 3000\nwidth = 1700\nthickness = 20\nground = 400\n"), 0o600))
	code, _, complaint := call("", "template", bare, "-o", out)
	assert.Equal(t, exitFailed, code)
	assert.Contains(t, complaint, "there is no [cut] to draw: place it first")
	assert.NoFileExists(t, out)
}
