package tui

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// inLines are the lines of each screen of a job, by title, what stands behind something among them.
func inLines(t testing.TB, r *Root) map[string]string {
	p := &plainly{Root: r}
	p.begin()
	all := map[string]string{}
	for p.at = range p.screens {
		lines := p.whole()
		said := p.screens[p.at].Plain(p.desk.State)
		require.NotNil(t, said.All, p.screens[p.at].Title())
		if said.Behind != nil {
			lines = append(lines, said.Behind()...)
		}
		for i := range lines {
			lines[i] = aloud.Line(lines[i])
		}
		all[p.screens[p.at].Title()] = strings.Join(lines, "\n")
	}
	return all
}

// Each screen says in lines whatever it is for: every obstruction with its readings and the tape's zero, every finding, every
// mark with its figures, every run, every kind to look for, every rule.
func TestLinesSayAllThatScreensAreFor(t *testing.T) {
	for _, name := range []string{"", "13-two-ties.toml", "24-everything.toml", "18-muffler-and-clips.toml"} {
		file := ""
		if name != "" {
			file = jobOfCases(t, name)
		}
		r := working(t, file)
		lines, s := inLines(t, r), r.desk.State
		require.Len(t, lines, len(r.screens))
		for title, text := range lines {
			assert.Contains(t, text, ": "+title+". Job "+s.Job.Ref, name)
			assert.Contains(t, text, aloud.Line(heading(s)), "%s %s", name, title)
		}
		saysTheSurvey(t, name, lines, s)
		saysTheFindings(t, name, lines, s)
		saysTheMarks(t, name, lines["Marks"], s)
	}
}

func saysTheSurvey(t *testing.T, name string, lines map[string]string, s desk.State) {
	for _, o := range s.Job.Obstructions {
		assert.Contains(t, lines["Underneath"], aloud.Line(o.Name), name)
		for _, r := range append(append(o.X[:0:0], o.X[:]...), o.Y[:]...) {
			assert.Contains(t, lines["Underneath"], r.Text, "%s: %s", name, o.Name)
		}
		for _, p := range o.Path {
			assert.Contains(t, lines["Underneath"], "point 1 "+o.Path[0][0].Text, "%s: %s", name, o.Name)
			assert.Contains(t, lines["Underneath"], p[1].Text, "%s: %s", name, o.Name)
		}
	}
	for _, zero := range aloud.Zeros(s) {
		assert.Contains(t, lines["Underneath"], zero, name)
	}
	for _, list := range vehicles.LookLists {
		for _, kind := range list.Kinds() {
			assert.Contains(t, lines["Underneath"], kind+": ", name)
		}
	}
	for _, f := range s.Job.Fittings {
		assert.Contains(t, lines["On top"], aloud.Line(f.Name), name)
	}
	for _, tie := range s.Job.Ties {
		assert.Contains(t, lines["Match"], aloud.Line(tie.Name), name)
		for _, r := range []survey.Reading{tie.Below[0], tie.Below[1], tie.Above[0], tie.Above[1]} {
			assert.Contains(t, lines["Match"], r.Text, name)
		}
	}
	for _, l := range s.Result.Book.Limits() {
		assert.Contains(t, lines["Job"], l.Rule.Title, name)
	}
}

func saysTheFindings(t *testing.T, name string, lines map[string]string, s desk.State) {
	for _, f := range s.Result.Findings {
		line := aloud.Line(aloud.Finding(f, s))
		assert.Contains(t, lines["Checks"], line, name)
		for _, part := range []string{f.About(), words.Value(f, s.Settings.Units), words.Margin(f, s.Settings.Units), desk.VerdictWord(f.Verdict), words.PlusMinus(f, s.Settings.Units)} {
			assert.Contains(t, line, aloud.Line(part), name)
		}
		if f.Verdict != rules.Clear && f.Rule.AtCut {
			assert.Contains(t, lines["Place"], line, name)
		}
		if f.Verdict != rules.Clear {
			assert.Contains(t, lines["Checks"], aloud.Line(f.Limit.Source), name)
		}
		if f.Verdict == rules.Doubtful {
			assert.Contains(t, lines["Checks"], aloud.Line(f.Why), name)
		}
	}
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		if run := s.Job.Run(of); run != nil && s.Job.Cut != nil {
			assert.Equal(t, len(run.Path), strings.Count(strings.Join(aloud.Run(of, s), "\n"), "Leg "), "a leg to each point")
			assert.Contains(t, lines["Runs"], strings.Join(aloud.Rows(aloud.Run(of, s)...), "\n"), name)
		}
	}
	for _, danger := range rules.Dangers(&s.Result) {
		for _, title := range []string{"Underneath", "Place", "Marks"} {
			assert.Contains(t, lines[title], danger, name)
		}
	}
}

