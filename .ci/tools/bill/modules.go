package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// module is one that is linked into the program, with what it is licensed under.
type module struct {
	path, version string
	sum           string // as go.sum has it; the standard library has none
	licences      []licence
}

// licence is a file of one, and the licences that were found in it by their SPDX names.
type licence struct {
	name string // from the module's root
	text []byte
	ids  []string
}

// standard is the name that Go's own library goes by in lists of modules.
const standard = "std"

// modulesOf returns the modules that packages linked into a program belong to, by path. A package's own folder may hold
// a licence of its own, of a font for one, beside the module's. Errors: go list fails, a module without a known licence.
func modulesOf(pack string) ([]module, error) {
	packages, err := linked(pack)
	if err != nil {
		return nil, err
	}
	byPath := map[string]*module{}
	for _, p := range packages {
		root, path, version := p.home()
		if path == "" {
			continue // the program's own
		}
		m := byPath[path]
		if m == nil {
			m = &module{path: path, version: version}
			byPath[path] = m
		}
		if err := m.gather(root, p.Dir); err != nil {
			return nil, err
		}
		if of, known := elsewhere[path]; known && !m.has(of.name) {
			text, err := os.ReadFile(filepath.Join(root, of.name))
			if err != nil {
				return nil, err
			}
			m.licences = append(m.licences, licence{name: of.name, text: text, ids: of.ids})
		}
	}
	var all []module
	for _, m := range byPath {
		if len(m.ids()) == 0 {
			return nil, fmt.Errorf("%s %s has no licence that is known: it can't be given on", m.path, m.version)
		}
		all = append(all, *m)
	}
	slices.SortFunc(all, func(a, b module) int { return strings.Compare(a.path, b.path) })
	return all, nil
}

// listed is what go list tells of a package.
type listed struct {
	Dir      string
	Standard bool
	Module   *struct {
		Path, Version, Dir string
		Main               bool
	}
}

func (p listed) home() (root, path, version string) {
	switch {
	case p.Standard:
		return runtime.GOROOT(), standard, strings.TrimPrefix(runtime.Version(), "go")
	case p.Module == nil || p.Module.Main:
		return "", "", ""
	}
	return p.Module.Dir, p.Module.Path, p.Module.Version
}

func linked(pack string) (all []listed, err error) {
	c := exec.Command("go", "list", "-deps", "-json=Dir,Standard,Module", pack)
	c.Stderr = os.Stderr
	out, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w", pack, err)
	}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, fmt.Errorf("go list %s: %w", pack, err)
		}
		all = append(all, p)
	}
}

// gather takes the licence files of a package's folder and of those above it, up to the module's root.
func (m *module) gather(root, dir string) error {
	for {
		if err := m.take(root, dir); err != nil || dir == root {
			return err
		}
		up := filepath.Dir(dir)
		if up == dir {
			return fmt.Errorf("%s is not in %s", dir, root)
		}
		dir = up
	}
}

func (m *module) take(root, dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		name, err := filepath.Rel(root, filepath.Join(dir, e.Name()))
		if err != nil || e.IsDir() || !calledLicence(e.Name()) || m.has(name) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			return err
		}
		m.licences = append(m.licences, licence{name: filepath.ToSlash(name), text: text, ids: idsIn(text)})
	}
	return nil
}

func (m *module) has(name string) bool {
	return slices.ContainsFunc(m.licences, func(l licence) bool { return l.name == filepath.ToSlash(name) })
}

// calledLicence says whether a file's name is one that licences go by.
func calledLicence(name string) bool {
	name = strings.ToUpper(strings.TrimSuffix(strings.TrimSuffix(name, ".md"), ".txt"))
	for _, usual := range []string{"LICENSE", "LICENCE", "COPYING", "NOTICE", "PATENTS"} {
		if name == usual || strings.HasPrefix(name, usual+"-") || strings.HasPrefix(name, usual+".") {
			return !strings.HasSuffix(name, ".GO")
		}
	}
	return false
}

// ids are the licences of a module by their SPDX names, each once, in the order of the alphabet.
func (m module) ids() (ids []string) {
	for _, l := range m.licences {
		ids = append(ids, l.ids...)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}
