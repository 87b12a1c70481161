package main

import (
	"bytes"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// tableFaults returns the faults that can be planted in the tables that a package embeds: each number of a *.toml beside its
// files, made other as one in the code is.
func tableFaults(dir, name string) (all []fault, err error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*.toml"))
	for _, path := range paths {
		source, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		h := hand{source: source, file: path, name: name + "/" + filepath.Base(path), function: "-"}
		h.lines = strings.Split(string(source), "\n")
		offset := 0
		for n, line := range h.lines {
			h.tableLine(n, offset, line)
			offset += len(line) + 1
		}
		all = append(all, h.faults...)
	}
	return all, err
}

var (
	// named is a line that says what the lines behind it are of, as a function's name does in the code. A table within another
	// goes by that one's name.
	named = regexp.MustCompile(`^(?:(?:id|of|name) = "([^"]*)"|\[+([^\].]*)\]+)`)
	// quoted are texts and what is remarked, in which a number is none; value is a number that stands alone.
	quoted = regexp.MustCompile(`"(?:\\.|[^"\\])*"|'[^']*'|#.*`)
	value  = regexp.MustCompile(`(?:^|[\s=\[,])(\d+(?:\.\d+)?)(?:$|[\s,\]])`)
)

func (h *hand) tableLine(n, offset int, line string) {
	if m := named.FindStringSubmatch(line); m != nil {
		h.function = strings.ReplaceAll(m[1]+m[2], " ", "_")
	}
	blank := quoted.ReplaceAllFunc([]byte(line), func(q []byte) []byte { return bytes.Repeat([]byte{'"'}, len(q)) })
	for at := 0; ; {
		m := value.FindSubmatchIndex(blank[at:])
		if m == nil {
			return
		}
		from, to := at+m[2], at+m[3]
		for _, with := range others(line[from:to]) {
			h.faults = append(h.faults, fault{
				file: h.file, name: h.name, source: h.source, table: true, end: offset + to, function: h.function,
				position: token.Position{Filename: h.file, Offset: offset + from, Line: n + 1, Column: from + 1},
				context:  strings.TrimSpace(line), with: with,
			})
		}
		at = to
	}
}
