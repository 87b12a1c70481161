package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// needs skips a test where a program that it asks is not installed.
func needs(t *testing.T, programs ...string) {
	for _, program := range programs {
		if _, err := exec.LookPath(program); err != nil {
			t.Skip(program + " is not installed")
		}
	}
}

// printed is a job's sheet in a file.
func printed(t *testing.T, job string, args ...string) string {
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	code, _, complaint := call("", append([]string{"sheet", job, "-o", file}, args...)...)
	require.Zero(t, code, complaint)
	return file
}

// jobOf is a job in a file.
func jobOf(t *testing.T, job vehicles.Job) string {
	file := filepath.Join(t.TempDir(), "job.toml")
	require.NoError(t, os.WriteFile(file, job.Format(), 0o600))
	return file
}

// pagesOf are what poppler reads on the pages of a file, in the order in which it was written, blanks left out.
func pagesOf(t *testing.T, file string) []string {
	needs(t, "pdftotext")
	told, err := exec.Command("pdftotext", "-raw", file, "-").CombinedOutput()
	require.NoError(t, err, string(told))
	pages := strings.Split(strings.TrimSuffix(string(told), "\f"), "\f")
	for i, page := range pages {
		pages[i] = tight(page)
	}
	return pages
}

// tight is a text without blanks.
func tight(text string) string { return strings.Join(strings.Fields(text), "") }

// Independent readers take the file: qpdf finds no fault, poppler the pages in their size, and each font is embedded.
func TestASheetIsAFileThatOthersRead(t *testing.T) {
	notRaced(t)
	needs(t, "qpdf", "pdfinfo", "pdffonts")
	job := demoFile(t)
	for paper, size := range map[string]string{"a4": "595.28 x 841.89 pts (A4)", "letter": "612 x 792 pts (letter)"} {
		for _, reader := range []string{forFitter, forCustomer} {
			file := printed(t, job, "--paper", paper, "--for", reader)
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			again, err := os.ReadFile(printed(t, job, "--paper", paper, "--for", reader))
			require.NoError(t, err)
			assert.True(t, bytes.Equal(data, again), "the same job is the same bytes")
			told, err := exec.Command("qpdf", "--check", file).CombinedOutput()
			assert.NoError(t, err, string(told))
			told, err = exec.Command("pdfinfo", file).CombinedOutput()
			require.NoError(t, err, string(told))
			assert.Contains(t, string(told), size)
			told, err = exec.Command("pdffonts", file).CombinedOutput()
			require.NoError(t, err, string(told))
			fonts := strings.Split(strings.TrimSpace(string(told)), "\n")[2:]
			assert.NotEmpty(t, fonts)
			for _, font := range fonts {
				assert.Regexp(t, `TrueType +Identity-H +yes \w+ +yes `, font, "embedded, and its letters are known")
			}
		}
	}
}

// Each page says of what job it is, how that stands and which of how many it is.
func TestEachPageSaysWhatItIs(t *testing.T) {
	pages := pagesOf(t, printed(t, demoFile(t)))
	for i, page := range pages {
		assert.Equal(t, 2, strings.Count(page[len(page)-250:], "TL-07"), "either half of the fold has the job")
		assert.Contains(t, page, tight(fmt.Sprintf("page %d of %d", i+1, len(pages))))
		assert.Contains(t, page, tight("the place is foul"))
	}
	assert.Greater(t, len(pages), 4)
}

// The sample comes out on few pages, none of which but the last holds less than a few lines: what spills over by a line is set anew.
func TestTheSampleTakesFewPages(t *testing.T) {
	notRaced(t)
	for paper, most := range map[string]int{"a4": 11, "letter": 11} {
		file := filepath.Join(t.TempDir(), "s.pdf")
		code, _, complaint := call("", "sheet", demoFile(t), "--paper", paper, "-o", file)
		require.Zero(t, code, complaint)
		pages := pagesOf(t, file)
		assert.LessOrEqual(t, len(pages), most, paper)
		for i, page := range pages[:len(pages)-1] {
			assert.Greater(t, len(page), 600, "%s, page %d", paper, i+1)
		}
	}
}

