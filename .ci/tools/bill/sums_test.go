package main

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	cdx "github.com/CycloneDX/cyclonedx-go"
)

// Whoever has the bill can tell whether a program, and each module in it, is the one that the bill is of.
func TestBillHoldsTheChecksumOfTheProgramAndOfEachModule(t *testing.T) {
	t.Chdir("../../..")
	dir := t.TempDir()
	program, file := filepath.Join(dir, "program"), filepath.Join(dir, "bill.json")
	if out, err := exec.Command("go", "build", "-o", program, "./cmd/undermark").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if err := run("./cmd/undermark", "1.0.0", "2026-01-02T03:04:05Z", file, filepath.Join(dir, "licences"), program); err != nil {
		t.Fatal(err)
	}
	var bill cdx.BOM
	if err := json.Unmarshal(contents(t, file), &bill); err != nil {
		t.Fatal(err)
	}
	hashes := bill.Metadata.Component.Hashes
	if want := fmt.Sprintf("%x", sha256.Sum256(contents(t, program))); hashes == nil || (*hashes)[0].Value != want {
		t.Errorf("the program's: %v, want %s", hashes, want)
	}
	sums := string(contents(t, "go.sum"))
	for _, part := range *bill.Components {
		if part.Name == standard {
			continue
		}
		if part.Properties == nil {
			t.Errorf("%s has none", part.Name)
		} else if line := part.Name + " " + part.Version + " " + (*part.Properties)[0].Value + "\n"; !strings.Contains(sums, line) {
			t.Errorf("go.sum has no line %q", line)
		}
	}
}

func contents(t *testing.T, file string) []byte {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
