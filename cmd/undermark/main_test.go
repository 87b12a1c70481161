package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// program is the built program; TestMain makes it.
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
		if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
			panic(string(out))
		}
		return m.Run()
	}())
}
