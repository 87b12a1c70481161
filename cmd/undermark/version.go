package main

import (
	"fmt"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/vehicles"
)

// What a release is made with: the linker sets both (.ci/release). A build without them says what the tool chain knows.
var (
	releaseVersion string // 1.2.0
	releaseCommit  string // as the history names it, in full
)

// build is what this program was made from.
type build struct {
	Version string `json:"version"`           // as released, else "unreleased"
	Commit  string `json:"commit,omitempty"`  // "" where nobody said
	Changed bool   `json:"changed,omitempty"` // made from files that were changed since that commit
	Go      string `json:"go"`
	Format  int    `json:"format"` // of the job file
}

// version is the program's version alone.
func version() string { return thisBuild().Version }

func thisBuild() build {
	b := build{Version: releaseVersion, Commit: releaseCommit, Format: vehicles.FormatVersion}
	if info, ok := debug.ReadBuildInfo(); ok {
		b.read(info)
	}
	if b.Version == "" {
		b.Version = "unreleased"
	}
	return b
}

// read takes from what the tool chain put in whatever the release has not said.
func (b *build) read(info *debug.BuildInfo) {
	b.Go = info.GoVersion
	if b.Version == "" && info.Main.Version != "(devel)" {
		b.Version = strings.TrimPrefix(info.Main.Version, "v")
	}
	if b.Commit != "" {
		return
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Commit = s.Value
		case "vcs.modified":
			b.Changed = s.Value == "true"
		}
	}
}

func versionCommand(s streams) *cobra.Command {
	var f answerFlags
	c := &cobra.Command{
		Use:   "version",
		Short: "Say which version this is, what it was built from, and which job files it reads",
		Args:  takes(0, "nothing behind it"),
		RunE: func(*cobra.Command, []string) error {
			text := thisBuild().String()
			if f.json {
				var err error
				if text, err = jsonLine(thisBuild()); err != nil {
					return failed{err}
				}
			}
			return f.write(text, s)
		},
	}
	f.add(c)
	return c
}

// String is a line each: the version first, for whoever reads no further.
func (b build) String() string {
	lines := []string{"undermark " + b.Version}
	switch {
	case b.Changed:
		lines = append(lines, "commit "+b.Commit+", with changes")
	case b.Commit != "":
		lines = append(lines, "commit "+b.Commit)
	}
	lines = append(lines, b.Go, fmt.Sprintf("job file format %d", b.Format))
	return strings.Join(lines, "\n") + "\n"
}
