package vehicles

import (
	"context"
	"errors"
	"time"
)

// A save looks at what the file holds and then puts another in its place. Between the two nobody else who saves there
// may come in, or one of both would write over what the other wrote without having seen it.

// savesWait is how long a save waits for another in the same folder: far longer than a disk takes to hold a job file.
const savesWait = 5 * time.Second

// lockSaves keeps others who save in the folder of a file out until unlock is called; everybody who saves through this
// package takes the same lock. A file system that has no locks is written to without one.
func lockSaves(target string) (unlock func(), err error) {
	lock, err := savesLock(target)
	if err != nil {
		return nil, err
	}
	ctx, cancel := context.WithTimeout(context.Background(), savesWait)
	defer cancel()
	_, err = lock.TryLockContext(ctx, 2*time.Millisecond)
	if errors.Is(err, context.DeadlineExceeded) {
		return nil, errBusy
	}
	return func() { _ = lock.Unlock() }, nil
}
