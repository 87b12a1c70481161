// Bill says what a program is made of: every module that was linked into it, with its version and licence, as a software bill of
// materials (CycloneDX, JSON), and the text of every licence that comes with it.
//
//	bill -package ./cmd/undermark -version 1.2.0 -time 2026-01-02T03:04:05Z -bill FILE -licences FILE PROGRAM
//
// The system is that of the environment, as it was for the build.
package main

import (
	"crypto/sha256"
	"debug/buildinfo"
	"flag"
	"fmt"
	"os"
)

func main() {
	pack := flag.String("package", "", "the main package, as go list finds it from here")
	version := flag.String("version", "", "the version that is released")
	when := flag.String("time", "", "when the commit was made, RFC 3339")
	billFile := flag.String("bill", "", "where the bill goes")
	licenceFile := flag.String("licences", "", "where the licences go")
	flag.Parse()
	if err := run(*pack, *version, *when, *billFile, *licenceFile, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "bill:", err)
		os.Exit(1)
	}
}

func run(pack, version, when, billFile, licenceFile, program string) error {
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return err
	}
	modules, err := modulesOf(pack)
	if err != nil {
		return err
	}
	if err := agree(info, modules); err != nil {
		return err
	}
	if err := os.WriteFile(licenceFile, licenceText(modules), 0o644); err != nil {
		return err
	}
	sum, err := sumOf(program)
	if err != nil {
		return err
	}
	data, err := billOf(build{goVersion: info.GoVersion, version: version, when: when, sum: sum}, modules)
	if err != nil {
		return err
	}
	return os.WriteFile(billFile, data, 0o644)
}

// sumOf is the SHA-256 of a file, in hexadecimal.
func sumOf(file string) (string, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	return fmt.Sprintf("%x", sha256.Sum256(data)), nil
}

// agree holds what go list says is linked to what stands in the program itself, so that no bill is of another build, and
// takes each module's sum from there.
func agree(info *buildinfo.BuildInfo, modules []module) error {
	listed := map[string]*module{}
	for i, m := range modules {
		listed[m.path] = &modules[i]
	}
	for _, dep := range info.Deps {
		if dep.Replace != nil {
			return fmt.Errorf("%s is replaced: a release is made of published modules", dep.Path)
		}
		m := listed[dep.Path]
		if m == nil || m.version != dep.Version {
			return fmt.Errorf("the program holds %s %s, go list says otherwise: build it anew", dep.Path, dep.Version)
		}
		if dep.Sum == "" {
			return fmt.Errorf("the program has no checksum of %s %s: a release is made of published modules", dep.Path, dep.Version)
		}
		m.sum = dep.Sum
	}
	if len(modules) != len(info.Deps)+1 { // and the standard library, which the program does not list
		return fmt.Errorf("the program holds %d modules, go list says %d: build it anew", len(info.Deps), len(modules)-1)
	}
	return nil
}
