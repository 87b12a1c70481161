package vehicles

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"bench.example/undermark/geometry/survey"
)

// found says what a value of the file is.
func found(value any) string {
	switch v := value.(type) {
	case string:
		return quote(v)
	case int64, bool:
		return fmt.Sprint(v)
	case float64:
		return strings.ToLower(strconv.FormatFloat(v, 'g', -1, 64))
	case time.Time:
		return "a date or time"
	case []any:
		return foundList(v)
	case []map[string]any:
		return "a list of tables"
	}
	return "a table"
}

func foundList(list []any) string {
	texts := make([]string, len(list))
	for i, v := range list {
		texts[i] = found(v)
	}
	return cut("[" + strings.Join(texts, ", ") + "]")
}

// quote is a text in quotes, cut when it is long.
func quote(s string) string { return strconv.Quote(cut(s)) }

func cut(s string) string {
	if r := []rune(s); len(r) > survey.LongestQuote {
		return string(r[:survey.LongestQuote]) + "..."
	}
	return s
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// unrepeated returns the words without those that stand there before.
func unrepeated(words []string) []string {
	var out []string
	for _, w := range words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