// Every mark stands on the first page with the figures that programs get.
func TestMarksOnPaperAreThoseOfPrograms(t *testing.T) {
	job := demoFile(t)
	_, out, _ := call("", "marks", job, "--json")
	type mark struct {
		Name  string
		Below struct{ Bumper, Left, Right float64 }
		Above *struct {
			X, Y, Bumper, Left, Right float64
			PinLeft                   float64 `json:"pin_left"`
			PinRight                  float64 `json:"pin_right"`
			Sigma                     [2]float64
		}
	}
	var sheet struct {
		Marks, Stubs []mark
		Checks       []struct {
			Name, From, To string
			Length         float64
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &sheet))
	require.Greater(t, len(sheet.Marks), 10)
	pins := 0.0
	for _, c := range sheet.Checks {
		if c.Name == "pins apart" {
			pins = c.Length / 2
		}
	}
	require.Positive(t, pins)
	sheet.Marks = append(sheet.Marks, sheet.Stubs...)
	page := pagesOf(t, printed(t, job))[0]
	for _, m := range sheet.Marks {
		name := strings.Replace(m.Name, "bolt", "bolt hole", 1) // what people call it
		row := survey.Figure(m.Below.Bumper) + survey.Figure(m.Below.Left) + survey.Figure(m.Below.Right)
		if a := m.Above; a != nil {
			off := func(axis int) string { return desk.PlusMinus95(a.Sigma[axis], desk.Millimetres) }
			along := func(across float64) string { // of a tape from a pin, at the datum, so far beside the mark
				return desk.PlusMinus95(math.Hypot(a.X*a.Sigma[0], across*a.Sigma[1])/math.Hypot(a.X, across), desk.Millimetres)
			}
			row += survey.Figure(a.Bumper) + off(0) + survey.Figure(a.Left) + survey.Figure(a.Right) + off(1) +
				survey.Figure(a.PinLeft) + along(a.Y-pins) + survey.Figure(a.PinRight) + along(a.Y+pins)
		}
		assert.Regexp(t, regexp.QuoteMeta(tight(name))+"[a-z]*"+regexp.QuoteMeta(tight(row)), page, "corners are called by the van, too")
	}
	for _, c := range sheet.Checks {
		assert.Contains(t, page, tight(c.From+" to "+c.To+survey.Figure(c.Length)))
	}
}

// Every finding stands on the sheet with its figure, those that are not clear with all that is said of them, and every source.
func TestFindingsOnPaper(t *testing.T) {
	notRaced(t)
	for _, file := range append(sampleJobs(t)[:6:6], demoFile(t)) {
		if !strings.Contains(file, "demo") && expectedOf(t, file).Check == nil {
			continue
		}
		job, err := vehicles.Load(file)
		require.NoError(t, err)
		result, faults := rules.Judge(job.Job, rules.Builtin())
		require.Empty(t, faults)
		paper := strings.Join(pagesOf(t, printed(t, file)), "")
		told := words.OnPaper()
		for _, row := range apartRows(&result) {
			assert.Regexp(t, row, paper)
		}
		for _, f := range result.Findings {
			if _, _, apart := f.Apart(); f.Verdict == rules.Clear && apart && told.WhyClear(f) == "" {
				continue // in a row
			}
			if f.Verdict == rules.Clear {
				assert.Contains(t, paper, tight(f.About()+told.Short(f, f.Value)))
				assert.Contains(t, paper, tight(told.WhyClear(f)))
				continue
			}
			assert.Contains(t, paper, tight(f.Verdict.String()))
			assert.Contains(t, paper, tight(f.About()+words.Value(f, desk.Millimetres)))
			assert.Contains(t, paper, tight(f.Why))
			if f.Source != "" {
				assert.Contains(t, paper, tight(f.Source))
			}
		}
		for _, lacking := range words.NotKnown(&result) {
			assert.Contains(t, paper, tight(lacking.Title+": "+strings.Join(lacking.Items, ", ")))
		}
		for _, c := range result.Job.Obstructions {
			assert.Contains(t, paper, tight(c.Name))
		}
	}
}

