package screentest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// Told is a job as its file has it, judged by itself, and what of it was found on painted screens.
type Told struct {
	Job      vehicles.Job
	Result   rules.Result
	Settings desk.Settings
	Ticked   map[string]bool // the marks that were made, nil where that is not known

	Headings, Things, Findings int            // how many tallies, rows of things and rows of findings were held against it
	Rows                       map[string]int // how many rows of each other screen

	known reckoned
}

// reckoned is what screens show that takes a while to work out of a job.
type reckoned struct {
	sheet *rules.MarkSheet
	steps work.List
	sizes []sizing.Subject
}

// Judge has the screens held against a job and its result from here on.
func (w *Told) Judge(job vehicles.Job, result rules.Result) {
	w.Job, w.Result, w.known = job, result, reckoned{}
}

// legendOpen stands below the plan's legend.
const legendOpen = "Esc closes"

var (
	tallyShown  = map[rules.Verdict]*regexp.Regexp{rules.Foul: regexp.MustCompile(`\b(\d+) foul\b`), rules.Doubtful: regexp.MustCompile(`\b(\d+) doubtful\b`)}
	thingsShown = regexp.MustCompile(`^Obstructions: (\d+)\b`)
	checksShown = regexp.MustCompile(`^Checks: (?:all|foul and doubtful|foul only) \((\d+) of (\d+)\)`)
)

// Disagrees holds the rows of a painted screen against the job: both tallies of the heading, the things that Underneath lists with their names and whether they
// are confirmed, the findings that Checks lists with verdict, danger, name and margin, and what the other screens show of it (shows). It returns what does not agree, "" for nothing.
func (w *Told) Disagrees(rows []string) string {
	if len(rows) < 3 || !strings.Contains(rows[0], "[") || strings.HasPrefix(rows[1], "Can't be worked out") {
		return ""
	}
	if wrong := w.tally(rows[1]); wrong != "" {
		return wrong
	}
	for y, row := range rows[2:] {
		var wrong string
		switch {
		case thingsShown.MatchString(row):
			list := listed(rows[2+y+1:])
			if slices.ContainsFunc(rows, func(row string) bool { return strings.Contains(row, legendOpen) }) {
				list = nil // its rows follow on the list's without a sign between
			}
			wrong = w.things(row, list)
		case checksShown.MatchString(row):
			wrong = w.findings(row, rows[2+y+1:])
		}
		if wrong != "" {
			return wrong
		}
	}
	return w.ofScreen(rows[0], rows[2:])
}

// tally holds the heading: where the worst is foul, or doubtful with a cut, it begins with how many there are of both.
func (w *Told) tally(heading string) string {
	counts := map[rules.Verdict]int{}
	for _, f := range w.Result.Findings {
		counts[f.Verdict]++
	}
	tallied := counts[rules.Foul] > 0 || counts[rules.Doubtful] > 0 && w.Job.Cut != nil
	for verdict, shown := range tallyShown {
		said, n := shown.FindStringSubmatch(heading), counts[verdict]
		switch {
		case said != nil && tallied && said[1] != strconv.Itoa(n), said == nil && tallied && n > 0, said != nil && n == 0:
			return fmt.Sprintf("the heading says %q where %d are %s", heading, n, desk.VerdictWord(verdict))
		case said != nil:
			w.Headings++
		}
	}
	return ""
}

// listed are the rows of a list that is painted from here on, without what stands beside it.
func listed(rows []string) (list []string) {
	for _, row := range rows {
		row, _, _ = strings.Cut(row, "│")
		if !strings.HasPrefix(row, "▸ ") && !strings.HasPrefix(row, "  ") && !strings.HasPrefix(row, "Openings: ") {
			return list
		}
		if strings.TrimSpace(row) != "" && !strings.HasPrefix(row, "Openings: ") {
			list = append(list, row)
		}
	}
	return list
}

// thingNamed is a thing of a list.
type thingNamed struct {
	name     string
	measured bool
}

