package screentest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

var (
	tiesShown     = regexp.MustCompile(`^Matching points: (\d+) in the fit(?:, (\d+) left out)?`)
	tieReadings   = regexp.MustCompile(`^(?:▸ |  )\s*([^│]+?) │ ([^│]+)`)
	leftOverShown = regexp.MustCompile(`left over +(\S+)`)
	leftOutShown  = regexp.MustCompile(`  (?:left out|out, \S+ off)`)
)

// match holds how many points are in the fit, and of each that is listed what was read and what is left over.
func (w *Told) match(rows []string) (n int, wrong string) {
	listed := false
	for y, row := range rows {
		if said := tiesShown.FindStringSubmatch(row); said != nil {
			in := 0
			for _, t := range w.Job.Ties {
				in += map[bool]int{true: 1}[t.Use]
			}
			out, _ := strconv.Atoi(said[2])
			if listed = true; said[1] != strconv.Itoa(in) || out != len(w.Job.Ties)-in {
				return n, fmt.Sprintf("%q where %d of %d are in the fit", row, in, len(w.Job.Ties))
			}
		}
		first, _, _ := strings.Cut(row, "│")
		listed = listed && strings.TrimSpace(first) != "" && !strings.HasPrefix(first, "Matching point ") // a blank row ends the list, or a form
		said := tieReadings.FindStringSubmatch(row)
		if said == nil || !listed || strings.TrimSpace(said[1]) == "" || strings.Contains(said[1], "! ") { // it is being entered
			continue
		}
		name, _, _ := strings.Cut(rows[y-1], "│")
		if tiesShown.MatchString(name) { // its name stands above where the list begins
			name = ""
		}
		if !slices.ContainsFunc(w.Job.Ties, func(t vehicles.Tie) bool { return w.tie(t, name, said) }) {
			return n, fmt.Sprintf("%q under %q is no matching point of the job", row, name)
		}
		n++
	}
	return n, ""
}

// tie tells whether a row of readings under a name is of a matching point.
func (w *Told) tie(t vehicles.Tie, name string, said []string) bool {
	below, above := spaced(t.Below[0].String()+" "+t.Below[1].String()), spaced(t.Above[0].String()+" "+t.Above[1].String())
	shown, _, cut := strings.Cut(said[2], "…")
	as := strings.HasPrefix(spaced(shown), above) || cut && strings.HasPrefix(above, spaced(shown))
	if name != "" && !cutOff(spaced(name), spaced(harmless.Text(t.Name))) || spaced(said[1]) != below || !as {
		return false
	}
	over := leftOverShown.FindStringSubmatch(said[2])
	if t.Use && leftOutShown.MatchString(said[2]) || !t.Use && over != nil {
		return false
	}
	return over == nil || slices.ContainsFunc(w.Result.Plan.Fit.Residuals, func(r survey.Residual) bool {
		return r.Name == t.Name && over[1] == survey.Format(geometry.Point{X: r.DX, Y: r.DY}.Norm(), w.Settings.Units)
	})
}
