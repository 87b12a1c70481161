package screentest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// shows are the screens whose pictures are held to the job beyond what every screen has: what each is called in the header, in full and in short, and what tells how
// many of its rows are the job's and what is not.
var shows = []struct {
	titles []string
	holds  func(w *Told, rows []string) (n int, wrong string)
}{
	{[]string{"On top", "Top"}, (*Told).onTop},
	{[]string{"Match"}, (*Told).match},
	{[]string{"Place"}, (*Told).place},
	{[]string{"Runs"}, (*Told).runs},
	{[]string{"Marks", "Mark"}, (*Told).marks},
	{[]string{"Work"}, (*Told).work},
	{[]string{"Sizing", "Size"}, (*Told).sizing},
}

// ShownScreens are what those are called in full.
func ShownScreens() (titles []string) {
	for _, screen := range shows {
		titles = append(titles, screen.titles[0])
	}
	return titles
}

var titleShown = regexp.MustCompile(`\[(?:\d )?([A-Z][a-z ]+)\]`)

// ofScreen holds the rows below header and heading to what the screen shows that the header names.
func (w *Told) ofScreen(header string, rows []string) string {
	title := titleShown.FindStringSubmatch(header)
	if title == nil {
		return ""
	}
	for _, screen := range shows {
		if slices.Contains(screen.titles, title[1]) {
			n, wrong := screen.holds(w, rows)
			if w.Rows == nil {
				w.Rows = map[string]int{}
			}
			w.Rows[screen.titles[0]] += n
			return wrong
		}
	}
	return ""
}

// spaced is a text with one blank for each gap: columns and broken rows put in more.
func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// rowsUnder are the rows of a list under its title, the cursor taken off, with the titles within it; none where the title is not in sight.
func rowsUnder(title *regexp.Regexp, rows, heads []string) (said []string, list []string) {
	for y, row := range rows {
		if said = title.FindStringSubmatch(row); said == nil {
			continue
		}
		for _, row := range rows[y+1:] {
			row, _, _ = strings.Cut(row, "│")
			text := spaced(strings.TrimPrefix(row, "▸ "))
			switch {
			case slices.Contains(heads, text):
			case text != "" && (strings.HasPrefix(row, "▸ ") || strings.HasPrefix(row, "  ")):
				list = append(list, text)
			default:
				return said, list
			}
		}
		return said, list
	}
	return nil, nil
}

// inARow holds that rows are those of a list one after another, wherever they begin.
func inARow[T any](rows []string, all []T, is func(row string, of T) bool) string {
	for from := 0; from+len(rows) <= len(all); from++ {
		fits := true
		for i, row := range rows {
			fits = fits && is(row, all[from+i])
		}
		if fits {
			return ""
		}
	}
	return fmt.Sprintf("the rows are not the job's, one after another: %q", rows)
}

// cutOff tells whether a row is a text, or as much of it as there was room for.
func cutOff(row, text string) bool {
	before, _, cut := strings.Cut(row, "…")
	return row == text || cut && strings.HasPrefix(text, strings.TrimSpace(before))
}

var (
	fittingsShown = regexp.MustCompile(`^On top: (\d+) fittings?\b`)
	fittingsHead  = regexp.MustCompile(`^Fittings: on the floor`)
	workShown     = regexp.MustCompile(`^Work: (.* done)`)
	sizesShown    = regexp.MustCompile(`^Sizes of `)
)

