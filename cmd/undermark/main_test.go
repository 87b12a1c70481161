package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// program is the built program; TestMain makes it, with the race detector when the tests have it.
var program string

func TestMain(m *testing.M) {
	os.Exit(func() int {
		if os.Getenv(bareEnv) != "" {
			return bare()
		}
		if os.Getenv(tamperEnv) != "" {
			return tamper(os.Args[1:])
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
		_ = os.Setenv("GORACE", "exitcode=0 log_path="+races) // a screen would swallow what is reported; fails for no name
		failed := m.Run()
		for _, race := range racesIn(races) {
			fmt.Fprintf(os.Stderr, "the program raced:\n%s\n", race)
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

// racesIn are the races that were written down, without one of the terminal library's own: at the end it closes what it waits for
// keys with while its reader still looks there.
func racesIn(path string) (found []string) {
	files, _ := filepath.Glob(path + ".*") // the pattern is well formed
	for _, file := range files {
		text, _ := os.ReadFile(file)
		for _, race := range strings.Split(string(text), "==================\n") {
			if strings.Contains(race, "DATA RACE") && !strings.Contains(race, "cancelreader.(*epollCancelReader).Close()") {
				found = append(found, race)
			}
		}
	}
	return found
}