func saysTheMarks(t *testing.T, name, text string, s desk.State) {
	figure := func(mm float64) { assert.Contains(t, text, " "+desk.Length(mm, s.Settings.Units), name) }
	for _, m := range s.Marks.Marks {
		assert.Contains(t, text, m.Words+", not made", name)
		for _, mm := range []float64{m.Below.Bumper, m.Below.Left, m.Below.Right} {
			figure(mm)
		}
		if a := m.Above; a != nil {
			for _, mm := range []float64{a.Bumper, a.Left, a.Right, a.PinLeft, a.PinRight} {
				figure(mm)
			}
		}
	}
	for _, c := range s.Marks.Checks {
		assert.Contains(t, text, words.CheckText(c, s.Settings), name)
		figure(c.Length)
	}
}

// token is a word or a figure of a row; of words only those of some letters, as marks on the plan have one or two.
var token = regexp.MustCompile(`[0-9]+(\.[0-9]+)?|[a-z]{3,}`)

// columnHeads are rows over columns of figures; letters are those of a kind on the plan, in front of a row; lines have no rows out of sight.
var (
	columnHeads = regexp.MustCompile(`^Worst |mm unless said`)
	thumbs      = regexp.MustCompile(`\[[a-z ]+\]`) // they press keys, which ? reads
	letters     = regexp.MustCompile(`^ +[A-Z]{1,2}|^\d+-\d+ of \d+ \(PgDn\)| (\d+ more (above|below)(, \d+ below)?|↑\d+( ↓\d+)?|↓\d+) *$`)
)

// What stands in words on a screen stands in its lines: every word and figure of it outside the plan.
func TestLinesSayNoLessThanTheScreen(t *testing.T) {
	const w, h = 99, 150 // the plan lies above or below all else
	outside := map[string]func(rows []string) []string{
		"Underneath": func(rows []string) []string { return rows[:len(rows)-len(rows)/3] },
		"On top":     func(rows []string) []string { return rows[:len(rows)-30] },
		"Match":      func(rows []string) []string { return rows[:len(rows)/2] },
		"Place":      func(rows []string) []string { return rows[len(rows)-moving.PanelHeight:] },
		"Runs":       func(rows []string) []string { return rows[len(rows)-moving.PanelHeight:] },
	}
	for _, name := range []string{"", "13-two-ties.toml", "24-everything.toml"} {
		file := ""
		if name != "" {
			file = jobOfCases(t, name)
		}
		r := working(t, file)
		lines := inLines(t, r)
		r.Update(tea.WindowSizeMsg{Width: w, Height: h})
		for r.at = range r.screens {
			title := r.screens[r.at].Title()
			body := strings.Split(ansi.Strip(r.screens[r.at].View(r.desk.State, w, r.bodyHeight())), "\n")
			if part := outside[title]; part != nil {
				body = part(body)
			}
			said := strings.ToLower(lines[title])
			for _, row := range body {
				if strings.Contains(row, "│") || strings.Contains(row, "…") || columnHeads.MatchString(row) {
					continue // of a drawing, cut short, or over figures that lines say with words
				}
				row = thumbs.ReplaceAllString(letters.ReplaceAllString(row, ""), "")
				for _, word := range token.FindAllString(strings.ToLower(aloud.Line(row)), -1) {
					assert.Contains(t, said, word, "%s, %s: %q", name, title, row)
				}
			}
		}
	}
}

