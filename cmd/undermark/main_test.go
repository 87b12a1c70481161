package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// program is the built program; TestMain makes it, with the race detector when the tests have it.
var program string

func TestMain(m *testing.M) {
	os.Exit(func() int {
		if os.Getenv(bareEnv) != "" {
			return bare()
		}
		dir, err := os.MkdirTemp("", "undermark")
		if err != nil {
			panic(err)
		}
		defer os.RemoveAll(dir)
		program = filepath.Join(dir, "undermark.exe")
		build := []string{"build", "-o", program}
		if raced {
			build = append(build, "-race")
		}
		if out, err := exec.Command("go", append(build, ".")...).CombinedOutput(); err != nil {
			panic(string(out))
		}
		races := filepath.Join(dir, "race")
		_ = os.Setenv("GORACE", "log_path="+races) // what a screen would swallow; fails for no name
		failed := m.Run()
		if found, _ := filepath.Glob(races + ".*"); len(found) > 0 { // the pattern is well formed
			text, _ := os.ReadFile(found[0])
			fmt.Fprintf(os.Stderr, "the program raced:\n%s\n", text)
			failed = 1
		}
		return failed
	}())
}

// notRaced leaves a test out that the race detector would make too slow, and that has nothing for it to find.
func notRaced(t *testing.T) {
	t.Helper()
	if raced {
		t.Skip("not with the race detector")
	}
}
