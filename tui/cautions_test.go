package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// dangerousVan is the sample with its fuel a mystery and a battery of high voltage, both near a cut that has a place.
func dangerousVan() vehicles.Job {
	job := vehicles.Demo()
	battery := vehicles.Obstruction{Name: "traction battery", Kind: "traction battery", Measured: true}
	battery.Drop = vehicles.Span{From: 130, To: 300, Set: true}
	tank := battery
	tank.Name, tank.Kind = "second tank", "fuel tank"
	battery.Place, tank.Place = box(1450, -300, 1800, -100), box(1650, 350, 1900, 390)
	job.Obstructions = append(append(vehicles.List[vehicles.Obstruction]{}, job.Obstructions...), battery, tank)
	cut := *job.Cut
	cut.At[0] += 150
	return job.WithCut(cut)
}

func box(lowX, lowY, highX, highY float64) (p vehicles.Place) {
	at := func(mm float64) survey.Reading { return survey.FromNumber(mm, false) }
	p.X, p.Y = vehicles.Pair{at(lowX), at(highX)}, vehicles.Pair{at(lowY), at(highY)}
	return p
}

// begun is the program with its own screens on a job, in a window of 60 by 20.
func begun(t *testing.T, job vehicles.Job) *bench {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: leastWidth, Height: leastHeight})
	return b
}

// scrolled is all that is seen of the text that lies over the screens while it is turned to its end, on one line.
func (b *bench) scrolled() string {
	var seen []string
	for {
		rows := b.rows()
		for _, row := range rows[headRows+2 : len(rows)-noteRows-footRows] {
			if row = strings.TrimSpace(row); row != "" && !strings.HasSuffix(row, " below") && !slices.Contains(seen, row) {
				seen = append(seen, row)
			}
			if row == "the end" {
				return strings.Join(seen, " ")
			}
		}
		b.press("down")
	}
}

// Each caution is read where it is needed, at the smallest window too, and on no screen twice.
func TestEveryCautionIsShownWhereItIsNeeded(t *testing.T) {
	b := begun(t, dangerousVan())
	require.Len(t, rules.Dangers(&b.desk.State.Result), 2)
	for when, open := range map[rules.Occasion]func(){
		rules.EveryTime:      func() { b.do(b.ask(desk.BeforeDrilling)) },
		rules.BeforeDrilling: func() { b.do(b.ask(desk.BeforeDrilling)) },
		rules.FirstRun:       func() { b.press("8", "f") },
	} {
		open()
		seen := b.scrolled()
		b.shut(b.overlay())
		for _, c := range rules.Cautions() {
			if c.Occasion == when {
				assert.Equal(t, 1, strings.Count(seen, c.Say), c.About)
			}
		}
	}
	b.do(b.ask(desk.Cautions))
	seen := b.scrolled()
	b.shut(b.overlay())
	for _, c := range rules.Cautions() {
		assert.Equal(t, 1, strings.Count(seen, c.Say), c.About)
	}

	b.press("2", "down", "down", "down", "down")
	form := wordsOf(b)
	for _, c := range rules.Cautions() {
		if c.Occasion == rules.FittingHeater {
			assert.Equal(t, 1, strings.Count(form, c.Say), "%s\n%s", c.About, strings.Join(b.rows(), "\n"))
		}
	}
}

// What endangers whoever drills in this job stands on every screen where the job is worked on.
func TestDangersStandWhereTheJobIsWorkedOn(t *testing.T) {
	safe := vehicles.Demo()
	for name, keys := range map[string][]string{
		"Underneath": {"1"}, "Place": {"4"}, "before the first mark": {"6", "l"}, "a mark": {"6", "l", "m", "enter*"},
	} {
		for _, dangerous := range []bool{true, false} {
			job := safe
			if dangerous {
				job = dangerousVan()
			}
			b := begun(t, job)
			for _, k := range keys {
				if k != "enter*" {
					b.press(k)
					continue
				}
				for b.overlay() != nil {
					b.press("enter")
				}
			}
			for _, c := range rules.Cautions() {
				if c.Brief != "" {
					assert.Equal(t, map[bool]int{true: 1}[dangerous], strings.Count(wordsOf(b), c.Brief), "%s: %s\n%s", name, c.Brief, strings.Join(b.rows(), "\n"))
				}
			}
		}
	}
}

// wordsOf are those on the screen, on one line, the rulers and the plan among them.
func wordsOf(b *bench) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(ansi.Strip(strings.Join(b.rows(), " ")), "! ", "")), " ")
}

func TestNoCautionIsAskedForThatDoesNotApply(t *testing.T) {
	b := begun(t, vehicles.Demo())
	b.do(b.ask(desk.BeforeDrilling))
	whole := strings.Join(b.overlay().(*reader).text(&b.desk.State.Result, desk.Styles{}, 10000), "\n")
	assert.NotContains(t, whole, "High voltage")
	assert.NotContains(t, whole, "Petrol\n")
	assert.Contains(t, whole, "Nobody under the van")
	assert.NotContains(t, whole, "dry grass", "that is for the first run")
	_, err := os.Stat(filepath.Join(b.options.StateDir, "cautions-read"))
	assert.NoError(t, err)
}

// At the first start stands what holds whatever is done, on about a screen; all the rest is on one key.
func TestTheFirstStartIsAboutAScreen(t *testing.T) {
	for _, size := range [][2]int{{leastWidth, leastHeight}, {100, 30}, {160, 50}} {
		o := options(t)
		o.Screens, o.StateDir = Screens(), t.TempDir()
		require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o644))
		b := started(t, o)
		b.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		require.NotNil(t, b.overlay())
		rows, room := b.overlay().(*reader).page(b.Root, b.w, b.bodyHeight())
		assert.LessOrEqual(t, len(rows), room, "%v\n%s", size, strings.Join(rows, "\n"))
		b.press("enter")
		require.Nil(t, b.overlay(), "%v: read", size)
		b.do(b.ask(desk.BeforeDrilling))
		assert.NotContains(t, wordsOf(b), "kills without a smell", "nothing is read twice in a run")
		b.shut(b.overlay())
		b.press("!")
		for seen := b.scrolled(); ; {
			for _, c := range rules.Cautions() {
				assert.Equal(t, 1, strings.Count(seen, c.Say), c.About)
			}
			break
		}
		b.press("esc")
		assert.Nil(t, b.overlay())
	}
}
