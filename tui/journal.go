package tui

import (
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/gofrs/flock"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// journal keeps the unsaved job in a file of the state folder, so that a crash or a power cut loses nothing.
// Every window has a journal of its own, held by a lock; one whose lock is free is work that was left behind.
type journal struct {
	about   string // the job file, "" for none
	path    string
	lock    *flock.Flock
	beside  error                // why it is not one of the files that lie before it, nil where none is in the way
	unsaved atomic.Pointer[work] // nil when all is saved or given up

	scheduled atomic.Bool // a write is going to start
	mine      atomic.Bool // what the file holds is this window's to change: nothing there waits for an answer

	disk    sync.Mutex // one writer at a time; never taken in Update
	written *work      // what the file holds
}

// work is an unsaved job, and what the job file held when it was begun: a file that holds something else by now was
// changed by somebody who had not seen this work.
type work struct {
	job  vehicles.Job
	base vehicles.Base
}

// found is work that was left behind in a journal.
type found struct {
	work
	when   time.Time
	others int   // pieces of work that other windows left behind beside it
	err    error // it can't be read
}

// mostWindows is how many windows may have the same job open.
const mostWindows = 16

// errNoJournal is why unsaved work can't be kept when no journal of those a job may have can be taken.
var errNoJournal = fmt.Errorf("none of its %d journals is free: close other windows on this job", mostWindows)

// errTooLarge is why a job that could not be read again is not kept.
var errTooLarge = fmt.Errorf("the job has grown beyond %d MiB and could not be read again: take the last change back", vehicles.LargestFile>>20)

// openJournal takes the journal of a job file: the newest one left behind by a window that is gone, else a free one.
// others is how many more were left behind.
func openJournal(dir, about string) (best *journal, others int, err error) {
	if err := vehicles.MakeFolder(dir, 0o700); err != nil {
		return nil, 0, err
	}
	var newest time.Time
	free := lockables{dir: dir, about: about}
	for j := range free.all {
		info, err := os.Lstat(j.path)
		if err == nil {
			others++
		}
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
		return nil, 0, free.none()
	}
	best.beside = free.foreign
	return best, max(others-1, 0), nil
}

// openFreeJournal takes a journal of the job file with nothing in it.
func openFreeJournal(dir, about string) (*journal, error) {
	if err := vehicles.MakeFolder(dir, 0o700); err != nil {
		return nil, err
	}
	free := lockables{dir: dir, about: about}
	for j := range free.all {
		if _, err := os.Lstat(j.path); errors.Is(err, fs.ErrNotExist) {
			return j, nil
		}
		j.close()
	}
	return nil, free.none()
}

// lockables are the journals of a job file that no other window holds.
type lockables struct {
	dir, about string
	failed     error // why the last of those could not be locked that nobody holds
	foreign    error // why the first of those was passed over where something else lies
}

// all goes through them, each locked. Where something lies that is no plain file, a link to somewhere else among them, is none of ours: it is neither
// followed nor opened. One that the disk refuses is passed over: the next will do.
func (l *lockables) all(yield func(*journal) bool) {
	for n := 1; n <= mostWindows; n++ {
		path := filepath.Join(l.dir, fmt.Sprintf("%s-%d.toml", journalName(l.about), n))
		lock := lockOf(path)
		if err := cmp.Or(foreignAt(path), foreignAt(lock.Path())); err != nil {
			l.foreign = cmp.Or(l.foreign, err)
			continue
		}
		got, err := taken(lock)
		if err != nil {
			l.failed = err
		}
		if got && !yield(&journal{about: l.about, path: path, lock: lock}) {
			return
		}
	}
}

// foreignAt is why nothing may be written at a path where something lies that is no plain file, nil where nothing does.
func foreignAt(path string) error {
	if err := vehicles.PlainOrNone(path); err != nil {
		return vehicles.NotWritten(path, err)
	}
	return nil
}

// none is why there is no journal.
func (l *lockables) none() error { return cmp.Or(l.failed, l.foreign, errNoJournal) }

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

// look returns the work left behind in the journal, nil for none; the book judges it.
func (j *journal) look(book *rules.Book) *found {
	info, err := os.Lstat(j.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return &found{err: err}
	}
	data, err := vehicles.ReadFile(j.path)
	if err != nil {
		return &found{when: info.ModTime(), err: err}
	}
	job, err := vehicles.ParseJob(data, j.path, book)
	return &found{work: work{job, begunFrom(data)}, when: info.ModTime(), err: unlessWhole(err)}
}

// begunLine is the line of a journal that says what the job file held when the work was begun.
const begunLine = "# begun from "

// begunFrom reads that line. Without one nobody knows.
func begunFrom(data []byte) vehicles.Base {
	for line := range strings.Lines(string(data)) {
		if !strings.HasPrefix(line, "#") {
			break
		}
		if base, is := strings.CutPrefix(line, begunLine); is {
			return vehicles.ParseBase(strings.TrimRight(base, "\r\n"))
		}
	}
	return vehicles.UnknownBase
}

// text is the work as a journal holds it: a job file with lines before it that say what it is.
func (w *work) text(about string) []byte {
	if about == "" {
		about = "a job that has no file yet"
	}
	return fmt.Appendf(nil, "# unsaved work on %q\n%s%s\n%s", about, begunLine, w.base, w.job.Format())
}

// sync brings the file in line with what is unsaved now: it writes it, or takes the file away. It leaves alone what
// was found there until that has been answered.
func (j *journal) sync() error {
	j.disk.Lock()
	defer j.disk.Unlock()
	if !j.mine.Load() {
		return nil
	}
	unsaved := j.unsaved.Load()
	if unsaved == nil {
		j.written = nil
		return vehicles.Remove(j.path)
	}
	if unsaved == j.written {
		return nil
	}
	text := unsaved.text(j.about)
	if len(text) > vehicles.LargestFile {
		return errTooLarge
	}
	err := j.stay()
	if err == nil {
		err = vehicles.WriteOwn(j.path, text, j.mode())
	}
	if err == nil {
		j.written = unsaved
	}
	return err
}

// stay makes the journal's folder again where it has gone, and takes its lock anew: the old one holds nobody off.
func (j *journal) stay() error {
	if stands(j.lock) {
		return nil
	}
	if err := vehicles.MakeFolder(filepath.Dir(j.path), 0o700); err != nil {
		return err
	}
	_ = j.lock.Unlock()
	j.lock = lockOf(j.path)
	got, err := taken(j.lock)
	if err == nil && !got {
		err = errNoJournal
	}
	return err
}

// mode is that of the job file, as the journal holds the same: who may not read the one may not read the other. A job
// without a file is the fitter's alone.
func (j *journal) mode() fs.FileMode {
	const mine = 0o600
	if info, err := os.Stat(j.about); err == nil && j.about != "" {
		return info.Mode().Perm() | mine
	}
	return mine
}

func lockOf(path string) *flock.Flock {
	return flock.New(path+".lock", flock.SetFlag(os.O_CREATE|os.O_RDWR|noFollow), flock.SetPermissions(0o600))
}

// taken takes a lock, if nobody has it, that others who open the same name meet too.
// The error is that there are no locks, or why there is no file to lock.
func taken(lock *flock.Flock) (bool, error) {
	got, err := lock.TryLock()
	if refused := (*fs.PathError)(nil); errors.As(err, &refused) {
		return false, vehicles.NotWritten(lock.Path(), err)
	}
	if err != nil {
		return false, fmt.Errorf("the folder %s has no file locks: let XDG_STATE_HOME name a folder on this machine (%v)", filepath.Dir(lock.Path()), err)
	}
	if got && !stands(lock) {
		_ = lock.Unlock()
		return false, nil
	}
	return got, nil
}

// stands says whether the file of a lock still has its name: a window that closes takes its lock file away, and a lock on a
// file that has no name any more holds nobody off.
func stands(lock *flock.Flock) bool {
	held, err := lock.Stat()
	named, nameless := os.Lstat(lock.Path())
	return err == nil && nameless == nil && os.SameFile(held, named)
}

// close lets go of the journal; its file stays when there is one.
func (j *journal) close() {
	if j == nil {
		return
	}
	j.disk.Lock() // a write on its way has the lock file
	defer j.disk.Unlock()
	// First the name: whoever opens it from here on makes a lock file of his own. One that is left over, as where open
	// files can't be removed, does no harm.
	_ = os.Remove(j.lock.Path())
	_ = j.lock.Unlock()
}
