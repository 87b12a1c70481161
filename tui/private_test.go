//go:build !windows

package tui

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Whoever may not read the job may read nothing that the program makes of it: neither what lies beside it nor what is kept elsewhere.
func TestNothingIsMoreOpenThanItsJob(t *testing.T) {
	o := options(t)
	require.NoError(t, os.Remove(filepath.Join(o.StateDir, "cautions-read"))) // the program's own
	require.NoError(t, os.WriteFile(o.Path, append([]byte("# by hand\n"), vehicles.Demo().Format()...), 0o600))
	b := started(t, o)
	b.do(b.noteCautions())
	for _, ask := range []desk.Ask{desk.PrintSheet, desk.PrintTemplate, desk.PrintCustomer} {
		b.do(b.ask(ask))
	}
	b.do(b.apply(desk.Change{Tick: "cut centre"}))
	noted := func(text string) {
		job := b.desk.State.Job
		job.Notes = text
		b.do(b.apply(desk.Change{Job: &job}))
	}
	noted("saved")
	b.do(b.ask(desk.Save)) // what the file held before goes beside it
	require.False(t, b.desk.State.Dirty)
	other := filepath.Join(filepath.Dir(o.Path), "other.toml")
	b.do(nameChosen{other, false}.happened(b.Root))
	noted("in the journal")

	found := map[string]bool{}
	for _, root := range []string{filepath.Dir(o.Path), o.StateDir} {
		require.NoError(t, filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
			require.NoError(t, err)
			info, err := e.Info()
			require.NoError(t, err)
			if info.Mode().IsRegular() {
				assert.Zero(t, info.Mode().Perm()&^0o600, "%s: %v", path, info.Mode())
				found[filepath.Base(path)] = true
			}
			return nil
		}))
	}
	for _, name := range []string{"van.toml", "van.toml.before", "other.toml", "van-sheet.pdf", "van-template.pdf", "van-customer.pdf", "cautions-read", journalName(o.Path) + ".toml", journalName(other) + "-1.toml"} {
		assert.True(t, found[name], "%s was looked at: %v", name, found)
	}
}
