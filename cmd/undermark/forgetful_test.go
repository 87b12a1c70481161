//go:build linux

package main

import (
	"bytes"
	hexadecimal "encoding/hex"
	"io/fs"
	"iter"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// forgetful is a disk that keeps no more than it was asked to: the data of a file once fsync was called on it, the names in
// a folder once fsync was called on the folder (fsync(2)). What was written or named since may be there after a power cut, or
// not, or be torn. That is how Pillai and others, "All File Systems Are Not Created Equal" (OSDI 2014, from memory) try programs.
type forgetful struct {
	root    string
	now     map[string]*inode // by path, as the program sees it
	kept    map[string]*inode // by path, the names that a power cut leaves for sure
	pending []naming          // the names since, in order
}

// inode is a file or a folder, whatever it is called.
type inode struct {
	folder     bool
	data, kept []byte // as the program sees it, and what a power cut leaves for sure
}

// naming is one change of names in one folder, all of it or nothing; nil is a name that goes.
type naming struct {
	folder string
	names  map[string]*inode
}

// diskOf is a disk that keeps all that lies below root now.
func diskOf(t *testing.T, root string) *forgetful {
	d := &forgetful{root: root, now: map[string]*inode{}, kept: map[string]*inode{}}
	require.NoError(t, filepath.WalkDir(root, func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		file := &inode{folder: e.IsDir()}
		if !file.folder {
			if file.data, err = os.ReadFile(path); err != nil {
				return err
			}
			file.kept = file.data
		}
		d.now[path], d.kept[path] = file, file
		return nil
	}))
	return d
}

func (d *forgetful) below(path string) bool {
	return path == d.root || strings.HasPrefix(path, d.root+"/")
}

func (d *forgetful) name(path string, file *inode) {
	d.naming(filepath.Dir(path), map[string]*inode{path: file})
}

func (d *forgetful) naming(folder string, names map[string]*inode) {
	d.pending = append(d.pending, naming{folder, names})
	put(d.now, names)
}

func put(all, names map[string]*inode) {
	for path, file := range names {
		if all[path] = file; file == nil {
			delete(all, path)
		}
	}
}

// does brings the disk up to a call of the program.
func (d *forgetful) does(t *testing.T, c sysCall) {
	path := c.path
	if !d.below(path) {
		return
	}
	file := d.now[path]
	switch c.name {
	case "openat":
		switch {
		case file == nil && strings.Contains(c.flags, "O_CREAT"):
			d.name(path, new(inode))
		case file != nil && strings.Contains(c.flags, "O_TRUNC"):
			file.data = nil
		}
	case "write":
		require.NotNil(t, file, c.path)
		file.data = append(slices.Clone(file.data), c.data...)
	case "fsync":
		require.NotNil(t, file, c.path)
		d.sync(path, file)
	case "renameat":
		require.NotNil(t, file, c.path)
		require.Equal(t, filepath.Dir(path), filepath.Dir(c.to), "a name that moves to another folder is more than this disk knows")
		d.naming(filepath.Dir(path), map[string]*inode{path: nil, c.to: file})
	case "unlinkat":
		d.name(path, nil)
	case "mkdirat":
		d.name(path, &inode{folder: true})
	default:
		require.Fail(t, "a call that this disk does not know: "+c.name)
	}
}

func (d *forgetful) sync(path string, file *inode) {
	if !file.folder {
		file.kept = file.data
		return
	}
	d.pending = slices.DeleteFunc(d.pending, func(n naming) bool {
		if n.folder == path {
			put(d.kept, n.names)
		}
		return n.folder == path
	})
}

// mostKept is how many names may be unsettled before their choices are drawn, not all tried.
const mostKept = 7

// cuts are what may be there after a power cut now: every choice of the names that were not asked to be kept, and the data
// that was not asked to be kept gone, torn, of the right length but empty, or whole.
func (d *forgetful) cuts(seed uint64) iter.Seq[map[string][]byte] {
	data := []func(f *inode) []byte{
		func(f *inode) []byte { return f.kept },
		func(f *inode) []byte { return f.data[:len(f.data)/2] },
		func(f *inode) []byte { return make([]byte, len(f.data)) },
		func(f *inode) []byte { return f.data },
	}
	return func(yield func(map[string][]byte) bool) {
		for choice := range choices(len(d.pending), seed) {
			names := make(map[string]*inode, len(d.kept))
			put(names, d.kept)
			for i, n := range d.pending {
				if choice>>i&1 == 1 {
					put(names, n.names)
				}
			}
			for _, of := range data {
				if !yield(d.contents(names, of)) {
					return
				}
			}
		}
	}
}

