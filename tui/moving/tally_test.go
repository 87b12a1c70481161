package moving_test

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/place"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

var (
	counted  = regexp.MustCompile(`(\d+) (foul|doubtful)\b`)
	farCount = regexp.MustCompile(`(\d+) far off, (?:doubtful|unconfirmed|)`)
	named    = regexp.MustCompile(`\b(foul|doubtful) (?:[a-z])`)
)

// below counts what the rows under a list say is not in it.
func below(rows string) (foul, doubtful int) {
	far, rest := 0, farCount.ReplaceAllStringFunc(rows, func(text string) string { return "FAR" + text[:strings.IndexByte(text, ' ')] + "." })
	for _, m := range regexp.MustCompile(`FAR(\d+)`).FindAllStringSubmatch(rest, -1) {
		n, _ := strconv.Atoi(m[1])
		far += n
	}
	of := map[string]int{"doubtful": far}
	for _, m := range counted.FindAllStringSubmatch(rest, -1) {
		n, _ := strconv.Atoi(m[1])
		of[m[2]] += n
	}
	for _, m := range named.FindAllStringSubmatch(counted.ReplaceAllString(rest, ""), -1) {
		of[m[1]]++
	}
	return of["foul"], of["doubtful"]
}

// The list and what is said below it come to the banner's tally, in few rows too.
func TestTheListAndWhatStandsBelowItComeToTheBannersTally(t *testing.T) {
	demo := vehicles.Demo()
	unsaid := demo
	unsaid.Heater = nil
	for name, job := range map[string]vehicles.Job{"the sample": demo, "a small van": screentest.State(t).Job, "no heater": unsaid, "held to everything": screentest.Full(t)} {
		d := screentest.New(t, place.New(), job, 60, 15)
		list := moving.Worst{}
		for _, f := range rules.ForPeople(d.State.Result.Findings) {
			switch {
			case f.WithCut():
				list.Moved = append(list.Moved, f)
			case f.Rule.AtCut:
				list.Rest = append(list.Rest, f)
			}
		}
		list = list.Parted()
		listsCome(t, name, list, d.State)
		last := func(f *rules.Finding) int {
			if words.WithinItself(*f) {
				return 0
			}
			return 1
		}
		slices.SortStableFunc(list.Moved, func(a, b *rules.Finding) int { // what wants a row that says why it is clear comes first
			return last(a) - last(b)
		})
		listsCome(t, name, list, d.State)
	}
}

// listsCome holds a list in some sizes to the tally of the job.
func listsCome(t *testing.T, name string, list moving.Worst, s desk.State) {
	var all []*rules.Finding
	for i := range s.Result.Findings {
		all = append(all, &s.Result.Findings[i])
	}
	foul, doubtful := verdicts(all)
	listedFoul, listedDoubtful := verdicts(list.Moved)
	for _, w := range []int{56, 60, 70, 80, 99} {
		for h := 2; h <= 9; h++ {
			rows := strings.Split(ansi.Strip(strings.Join(list.Rows(s, moving.Scroll{}, w, h), "\n")), "\n")
			var under []string
			for _, row := range rows {
				if screentest.FindingIn(row) == "" && !strings.HasPrefix(row, "         ") && !strings.HasPrefix(row, strconv.Itoa(foul)+" foul") {
					under = append(under, row)
				}
			}
			if len(under) == 0 {
				continue // a name alone, seen whole
			}
			isFoul, isDoubtful := below(strings.Join(under, "\n"))
			is := [2]int{listedFoul + isFoul, listedDoubtful + isDoubtful}
			assert.Equal(t, [2]int{foul, doubtful}, is, "%s, %d by %d:\n%s", name, w, h, strings.Join(rows, "\n"))
		}
	}
}

// verdicts counts what is foul and what doubtful.
func verdicts(all []*rules.Finding) (foul, doubtful int) {
	for _, f := range all {
		switch f.Verdict {
		case rules.Foul:
			foul++
		case rules.Doubtful:
			doubtful++
		}
	}
	return foul, doubtful
}