// apartRows are the rows that a sheet is to have of the things that parts keep from, as poppler reads them: for each part in turn what is
// found and asked for, or how else it is judged. The letter of who asks is any.
func apartRows(r *rules.Result) (rows []string) {
	columns := [][]rules.Sort{{rules.TheCut}, {rules.ABolt, rules.AFuelHole}, {rules.TheExhaust}, {rules.TheIntake}, {rules.TheFuel, rules.TheFuelStub}}
	said, told := map[string][]string{}, words.OnPaper()
	for _, f := range r.Findings {
		part, thing, apart := f.Apart()
		if !apart {
			continue
		}
		if said[thing] == nil {
			said[thing] = make([]string, len(columns))
		}
		cell := f.Verdict.String()
		switch {
		case f.Verdict != rules.Clear:
		case told.WhyClear(f) != "":
			cell += ",below"
		default:
			cell = regexp.QuoteMeta(tight(told.Short(f, f.Value)+told.PlusMinus(f)+"≥"+told.Short(f, f.Required.Value))) + "[a-z]+"
			if f.Weight == rules.Kills {
				cell = "†" + cell
			}
			if part.Sort == rules.ABolt {
				cell += fmt.Sprintf(`\(%d\)`, part.Index+1)
			}
			if part.Sort == rules.AFuelHole {
				cell += `\(fuel\)`
			}
		}
		said[thing][slices.IndexFunc(columns, func(of []rules.Sort) bool { return slices.Contains(of, part.Sort) })] += cell
	}
	for thing, cells := range said {
		rows = append(rows, regexp.QuoteMeta(tight(thing))+strings.Join(cells, ""))
	}
	return rows
}

// What is clear although its margin is less than its ± stands in words, with from when on it is clear: the figures alone would say that it
// is too close to call.
func TestClearWithinItsSpreadSaysWhyOnPaper(t *testing.T) {
	job := vehicles.Demo().WithRule("fuel.clearance.chassis rail", 17.9) // of 20.75, ± 3.2: 2.85 to spare
	paper := strings.Join(pagesOf(t, printed(t, jobOf(t, job))), "")
	assert.Contains(t, paper, tight("fuel line: chassis rail, left 20.8 ± 3.2 ≥ 17.9"))
	assert.Contains(t, paper, tight("clear from 2.7 mm to spare on: 95 % sure that it isn't short"))
	assert.Regexp(t, "chassisrail,left.{1,90}clear,below", paper)
}

// dots is a page as poppler paints it: red, green and blue a dot.
type dots struct {
	wide, high int
	rgb        []byte
}

func painted(t *testing.T, file string, perInch int) (pages []dots) {
	needs(t, "pdftoppm")
	dir := t.TempDir()
	told, err := exec.Command("pdftoppm", "-r", strconv.Itoa(perInch), file, filepath.Join(dir, "p")).CombinedOutput()
	require.NoError(t, err, string(told))
	names, err := filepath.Glob(filepath.Join(dir, "*.ppm"))
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		var page dots
		var most int
		_, err = fmt.Fscanf(bytes.NewReader(data), "P6\n%d %d\n%d\n", &page.wide, &page.high, &most)
		require.NoError(t, err)
		page.rgb = data[len(data)-3*page.wide*page.high:]
		pages = append(pages, page)
	}
	return pages
}

// Nothing is printed where no printer prints, nothing but the fold's marks stands aside of the text, and nothing has a colour.
func TestMarginsAreWhiteAndAllIsBlack(t *testing.T) {
	notRaced(t)
	for job, sheets := range map[string][][]string{
		demoFile(t): {{}, {"--paper", "letter"}, {"--for", "customer"}}, hostileFile(t): {{}, {"--for", "customer"}}, jobOf(t, manyThings()): {{}},
	} {
		for _, args := range sheets {
			const perInch = 60
			for n, page := range painted(t, printed(t, job, args...), perInch) {
				inked, stray, coloured := page.counted(perInch / 25.4)
				assert.Zero(t, coloured, "%v, page %d: dots with a colour", args, n+1)
				assert.Zero(t, stray, "%v, page %d: dots in the margin", args, n+1)
				assert.Greater(t, inked, 1000)
			}
		}
	}
}

// counted are how many dots have ink, how many of those stand in the margin, and how many have a colour.
func (d *dots) counted(perMM float64) (inked, stray, coloured int) {
	const white = 250
	for i := 0; i < len(d.rgb); i += 3 {
		if d.rgb[i] != d.rgb[i+1] || d.rgb[i] != d.rgb[i+2] {
			coloured++
		}
		if d.rgb[i] > white {
			continue
		}
		inked++
		x, y := i/3%d.wide, i/3/d.wide
		side := float64(min(x, d.wide-x)) / perMM
		off := min(side, float64(min(y, d.high-y))/perMM)
		fold := abs(x-d.wide/2) < 3 || abs(y-d.high/2) < 3
		if off < 7 || !fold && (off < 11.6 || side < 15) {
			stray++
		}
	}
	return inked, stray, coloured
}

