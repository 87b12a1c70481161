package tui

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"time"

	"github.com/gofrs/flock"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// journal keeps the unsaved job in a file of the state folder, so that a crash or a power cut loses nothing.
// Every window has a journal of its own, held by a lock; one whose lock is free is work that was left behind.
type journal struct {
	about   string // the job file, "" for none
	path    string
	lock    *flock.Flock
	unsaved atomic.Pointer[vehicles.Job] // nil when all is saved or given up

	scheduled atomic.Bool // a write is going to start
	mine      atomic.Bool // what the file holds is this window's to change: nothing there waits for an answer

	disk    sync.Mutex    // one writer at a time; never taken in Update
	written *vehicles.Job // what the file holds
}

// found is work that was left behind in a journal.
type found struct {
	job  vehicles.Job
	when time.Time
	err  error // it can't be read
}

// mostWindows is how many windows may have the same job open.
const mostWindows = 16

var errTooManyWindows = errors.New("this job is open in too many windows: unsaved work is not kept safe in this one")

// openJournal takes the journal of a job file: the newest one left behind by a window that is gone, else a free one.
func openJournal(dir, about string) (*journal, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, err
	}
	var best *journal
	var newest time.Time
	for j := range lockable(dir, about) {
		info, err := os.Stat(j.path)
		switch {
		case err == nil && info.ModTime().After(newest):
			best.close()
			best, newest = j, info.ModTime()
		case best == nil:
			best = j
		default:
			j.close()
		}
	}
	if best == nil {
		return nil, errTooManyWindows
	}
	return best, nil
}

// openFreeJournal takes a journal of the job file with nothing in it.
func openFreeJournal(dir, about string) (*journal, error) {
	for j := range lockable(dir, about) {
		if _, err := os.Stat(j.path); errors.Is(err, fs.ErrNotExist) {
			return j, nil
		}
		j.close()
	}
	return nil, errTooManyWindows
}

// lockable goes through the journals of a job file that no other window holds, each locked.
func lockable(dir, about string) iter.Seq[*journal] {
	return func(yield func(*journal) bool) {
		for n := 1; n <= mostWindows; n++ {
			path := filepath.Join(dir, fmt.Sprintf("%s-%d.toml", journalName(about), n))
			lock := flock.New(path + ".lock")
			if got, err := lock.TryLock(); err != nil || !got {
				continue
			}
			if !yield(&journal{about: about, path: path, lock: lock}) {
				return
			}
		}
	}
}

// journalName is the same for the same job file, however it is spelled, and no other.
func journalName(about string) string {
	if about == "" {
		return "unnamed"
	}
	full, err := filepath.Abs(about)
	if err != nil {
		full = about
	}
	if real, err := filepath.EvalSymlinks(full); err == nil {
		full = real
	}
	return fmt.Sprintf("%x", sha256.Sum256([]byte(full)))[:20]
}

// look returns the work left behind in the journal, nil for none.
func (j *journal) look() *found {
	info, err := os.Stat(j.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return &found{err: err}
	}
	data, err := os.ReadFile(j.path)
	if err != nil {
		return &found{when: info.ModTime(), err: err}
	}
	job, err := vehicles.ParseJob(data, j.path, rules.CheckRules)
	return &found{job, info.ModTime(), unlessWhole(err)}
}

// sync brings the file in line with what is unsaved now: it writes it, or takes the file away. It leaves alone what
// was found there until that has been answered.
func (j *journal) sync() error {
	j.disk.Lock()
	defer j.disk.Unlock()
	if !j.mine.Load() {
		return nil
	}
	job := j.unsaved.Load()
	if job == nil {
		j.written = nil
		if err := os.Remove(j.path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	}
	if job == j.written {
		return nil
	}
	about := j.about
	if about == "" {
		about = "a job that has no file yet"
	}
	err := desk.WriteFile(j.path, append([]byte(fmt.Sprintf("# Unsaved work on %q\n", about)), job.Format()...))
	if err == nil {
		j.written = job
	}
	return err
}

// close lets go of the journal; its file stays when there is one.
func (j *journal) close() {
	if j == nil {
		return
	}
	// Other windows may take the lock from here on; a lock file that is left over does no harm.
	_ = j.lock.Unlock()
	_ = os.Remove(j.lock.Path())
}
