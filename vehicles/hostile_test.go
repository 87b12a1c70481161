//go:build !windows

package vehicles

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
)

// Of windows that save at the same instant one gets through and the others are told: nobody's work is written over unseen.
func TestOfSavesAtTheSameInstantOneGetsThrough(t *testing.T) {
	const windows, rounds = 4, 50
	path := onDisk(t, string(NewJob("TL-07").Format()))
	for round := range rounds {
		var documents [windows]Document
		for w := range documents {
			documents[w] = load(t, path)
		}
		var start, done sync.WaitGroup
		var errs [windows]error
		start.Add(1)
		for w := range documents {
			done.Add(1)
			go func() {
				defer done.Done()
				job := documents[w].Job
				job.Notes = fmt.Sprintf("round %d, window %d", round, w)
				start.Wait()
				_, _, errs[w] = documents[w].Save(job)
			}()
		}
		start.Done()
		done.Wait()
		through := 0
		for w, err := range errs {
			if err == nil {
				through++
				assert.Equal(t, fmt.Sprintf("round %d, window %d", round, w), load(t, path).Job.Notes)
				continue
			}
			require.ErrorIs(t, err, ErrChangedOnDisk)
		}
		require.Equal(t, 1, through, "round %d", round)
	}
}

func TestASaveDoesNotWaitForeverForAnother(t *testing.T) {
	path := onDisk(t, head)
	d := load(t, path)
	unlock, err := lockSaves(path)
	require.NoError(t, err)
	saved := make(chan error)
	go func() { _, _, err := d.Save(d.Job); saved <- err }()
	time.Sleep(20 * time.Millisecond)
	assert.Equal(t, head, content(t, path), "it waits")
	unlock()
	assert.NoError(t, <-saved)
}

// within runs something that may wait for ever, and fails when it does.
func within(t *testing.T, what string, do func() error) error {
	done := make(chan error, 1)
	go func() { done <- do() }()
	select {
	case err := <-done:
		return err
	case <-time.After(5 * time.Second):
		require.Fail(t, "it waits for ever: "+what)
		return nil
	}
}

func TestAPipeIsRefusedAndNotWaitedFor(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "van.toml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	for what, do := range map[string]func() error{
		"load":    func() error { _, err := Load(pipe); return err },
		"save":    func() error { _, _, err := SaveAs(pipe, NewJob("TL-07")); return err },
		"write":   func() error { return WriteFile(pipe, []byte("x")) },
		"journal": func() error { return WriteOwn(pipe, []byte("x"), 0o600) },
	} {
		err := within(t, what, do)
		require.Error(t, err, what)
		assert.Contains(t, err.Error(), pipe+": ", what)
		assert.NotContains(t, err.Error(), "\n", what)
	}
	_, err := Load(pipe)
	assert.Equal(t, pipe+": can't be read: it is no plain file: copy what comes from it into a file first", err.Error())
}

func TestAPipeBesideTheJobIsNotWaitedFor(t *testing.T) {
	path := onDisk(t, commented)
	require.NoError(t, syscall.Mkfifo(path+".before", 0o600))
	d := load(t, path)
	require.NoError(t, within(t, "save", func() error {
		_, report, err := d.Save(d.Job)
		assert.Equal(t, path+".before-2", report.Before)
		return err
	}))
}

func TestAFileOfTheProgramsOwnIsNeverWrittenThroughALink(t *testing.T) {
	dir := t.TempDir()
	theirs := filepath.Join(dir, "theirs")
	require.NoError(t, os.WriteFile(theirs, []byte("precious"), 0o600))
	link := filepath.Join(dir, "link")
	require.NoError(t, os.Symlink(theirs, link))
	require.ErrorContains(t, WriteOwn(link, []byte("x"), 0o600), "no plain file")
	assert.Equal(t, "precious", content(t, theirs))

	nowhere := filepath.Join(dir, "nowhere")
	require.NoError(t, os.Symlink(filepath.Join(dir, "made"), nowhere))
	require.Error(t, WriteOwn(nowhere, []byte("x"), 0o600))
	_, err := os.Lstat(filepath.Join(dir, "made"))
	assert.ErrorIs(t, err, fs.ErrNotExist)
}

func TestAFileOfTheProgramsOwnHasJustTheModeItIsGiven(t *testing.T) {
	path := filepath.Join(t.TempDir(), "own")
	for _, mode := range []fs.FileMode{0o644, 0o600, 0o666, 0o640} {
		require.NoError(t, WriteOwn(path, []byte(mode.String()), mode))
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, mode, info.Mode().Perm())
		assert.Equal(t, mode.String(), content(t, path))
	}
}

// What is refused when it is read is not written either: its readings contradict each other.
func TestAJobThatWouldBeRefusedIsNotSaved(t *testing.T) {
	path := onDisk(t, head)
	d := load(t, path)
	one, two := survey.Reading{Text: "500", Length: 500, Number: true}, survey.Reading{Text: "400", Length: 400, Number: true}
	job := d.Job
	job.Obstructions = job.Obstructions.Insert(0, Obstruction{
		Name: "rib", Kind: "floor rib", Measured: true, Place: Place{X: Pair{one, two}, Y: Pair{one, two}},
	})
	_, faults := Reduce(job)
	require.NotEmpty(t, faults)
	_, _, err := d.Save(job)
	require.ErrorContains(t, err, "not saved, as it would be refused when it is read again: ")
	assert.False(t, errors.Is(err, ErrChangedOnDisk))
	assert.Equal(t, head, content(t, path))
}

func TestABaseReadsBack(t *testing.T) {
	for _, b := range []Base{{}, baseOf([]byte("")), baseOf([]byte("x"))} {
		assert.Equal(t, b, ParseBase(b.String()))
	}
	for _, text := range []string{"", "sha256", "sha256 00", "sha256 zz", "nothing", baseOf(nil).String() + " "} {
		assert.Equal(t, UnknownBase, ParseBase(text), text)
	}
	assert.NotEqual(t, Base{}, UnknownBase)
	assert.NotEqual(t, UnknownBase, baseOf([]byte("")))
}