// things holds the list of Underneath: each row is a thing of the job, none is left out between them. As many rows more may stand there as things are unfinished, and
// the one that is being entered.
func (w *Told) things(title string, list []string) string {
	begun := len(w.Job.Unfinished.Obstructions)
	if n := thingsShown.FindStringSubmatch(title)[1]; n != strconv.Itoa(len(w.Job.Obstructions)+begun) {
		return fmt.Sprintf("%q where %d are whole and %d unfinished", title, len(w.Job.Obstructions), begun)
	}
	var all []thingNamed
	for _, o := range w.Job.Obstructions {
		all = append(all, thingNamed{harmless.Text(o.Name), o.Measured})
	}
	for _, o := range w.Job.Openings {
		all = append(all, thingNamed{harmless.Text(o.Name), !o.Unconfirmed})
	}
	others, next := 0, -1
	for _, row := range list {
		at := slices.IndexFunc(all[max(next, 0):], func(n thingNamed) bool { return names(row, n.name) })
		switch at += max(next, 0); {
		case at < max(next, 0):
			others++
		case next >= 0 && at != next:
			return fmt.Sprintf("%q is not what follows on %q", row, all[next-1].name)
		case strings.HasSuffix(strings.TrimRight(row, " "), "not confirmed") && all[at].measured:
			return fmt.Sprintf("%q is measured", row)
		default:
			next = at + 1
			w.Things++
		}
	}
	if most := begun + len(w.Job.Unfinished.Openings) + 1; others > most {
		return fmt.Sprintf("%d rows are no thing of the job, where %d may be: %q", others, most, list)
	}
	return ""
}

// names tells whether a row of a list is of that name, cut off where there was no more room; a letter or two may stand in front, behind it how it stands.
func names(row, name string) bool {
	name, _, _ = strings.Cut(name, "│")
	name = strings.TrimSpace(name)
	text := strings.TrimSpace(strings.TrimLeft(row, "▸ "))
	_, unmarked, _ := strings.Cut(text, " ")
	for _, text := range []string{text, strings.TrimSpace(unmarked)} {
		if rest, is := strings.CutPrefix(text, name); is && standing.MatchString(rest) {
			return true
		}
		if before, _, cut := strings.Cut(text, "…"); cut && before != "" && strings.HasPrefix(name, before) && !strings.Contains(before, "  ") {
			return true
		}
	}
	return false
}

// standing is what may stand behind a name.
var standing = regexp.MustCompile(`^( +(!.*|not c.*|drop n.*|rise n.*))?$`)

// begins tells whether a text begins with a name, or with as much of it as there was room for.
func begins(text, name string) bool {
	if strings.HasPrefix(text, strings.TrimSpace(name)) {
		return true
	}
	before, _, cut := strings.Cut(text, "…")
	return cut && before != "" && strings.HasPrefix(name, before)
}

// findings holds the list of Checks: how many there are, and that those in sight are the job's in their order.
func (w *Told) findings(title string, rows []string) string {
	all := rules.ForPeople(w.Result.Findings)
	if said := checksShown.FindStringSubmatch(title); said[2] != strconv.Itoa(len(all)) {
		return fmt.Sprintf("%q where there are %d", title, len(all))
	}
	var shown []string
	for _, row := range rows[1:] { // below the legend
		row, _, _ = strings.Cut(row, "│")
		word := strings.TrimLeft(row, "▶ ")
		isOne := slices.ContainsFunc([]rules.Verdict{rules.Foul, rules.Doubtful, rules.Clear}, func(v rules.Verdict) bool {
			return strings.HasPrefix(word, desk.VerdictWord(v)+" ")
		})
		if !isOne {
			break
		}
		shown = append(shown, word)
	}
	for from := 0; from+len(shown) <= len(all); from++ {
		fits := true
		for i, row := range shown {
			fits = fits && w.of(row, *all[from+i])
		}
		if fits {
			w.Findings += len(shown)
			return ""
		}
	}
	return fmt.Sprintf("the rows of Checks are not findings of the job in a row: %q", shown)
}

// of tells whether a row is of a finding.
func (w *Told) of(row string, f rules.Finding) bool {
	word := desk.VerdictWord(f.Verdict)
	text := strings.TrimSpace(strings.TrimPrefix(row, word))
	deadly := strings.HasPrefix(text, words.Deadly)
	text = strings.TrimSpace(strings.TrimPrefix(text, words.Deadly))
	return strings.HasPrefix(row, word+" ") && deadly == (f.Weight == rules.Kills) && begins(text, harmless.Text(f.About())) &&
		strings.Contains(text, strings.TrimSpace(words.Signed(f, w.Settings.Units)))
}
