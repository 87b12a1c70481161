package words

import (
	"fmt"
	"strings"

	"bench.example/undermark/vehicles"
)

// Left counts the kinds that open has of each list, those nobody has entered nor looked for: "31 kinds" where that is round the cut alone, else list by list,
// "31 at the cut, 33 at the runs, 14 openings"; "" for none.
func Left(open func(vehicles.LookList) []string) string {
	words := [...]string{vehicles.AtCut: "at the cut", vehicles.AtRuns: "at the runs", vehicles.AtOutlet: "openings"}
	var parts []string
	for _, list := range vehicles.LookLists {
		if n := len(open(list)); n > 0 {
			parts = append(parts, fmt.Sprint(n, " ", words[list]))
		}
	}
	if n := len(open(vehicles.AtCut)); n > 0 && len(parts) == 1 {
		return fmt.Sprint(n, " kinds")
	}
	return strings.Join(parts, ", ")
}
