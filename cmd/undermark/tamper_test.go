//go:build linux && amd64

package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// tamperEnv has the test's own binary run a program and count what it asks its system for upon files (ptrace(2)), as ROOT, the folder whose files count, LOG, where each
// such call is written down, N, which of them is answered in the system's stead, 0 for none, and with what: the number of an error, or "kill" for an end just before
// it; parted by |. strace can't do that: it counts each thread's calls by themselves, and a Go program's calls are made now by one, now by another.
const tamperEnv = "UNDERMARK_TESTS_TAMPER"

// tampering is a program that is run so.
type tampering struct {
	root, log string
	at        int
	with      string
	main      int // the program's process

	inside map[int]bool       // threads that are within a call
	lied   map[int]unix.Errno // what their call will have come to
	count  int                // calls so far
}

// tamper runs a program as tamperEnv says and returns its exit code.
func tamper(args []string) int {
	runtime.LockOSThread() // whoever traces is a thread
	said := strings.Split(os.Getenv(tamperEnv), "|")
	at, err := strconv.Atoi(said[2])
	if err != nil {
		panic(err)
	}
	p := &tampering{root: said[0], log: said[1], at: at, with: said[3], inside: map[int]bool{}, lied: map[int]unix.Errno{}}
	_ = os.Unsetenv(tamperEnv)
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	cmd.SysProcAttr = &unix.SysProcAttr{Ptrace: true}
	if err := cmd.Start(); err != nil {
		panic(err)
	}
	p.main = cmd.Process.Pid
	return p.follow()
}

// follow lets the program go on from stop to stop, until it ends.
func (p *tampering) follow() int {
	var status unix.WaitStatus
	if _, err := unix.Wait4(p.main, &status, unix.WALL, nil); err != nil {
		panic(err)
	}
	const options = unix.PTRACE_O_TRACESYSGOOD | unix.PTRACE_O_TRACECLONE | unix.PTRACE_O_EXITKILL
	if err := unix.PtraceSetOptions(p.main, options); err != nil {
		panic(err)
	}
	_ = unix.PtraceSyscall(p.main, 0)
	for {
		thread, err := unix.Wait4(-1, &status, unix.WALL, nil)
		switch {
		case errors.Is(err, unix.EINTR):
			continue
		case err != nil:
			return 1
		case status.Exited() && thread == p.main:
			return status.ExitStatus()
		case status.Signaled() && thread == p.main:
			return 128 + int(status.Signal())
		case !status.Stopped():
			continue
		}
		pass := 0
		switch signal := status.StopSignal(); {
		case signal == unix.SIGTRAP|0x80:
			p.inside[thread] = !p.inside[thread]
			p.stopped(thread)
		case signal == unix.SIGTRAP, signal == unix.SIGSTOP: // a thread was made, or begins
		default:
			pass = int(signal)
		}
		_ = unix.PtraceSyscall(thread, pass) // it may be gone
	}
}

// stopped is a thread that is about to make a call, or has made one.
func (p *tampering) stopped(thread int) {
	var regs unix.PtraceRegs
	if unix.PtraceGetRegs(thread, &regs) != nil {
		return
	}
	if !p.inside[thread] {
		if errno, lied := p.lied[thread]; lied {
			regs.Rax = uint64(-int64(errno))
			_ = unix.PtraceSetRegs(thread, &regs)
			delete(p.lied, thread)
		}
		return
	}
	name, path := p.call(thread, &regs)
	if name == "" || !strings.HasPrefix(path, p.root+"/") {
		return
	}
	p.count++
	f, err := os.OpenFile(p.log, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		panic(err)
	}
	fmt.Fprintln(f, p.count, name, path)
	_ = f.Close()
	switch {
	case p.count != p.at:
	case p.with == "kill":
		_ = unix.Kill(p.main, unix.SIGKILL)
	default:
		n, _ := strconv.Atoi(p.with)
		regs.Orig_rax = ^uint64(0) // no call at all
		_ = unix.PtraceSetRegs(thread, &regs)
		p.lied[thread] = unix.Errno(n)
	}
}

// call is what a thread asks for and upon which file, "" where it changes none.
func (p *tampering) call(thread int, r *unix.PtraceRegs) (name, path string) {
	switch r.Orig_rax {
	case unix.SYS_OPENAT:
		if r.Rdx&(unix.O_WRONLY|unix.O_RDWR|unix.O_CREAT) == 0 {
			return "", ""
		}
		return "open", p.text(thread, r.Rsi)
	case unix.SYS_MKDIRAT:
		return "mkdir", p.text(thread, r.Rsi)
	case unix.SYS_RENAMEAT, unix.SYS_RENAMEAT2:
		return "rename", p.text(thread, r.R10)
	case unix.SYS_UNLINKAT:
		return "unlink", p.text(thread, r.Rsi)
	case unix.SYS_WRITE, unix.SYS_PWRITE64, unix.SYS_FSYNC, unix.SYS_FDATASYNC:
		path, _ = os.Readlink(fmt.Sprintf("/proc/%d/fd/%d", p.main, r.Rdi))
		return map[bool]string{true: "write", false: "fsync"}[r.Orig_rax == unix.SYS_WRITE || r.Orig_rax == unix.SYS_PWRITE64], path
	}
	return "", ""
}

// text is the text at a place of a thread's memory.
func (p *tampering) text(thread int, at uint64) string {
	memory, err := os.Open(fmt.Sprintf("/proc/%d/mem", thread))
	if err != nil {
		return ""
	}
	defer memory.Close()
	b := make([]byte, unix.PathMax)
	n, _ := memory.ReadAt(b, int64(at)) // as far as there is memory
	text, _, _ := bytes.Cut(b[:n], []byte{0})
	return string(text)
}

// tampered is what runs a program so that its call of that number upon files below root comes to something else; the calls are written down in log.
func tampered(t *testing.T, root, log string, at int, with string) (through []string) {
	notRaced(t)
	self, err := os.Executable()
	require.NoError(t, err)
	env, err := exec.LookPath("env")
	require.NoError(t, err)
	return []string{env, fmt.Sprintf("%s=%s|%s|%d|%s", tamperEnv, root, log, at, cmp.Or(with, "0")), self}
}

// fileCall is one call upon a file.
type fileCall struct{ name, path string }

// fileCalls are the calls that were written down.
func fileCalls(t *testing.T, log string) (all []fileCall) {
	text, err := os.ReadFile(log)
	require.NoError(t, err)
	for line := range strings.Lines(string(text)) {
		words := strings.SplitN(strings.TrimSpace(line), " ", 3)
		require.Len(t, words, 3, line)
		all = append(all, fileCall{words[1], words[2]})
	}
	return all
}

// mayBeTampered skips a test where nothing may be traced.
func mayBeTampered(t *testing.T) {
	log := filepath.Join(t.TempDir(), "calls")
	line := append(tampered(t, t.TempDir(), log, 0, ""), program, "version")
	if out, err := exec.Command(line[0], line[1:]...).CombinedOutput(); err != nil {
		t.Skipf("nothing may be traced here: %v %s", err, out)
	}
}