func abs(n int) int { return max(n, -n) }

// manyThings is the sample with sixty obstructions more, of long names.
func manyThings() vehicles.Job {
	job := vehicles.Demo()
	for i := range 60 {
		o := job.Obstructions[3]
		o.Name = fmt.Sprintf("bracket %d that somebody welded on behind the second crossmember", i)
		job.Obstructions = append(job.Obstructions[:len(job.Obstructions):len(job.Obstructions)], o)
	}
	for i := range 1500 {
		job.Notes += fmt.Sprintf("note%d. ", i)
	}
	return job
}

func hostileFile(t *testing.T) string {
	job := filepath.Join(t.TempDir(), "job.toml")
	require.NoError(t, os.WriteFile(job, []byte(hostileJob(t)), 0o600))
	return job
}

// A table that takes several pages has its head on each, under the section's heading; nothing of a long list is lost.
func TestLongTablesGoOnUnderTheirHeads(t *testing.T) {
	job := manyThings()
	pages := pagesOf(t, printed(t, jobOf(t, job)))
	all := strings.Join(pages, "")
	heads := 0
	for _, page := range pages {
		if strings.Contains(page, "belowthefloor") && strings.Contains(page, "bracket") && strings.Contains(page, "underthefloor") {
			heads++
			assert.Contains(t, page, tight("Underneath: what is there"))
		}
	}
	assert.Greater(t, heads, 2)
	for _, o := range job.Obstructions {
		assert.Contains(t, all, tight(o.Name))
	}
	for i := range 1500 {
		assert.Contains(t, all, fmt.Sprintf("note%d.", i))
	}
}

// Text of others is printed harmless and whole: names that are longer than a page is wide, or of letters that no font has.
func TestHostileTextOnPaper(t *testing.T) {
	job := vehicles.Demo()
	long := strings.Repeat("verylongname", 40)
	job.Ref, job.Vehicle, job.Fitter = long, "van\u202e 漢字 "+long, "=cmd()"
	o := job.Obstructions[0]
	o.Name = long
	job.Obstructions = job.Obstructions.With(0, o)
	pages := pagesOf(t, printed(t, jobOf(t, job)))
	all := strings.Join(pages, "")
	assert.NotContains(t, all, "\u202e")
	assert.NotContains(t, all, "\x1b")
	assert.Contains(t, all, "van□□□"+long[:20])
	assert.GreaterOrEqual(t, strings.Count(all, long), 3, "reference, van and obstruction are there in full")
	assert.Contains(t, all, "…", "the head has room for a part of it alone")
}

// Whoever has the sheet alone finds where the pins stand, how a mark is set, whose clips are marked, and the template among what is at hand.
func TestTheSheetAloneSaysHowMarksAreSet(t *testing.T) {
	notRaced(t)
	all := strings.Join(pagesOf(t, printed(t, demoFile(t))), "")
	for _, said := range []string{
		"pins 700 mm off the centreline, on the bumper edge", "Read the cautions before anything else: page 8", "A mark lies where two tapes cross, from the bumper edge and from a side; the pins' arcs check it.",
		"exhaust's clip 1", "the template, printed at 100 %, either face",
	} {
		assert.Contains(t, all, tight(said))
	}
	for _, said := range []string{
		"3200 long from 40 on, 1780 wide, up to 31 thick, 460 up", "free before its warm air 200, behind 150, beside 50, over it 50", "side edges below the sills' outer flanges",
		"below 888 to the left edge, 887 right; above 884, 883", "oil it, and let up before it is through", "Here: the control on the left wall", "Here: 4 bolts, 45 mm long at least",
		"A figure without a source is common practice, no source.", "the hole's centre is planned at 1263.9, left 693, right 1082:",
	} {
		assert.Contains(t, all, tight(said))
	}
	assert.Equal(t, 4, strings.Count(all, tight("Not while foul: cut: brake pipe across, and 3 more. See Checks.")), "pilot, saw, screws and clips")
	job := vehicles.Demo()
	job.Datum.EdgesBelow = ""
	assert.Contains(t, strings.Join(pagesOf(t, printed(t, jobOf(t, job))), ""), tight("side edges below nobody has said which: ask whoever measured"))
	job = vehicles.Demo()
	job.Datum.PinsOn = vehicles.Batten
	assert.Contains(t, strings.Join(pagesOf(t, printed(t, jobOf(t, job))), ""), tight("centreline, marked on a straight batten along the"))
}

