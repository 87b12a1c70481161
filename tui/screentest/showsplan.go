package screentest

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// worst holds the list of findings beside a plan: each is one of the job's, by verdict, danger, name and figures, and they stand in the job's order.
func (w *Told) worst(rows []string) (n int, wrong string) {
	all, from := rules.ForPeople(w.Result.Findings), 0
	for _, row := range rows {
		word, rest, _ := strings.Cut(strings.TrimRight(row, " "), " ")
		verdict := slices.IndexFunc(verdicts, func(v rules.Verdict) bool { return desk.VerdictWord(v) == word })
		if verdict < 0 || !figuresBehind.MatchString(rest) {
			continue
		}
		at := slices.IndexFunc(all[from:], func(f *rules.Finding) bool { return f.Verdict == verdicts[verdict] && w.besidePlan(spaced(rest), f) })
		if at < 0 {
			return n, fmt.Sprintf("%q is not a finding of the job that follows", row)
		}
		n, from = n+1, from+at+1
	}
	return n, ""
}

var (
	verdicts      = []rules.Verdict{rules.Foul, rules.Doubtful, rules.Clear}
	figuresBehind = regexp.MustCompile(`^ .* (\?|-?\d\S*)( .*)?$`)
)

// besidePlan tells whether what stands behind a verdict is of a finding; a long name goes on in the row below.
func (w *Told) besidePlan(text string, f *rules.Finding) bool {
	deadly := strings.HasPrefix(text, words.Deadly)
	figures := spaced(words.Signed(*f, w.Settings.Units) + " " + words.PlusMinus(*f, w.Settings.Units))
	name, is := strings.CutSuffix(strings.TrimSpace(strings.TrimPrefix(text, words.Deadly)), " "+figures)
	return is && deadly == (f.Weight == rules.Kills) && begins(spaced(harmless.Text(f.About())), name)
}

var (
	placeSaid = regexp.MustCompile(` (?:CUT step \S+ \S+|CUT step \S+) At (x .*)`)
	belowSaid = regexp.MustCompile(`From below: .*`)
	runSaid   = regexp.MustCompile(`^ ?(EXHAUST  intake  fuel line|exhaust  INTAKE  fuel line|exhaust  intake  FUEL LINE) `)
	pointSaid = regexp.MustCompile(`Point (\d+) of (\d+): (x .*)`)
)

// place holds where the cut is, what the tape says there from below, and the worst.
func (w *Told) place(rows []string) (n int, wrong string) {
	rows = panel(rows)
	text := " " + spaced(strings.Join(rows, " "))
	if said := placeSaid.FindStringSubmatch(text); said != nil {
		if w.Job.Cut == nil {
			return 0, "a place is said where there is no cut"
		}
		at := w.Job.Cut.At
		if is := desk.AtX(at[0], w.Settings.Units) + ", " + desk.Across(at[1], w.Settings); !strings.HasPrefix(said[1], is) {
			return 0, fmt.Sprintf("%q where the cut is at %s", said[1], is)
		}
		n++
		marks := w.sheet().Marks
		if below := belowSaid.FindString(text); below != "" && len(marks) > 0 {
			b, u := marks[0].Below, w.Settings.Units
			is := fmt.Sprintf(" %s, %s %s, %s %s", survey.Format(b.Bumper, u), desk.Left(w.Settings), survey.Format(b.Left, u), desk.Right(w.Settings), survey.Format(b.Right, u))
			if b.Bumper < 0 {
				is = strings.Replace(is, ",", " behind,", 1)
			}
			if !strings.Contains(below, is) {
				return n, fmt.Sprintf("%q where it is%s", below, is)
			}
			n++
		}
	}
	m, wrong := w.worst(rows)
	return n + m, wrong
}

// runs holds where the point is that is picked, of how many, and the worst.
func (w *Told) runs(rows []string) (n int, wrong string) {
	rows = panel(rows)
	if of := slices.IndexFunc(rows, runSaid.MatchString); of >= 0 {
		said := pointSaid.FindStringSubmatch(spaced(strings.Join(rows[of:], " ")))
		if said != nil {
			if wrong = w.point(rows[of], said); wrong != "" {
				return 0, wrong
			}
			n++
		}
	}
	m, wrong := w.worst(rows)
	return n + m, wrong
}

// point holds what is said of a point of the run whose name stands in capitals.
func (w *Told) point(head string, said []string) string {
	of := slices.IndexFunc(vehicles.RunKinds[:], func(k vehicles.RunKind) bool { return strings.Contains(head, strings.ToUpper(k.String())) })
	run := w.Job.Run(vehicles.RunKinds[of])
	i, _ := strconv.Atoi(said[1])
	if run == nil || said[2] != strconv.Itoa(len(run.Path)) || i < 1 || i > len(run.Path) {
		return fmt.Sprintf("%q is no point of the run", said[0])
	}
	p, u := run.Path[i-1], w.Settings.Units
	if is := "x " + survey.Format(p.X, u) + ", " + desk.Across(p.Y, w.Settings) + ", " + desk.Height(p.Drop, u); !strings.HasPrefix(said[3], is) {
		return fmt.Sprintf("%q where it is at %s", said[0], is)
	}
	return ""
}