// The gate before the marks, its cautions and the dangers stand before the figures also where nobody can be asked.
func TestWhatIsWrittenHasTheCautionsBeforeTheMarks(t *testing.T) {
	text := writtenInLines(t, jobOfCases(t, "24-everything.toml"), aloud.Unbroken)
	gate, figures := strings.Index(text, drillingTitle), strings.Index(text, "cut centre as meant, not made")
	require.Positive(t, gate)
	assert.Less(t, gate, figures)
	s := working(t, jobOfCases(t, "24-everything.toml")).desk.State
	for _, when := range drillingOccasions {
		for _, c := range rules.CautionsFor(when, &s.Result) {
			assert.Contains(t, text[gate:figures], c.Say)
		}
	}
}

func writtenInLines(t testing.TB, file string, w int) string {
	var out bytes.Buffer
	require.NoError(t, WritePlain(Options{Path: file, Book: rules.Builtin(), Screens: Screens()}, &out, w))
	return out.String()
}

func TestAJobThatIsNotThereIsOneClearLine(t *testing.T) {
	var out bytes.Buffer
	err := WritePlain(Options{Path: filepath.Join(t.TempDir(), "none.toml"), Book: rules.Builtin(), Screens: Screens()}, &out, 80)
	assert.ErrorIs(t, err, os.ErrNotExist)
	assert.NotContains(t, err.Error(), "\n")
	assert.Empty(t, out.String())
}

// sayable asks that no line steers a terminal, is drawn, ends in blanks or is wider than w.
func sayable(t require.TestingT, text string, w int) {
	for line := range strings.SplitSeq(text, "\n") {
		require.Equal(t, strings.TrimRight(line, " "), line)
		require.LessOrEqual(t, ansi.StringWidth(line), w, line)
		for _, r := range line {
			drawn := r >= 0x2190 && r <= 0x21FF || r >= 0x2300 && r <= 0x25FF || r >= 0x2800 && r <= 0x28FF
			require.False(t, unicode.IsControl(r) || drawn, "%q in %q", r, line)
		}
	}
}

// Whatever others wrote into a job, however wide the terminal.
func TestNoLineSteersOrDraws(t *testing.T) {
	ofWholeRun(t)
	for _, bad := range []string{evil, "│ ┃ ▒ ⣿ ▶ ☐ †", "  ", strings.Repeat("word", 40), "世界", "\x1b[2J\x1b]0;x\a"} {
		name := strings.Map(func(r rune) rune {
			if unicode.IsControl(r) {
				return -1 // no name may have it
			}
			return r
		}, bad)
		job := spoilt(vehicles.Demo(), func(s string) string { return s + name }, func(s string) string { return s + bad })
		file := filepath.Join(t.TempDir(), "van.toml")
		require.NoError(t, os.WriteFile(file, job.Format(), 0o600))
		p := &plainly{Root: working(t, file)}
		p.begin()
		lines := p.everything()
		for w := aloud.LeastWidth; w < 140; w += 7 {
			sayable(t, strings.Join(aloud.Broken(lines, w), "\n"), w)
		}
	}
}

// Whatever keys are pressed, what is heard is sayable too, but for the text that is being typed, which a terminal breaks.
func TestWhateverIsPressedIsSayable(t *testing.T) {
	ofWholeRun(t)
	for seed := range uint64(3) {
		van := screentest.Van(t)
		e := heardOn(t, &van)
		for _, msg := range pressesOf(seed, 150) {
			e.out.Reset()
			e.send(msg)
			text := strings.ReplaceAll(e.out.String(), "\r\n", "\n")
			sayable(t, strings.TrimRight(text, " "), aloud.UsualWidth)
			if e.quit || e.overlay() != nil && len(e.overlays) > 3 {
				break
			}
		}
	}
}

// pressesOf are keys that somebody might press without thinking.
func pressesOf(seed uint64, n int) (msgs []tea.Msg) {
	random := rand.New(rand.NewPCG(seed, seed))
	for len(msgs) < n {
		if msg, isKey := anything(random, 100, 30)[0].(tea.KeyMsg); isKey {
			msgs = append(msgs, msg)
		}
	}
	return msgs
}