// The first page says on which page each section begins, and there it does.
func TestTheFirstPageSaysWhereAllIs(t *testing.T) {
	notRaced(t)
	for _, paper := range []string{"a4", "letter"} {
		pages := pagesOf(t, printed(t, demoFile(t), "--paper", paper))
		_, index, found := strings.Cut(pages[0], tight("On which page:"))
		require.True(t, found)
		begins := map[string]string{
			"On top": "On top: the floor", "Underneath": "Underneath: what is there", "The runs": "The runs: how they fall", "Checks": "Checks: every clearance",
			"Cut list": "Cut list: what the runs", "Parts": "Parts: to order", "Sizes": "Sizes: floor, fuel", "Cautions": "Cautions: read before", "The work": "The work, step by step",
			"Notes": "A sample to try things on", "Signed off": "Whoever signs has seen",
		}
		for name, heading := range begins {
			i := slices.IndexFunc(pages, func(page string) bool { return strings.Contains(page, tight(heading)) })
			require.GreaterOrEqual(t, i, 0, heading)
			assert.Regexp(t, tight(name)+fmt.Sprint(i+1)+"[;.]", index, "%s, %s", paper, name)
		}
	}
}

// What a job does not have is not printed empty.
func TestASheetOfLittle(t *testing.T) {
	bare := vehicles.Demo()
	bare.Cut, bare.Heater, bare.Exhaust, bare.Intake, bare.Fuel, bare.Notes = nil, nil, nil, nil, nil, ""
	pages := strings.Join(pagesOf(t, printed(t, jobOf(t, bare))), "")
	for _, absent := range []string{"The runs", "Cut list", "Notes", "Near the cut"} {
		assert.NotContains(t, pages, tight(absent))
	}
	for _, there := range []string{"Underneath", "Cautions", "Signed off", "the cut has no place yet"} {
		assert.Contains(t, pages, tight(there))
	}
	assert.NotContains(t, pages, tight("the place is"))
	noRuns := vehicles.Demo()
	noRuns.Exhaust, noRuns.Intake, noRuns.Fuel = nil, nil, nil
	pages = strings.Join(pagesOf(t, printed(t, jobOf(t, noRuns))), "")
	assert.Contains(t, pages, tight("Near the cut"))
	assert.NotContains(t, pages, tight("The runs: how"))
	page := pagesOf(t, printed(t, jobOf(t, bare), "--for", "customer"))
	require.Len(t, page, 1)
	assert.Contains(t, page[0], tight("No heater has been given a place."))
}

// The page for the customer is one page for every van of the library, says what is where, and no word of the trade's jargon.
func TestTheCustomersPage(t *testing.T) {
	notRaced(t)
	for _, job := range append(libraryFiles(t), demoFile(t)) {
		pages := pagesOf(t, printed(t, job, "--for", "customer"))
		assert.Len(t, pages, 1, job)
		assert.Len(t, pagesOf(t, printed(t, job, "--for", "customer", "--paper", "letter")), 1, job)
		assert.Contains(t, pages[0], tight("as the heater's own instructions say"))
		for _, jargon := range []string{"crossmember", "datum", "yaw", "clearance", "sigma", "doubtful", "foul", "stub", "EN ISO"} {
			assert.NotContains(t, strings.ToLower(pages[0]), jargon)
		}
	}
	page := pagesOf(t, printed(t, demoFile(t), "--for", "customer"))[0]
	assert.Equal(t, 2, strings.Count(page, tight(vehicles.Demo().Vehicle)), "whole in the head, too")
	for _, said := range []string{
		"1.26 m forward of the bumper edge, 0.20 m left of the van's middle. It blows its warm air to the rear.",
		"ends at the van's left, 1.37 m forward of the bumper edge, 0.87 m left of the van's middle", "It burns diesel",
		"6 things are where they must not be and 6 things are in doubt. Don't run the heater",
		"The first is on the day that you agree with the fitter.", "looked at on", "serviced on",
		"It is switched on and off at its control: on the left wall over the battery box, 1.2 m up. Its fuse is at the battery: in the battery box at the left wall.",
	} {
		assert.Contains(t, page, tight(said))
	}
}

