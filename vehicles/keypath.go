package vehicles

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// The path of a key is its keys with points between and list indices, from 0, in brackets, as in
// obstruction[3].x[1]; a key that is not of letters, digits, - and _ stands in quotes.

// pathParts are the parts of a path. It is made for the first fault that is told of.
var pathParts = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`"(?:[^"\\]|\\.)*"|\[\d+\]|[^."\[\]]+`) })

// bareKey tells whether a key needs no quotes. Each key of a file is asked.
func bareKey(key string) bool { return key != "" && strings.TrimLeft(key, bareKeyRunes) == "" }

// JoinKey is the path of a key below another path, "" for the top, as Fault has it.
func JoinKey(path, key string) string { return joinKey(path, key) }

func joinKey(path, key string) string {
	if !bareKey(key) {
		key = strconv.Quote(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

func joinIndex(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// parentKey returns the path of what holds a key, "" at the top.
func parentKey(path string) string {
	parts := pathParts().FindAllStringIndex(path, -1)
	if len(parts) < 2 {
		return ""
	}
	return path[:parts[len(parts)-2][1]]
}

// indexOf is the index of a path's part, false when it is a key.
func indexOf(part string) (int, bool) {
	if !strings.HasPrefix(part, "[") {
		return 0, false
	}
	n, err := strconv.Atoi(strings.Trim(part, "[]"))
	return n, err == nil
}

// describe says a key's path in words: obstruction "brake pipe": path, point 3, y. names gives the names of the
// items of each list of tables.
func describe(path string, names map[string][]string) string {
	parts := pathParts().FindAllString(path, -1)
	if len(parts) == 0 {
		return "the file"
	}
	said, rest := parts[0], parts[1:]
	if len(rest) > 0 {
		if i, ok := indexOf(rest[0]); ok {
			said, rest = said+" "+itemName(names[said], i), rest[1:]
		}
	}
	for i, part := range rest {
		n, isIndex := indexOf(part)
		switch {
		case i == 0:
			said += ": " + part
		case !isIndex:
			said += "." + part
		default:
			said += ", " + indexWord(rest[:i], n)
		}
	}
	return said
}

// KeyOf says a key of a thing of that name, "" for one that is there once, in words: obstruction "brake pipe": path,
// point 3, y. What is wrong with a reading starts with it.
func KeyOf(key, name string) string {
	names := map[string][]string{}
	if parts := pathParts().FindAllString(key, 2); len(parts) == 2 {
		if i, isIndex := indexOf(parts[1]); isIndex {
			names[parts[0]] = append(make([]string, i), name)
		}
	}
	return describe(key, names)
}

// itemName is the quoted name of an item of a list, its number from 1 when it has none.
func itemName(names []string, i int) string {
	if i < len(names) && names[i] != "" {
		return quote(names[i])
	}
	return strconv.Itoa(i + 1)
}

// pointKeys are the keys of a single point.
var pointKeys = []string{"below", "above", "drilled", "centre"}

// indexWord says which value of a list it is: of a path, which point, and of a point which of its coordinates.
func indexWord(before []string, n int) string {
	coordinates := []string{"x", "y", "drop"}
	last := before[len(before)-1]
	_, nested := indexOf(last)
	switch {
	case (nested || slices.Contains(pointKeys, last)) && n < len(coordinates):
		return coordinates[n]
	case before[len(before)-1] == "path":
		return fmt.Sprintf("point %d", n+1)
	}
	return fmt.Sprintf("value %d", n+1)
}