// choices are sets of n things as bits: all of them, or as many drawn by the seed.
func choices(n int, seed uint64) iter.Seq[uint64] {
	draw := rand.New(rand.NewPCG(seed, uint64(n)))
	return func(yield func(uint64) bool) {
		for i := range uint64(1) << min(n, mostKept) {
			if n > mostKept {
				i = draw.Uint64()
			}
			if !yield(i) {
				return
			}
		}
	}
}

// contents are the files that can be reached by their folders.
func (d *forgetful) contents(names map[string]*inode, of func(*inode) []byte) map[string][]byte {
	files := map[string][]byte{}
	for path, file := range names {
		reached := true
		for folder := filepath.Dir(path); reached && d.below(folder); folder = filepath.Dir(folder) {
			reached = names[folder] != nil
		}
		if reached && !file.folder {
			files[path] = of(file)
			if bytes.Equal(file.data, file.kept) {
				files[path] = file.kept
			}
		}
	}
	return files
}

// sysCall is one call of the program to its system.
type sysCall struct {
	name     string
	when     float64 // seconds since 1970, when it had been done
	path, to string
	flags    string
	data     []byte
}

// traceCalls are the calls that a disk has to know, and those that it must not meet.
const traceCalls = "openat,open,creat,write,pwrite64,pwritev,writev,fsync,fdatasync,rename,renameat,renameat2,unlink,unlinkat,rmdir,link,linkat,symlinkat,ftruncate,truncate,mkdir,mkdirat,copy_file_range,sendfile"

var (
	tracedLine = regexp.MustCompile(`^(\d+) +([\d.]+) (?:<\.\.\. )?(\w+)(?: resumed>|\()(.*)$`)
	tracedEnd  = regexp.MustCompile(`\) += (\d+)(?:<\S*>)?$`)
)

// traced reads what strace wrote of a program: the calls that went well, in the order in which they ended.
func traced(t *testing.T, log []byte) (all []sysCall) {
	begun := map[string]string{} // by thread, the call that has not ended
	for line := range strings.Lines(string(log)) {
		m := tracedLine.FindStringSubmatch(strings.TrimRight(line, "\n"))
		if m == nil {
			continue // a signal, an exit
		}
		thread, args := m[1], m[4]
		if first, cut := strings.CutSuffix(args, " <unfinished ...>"); cut {
			begun[thread] = first
			continue
		}
		if strings.Contains(line, " resumed>") {
			args = begun[thread] + args
		}
		end := tracedEnd.FindStringIndex(args)
		if end == nil {
			continue // it failed
		}
		when, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		c := sysCall{name: m[3], when: when}
		c.read(t, strings.Split(args[:end[0]], ", "))
		all = append(all, c)
	}
	return all
}

// read takes the arguments of a call.
func (c *sysCall) read(t *testing.T, args []string) {
	switch c.name {
	case "openat":
		c.path, c.flags = named(t, args[0], args[1]), args[2]
	case "renameat":
		c.path, c.to = named(t, args[0], args[1]), named(t, args[2], args[3])
	case "unlinkat", "mkdirat":
		c.path = named(t, args[0], args[1])
	case "write":
		c.path, c.data = opened(t, args[0]), unhex(t, args[1])
	default:
		c.path = opened(t, args[0])
	}
}

var traceText = regexp.MustCompile(`^"((?:\\x[0-9a-f]{2})*)"$`)

// unhex reads a text in which each byte is written \xNN.
func unhex(t *testing.T, text string) []byte {
	m := traceText.FindStringSubmatch(text)
	require.NotNil(t, m, "%.200s", text)
	data, err := hexadecimal.DecodeString(strings.ReplaceAll(m[1], `\x`, ""))
	require.NoError(t, err)
	return data
}

// opened is the path behind a file descriptor, as in 8<\x2f\x74>.
func opened(t *testing.T, arg string) string {
	_, path, is := strings.Cut(strings.TrimSuffix(arg, ">"), "<")
	if !is {
		return ""
	}
	return string(unhex(t, `"`+path+`"`))
}

// named is the path of a name below an open folder.
func named(t *testing.T, folder, name string) string {
	path := string(unhex(t, name))
	if filepath.IsAbs(path) {
		return filepath.Clean(path)
	}
	return filepath.Join(opened(t, folder), path)
}