// onTop holds how many fittings there are, and that each that is whole is listed by its name in its turn.
func (w *Told) onTop(rows []string) (n int, wrong string) {
	said, _ := rowsUnder(fittingsShown, rows, nil)
	begun := len(w.Job.Unfinished.Fittings)
	if said == nil {
		return 0, ""
	}
	if whole := len(w.Job.Fittings); said[1] != strconv.Itoa(whole+begun) {
		return 0, fmt.Sprintf("%q, and the job has %d of them and %d begun", said[0], whole, begun)
	}
	_, list := rowsUnder(fittingsHead, rows, nil)
	sheet, next := w.sheet(), -1
	for _, row := range list {
		at := slices.IndexFunc(w.Job.Fittings, func(f vehicles.Fitting) bool {
			i := slices.IndexFunc(w.Job.Fittings, func(o vehicles.Fitting) bool { return o.Name == f.Name })
			_, uncoded, _ := strings.Cut(row, " ")
			text := spaced(harmless.Text(f.Name) + " " + words.TapesMet(&w.Result, sheet, i))
			return cutOff(row, text) || cutOff(uncoded, text)
		})
		switch {
		case at >= 0 && next >= 0 && at != next:
			return n, fmt.Sprintf("%q is not the fitting that follows", row)
		case at >= 0:
			n, next = n+1, at+1
		case begun == 0 && len(list) > len(w.Job.Fittings)+1:
			return n, fmt.Sprintf("%q is no fitting of the job", row)
		}
	}
	if others := len(list) - n; others > begun+1 {
		return n, fmt.Sprintf("%d rows are no fitting of the job: %q", others, list)
	}
	return n, ""
}

// work holds how much is done, and that steps are listed in their order, ticked where the job has them done.
func (w *Told) work(rows []string) (n int, wrong string) {
	if !slices.ContainsFunc(rows, workShown.MatchString) {
		return 0, ""
	}
	if w.known.steps == nil {
		w.known.steps = work.Of(&w.Result)
	}
	all := w.known.steps
	var heads, boxes []string
	for _, step := range all {
		heads = append(heads, step.Part.String())
	}
	said, list := rowsUnder(workShown, rows, heads)
	if said != nil && said[1] != words.WorkTally(all) {
		return 0, fmt.Sprintf("%q where it is %s", said[0], words.WorkTally(all))
	}
	for _, row := range list {
		if strings.HasPrefix(row, "[") {
			boxes = append(boxes, row)
		}
	}
	boxes = boxes[:min(len(boxes), len(all))] // what the job has of no step of its own stands behind them
	for len(boxes) > 0 && len(all.Elsewhere(&w.Job)) > 0 && !slices.ContainsFunc(all, func(s work.Step) bool { return stepRow(boxes[len(boxes)-1], s) }) {
		boxes = boxes[:len(boxes)-1]
	}
	return len(boxes), inARow(boxes, all, stepRow)
}

// stepRow tells whether a row is of a step, with what is recorded of it.
func stepRow(row string, step work.Step) bool {
	text := words.Box(step.Ticked()) + " " + vehicles.StepName(step.ID)
	stands := spaced(words.StepStands(&step))
	return cutOff(row, text) || strings.HasPrefix(row, text+" ") && (strings.Contains(row, " ! ") || strings.Contains(row, "…") || strings.HasSuffix(row, stands))
}

// sizing holds that the sizes listed are the job's in their order, figure by figure.
func (w *Told) sizing(rows []string) (n int, wrong string) {
	var heads []string
	var all []sizing.Row
	if !slices.ContainsFunc(rows, sizesShown.MatchString) {
		return 0, ""
	}
	if w.known.sizes == nil {
		w.known.sizes = sizing.Of(&w.Result)
	}
	for _, subject := range w.known.sizes {
		heads = append(heads, subject.Title)
		all = append(all, subject.Rows...)
	}
	_, list := rowsUnder(sizesShown, rows, heads)
	list = slices.DeleteFunc(list, func(row string) bool { return strings.HasPrefix(row, "another ") })
	return len(list), inARow(list, all, func(row string, r sizing.Row) bool {
		value := spaced(words.Sized(r, w.Settings.Units))
		label := spaced(harmless.Text(r.Label))
		return cutOff(row, label+" "+value) || cutOff(row, label+" ! "+value) || strings.HasSuffix(row, " "+value) && cutOff(strings.TrimSuffix(row, " "+value), label)
	})
}

// panel are the rows of what stands beside a plan, or under it.
func panel(rows []string) (out []string) {
	for _, row := range rows {
		parts := strings.Split(row, "│")
		out = append(out, parts[len(parts)-1])
	}
	return out
}