// The days that were agreed stand on it.
func TestTheCustomersDays(t *testing.T) {
	job := vehicles.Demo().WithDone(vehicles.Done{Step: "retorque", Due: "2026-12-11"}).WithDone(vehicles.Done{Step: "service-agreed", Due: "2027-10-01"})
	page := pagesOf(t, printed(t, jobOf(t, job), "--for", "customer"))[0]
	assert.Contains(t, page, tight("fuel line looked at on 2026-12-11, as agreed."))
	assert.Contains(t, page, tight("The first is on 2027-10-01, as agreed."))
}

// What is said of runs that has no place along them: shields, the fuel, clips that nobody has spoken of.
func TestWhatIsSaidOfRunsOnPaper(t *testing.T) {
	job := vehicles.Demo()
	exhaust, intake := *job.Exhaust, *job.Intake
	exhaust.Shielded = vehicles.Shields{Names: []string{"brake pipe across", "fuel tank"}}
	intake.Clips = nil
	job = job.WithRun(vehicles.ExhaustRun, &exhaust).WithRun(vehicles.IntakeRun, &intake)
	all := strings.Join(pagesOf(t, printed(t, jobOf(t, job))), "")
	for _, said := range []string{"heat shields stand before: brake pipe across, fuel tank", "nobody has said where its clips are", "it carries diesel"} {
		assert.Contains(t, all, tight(said))
	}
}

// libraryFiles are the vans of the library as new jobs.
func libraryFiles(t *testing.T) (files []string) {
	names, err := filepath.Glob("../../vehicles/library/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	return names
}

func TestEverySampleJobIsPrinted(t *testing.T) {
	notRaced(t)
	for _, job := range sampleJobs(t) {
		if expectedOf(t, job).Check == nil {
			continue
		}
		printed(t, job)
		printed(t, job, "--for", "customer")
	}
}

func TestASheetThatCannotBePrintedSaysWhy(t *testing.T) {
	job, out := demoFile(t), filepath.Join(t.TempDir(), "s.pdf")
	for want, args := range map[string][]string{
		`--paper "a3": say a4 or letter`:       {job, "-o", out, "--paper", "a3"},
		`-o "": name a file that ends in .pdf`: {job},
		`--for "me": say fitter or customer`:   {job, "-o", out, "--for", "me"},
		"sheet needs one job file":             {"-o", out},
	} {
		code, _, complaint := call("", append([]string{"sheet"}, args...)...)
		assert.Equal(t, exitUsage, code, complaint)
		assert.Contains(t, complaint, want)
		assert.Equal(t, 1, strings.Count(complaint, "\n"), complaint)
	}
	assert.NoFileExists(t, out)
	code, _, complaint := call("", "sheet", job, "-o", job)
	assert.Equal(t, exitUsage, code, complaint)
}

// What was made otherwise stands on the sheet with both margins, and the customer's page is of the van as it is.
func TestAsBuiltOnPaper(t *testing.T) {
	notRaced(t)
	job := vehicles.Demo()
	clear := *job.Cut
	clear.At = [2]float64{1405, 195}
	planned := job.WithCut(clear)
	hit := clear
	hit.At = [2]float64{1255, 195}
	built := planned.WithBuilt(vehicles.Built{Cut: &hit})
	file := jobOf(t, built)
	pages := strings.Join(pagesOf(t, printed(t, file)), "")
	assert.Contains(t, pages, tight("As built: what came out otherwise than planned"))
	assert.Contains(t, pages, tight("Made otherwise: cut."))
	assert.Contains(t, pages, tight("foul cut along 1405 1255 -150"), "typed without a reading")
	assert.NotContains(t, pages, tight("farther off"))
	assert.Contains(t, pages, tight("84.6 mm short"), "the brake pipe, as built")
	read := planned.ReadSawn(clear, survey.X, survey.FromNumber(1264, true))
	pages = strings.Join(pagesOf(t, printed(t, jobOf(t, planned.WithBuilt(vehicles.Built{Cut: &read})))), "")
	assert.Contains(t, pages, tight("foul cut along 1405 1255.1 -149.9 ± 1.6"))
	assert.Contains(t, pages, tight("The hole is farther off than marks and tapes explain"))
	customer := pagesOf(t, printed(t, file, "--for", "customer"))[0]
	assert.Contains(t, customer, tight("Not settled when this was printed"))
	assert.Contains(t, customer, tight("1.26 m forward"))
	assert.NotContains(t, strings.Join(pagesOf(t, printed(t, jobOf(t, planned))), ""), tight("As built:"))
}
