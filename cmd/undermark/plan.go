package main

import (
	"bytes"
	"fmt"
	"image/png"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// planFlags say what of a job is drawn.
type planFlags struct {
	out    string
	view   string
	around float64
}

func planCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f planFlags
	c := &cobra.Command{
		Use:   "plan JOB -o FILE",
		Short: "Draw the van for paper",
		Long: "The picture of the screens as lines in black, on a page of A4 across, with rulers: SVG, PDF or PNG, as FILE ends.\n" +
			"It is not to a round scale: measure nothing on it.\n" +
			"--from \"along the exhaust\", the intake or the fuel line, shows that run laid out straight: how it falls, in mm per\n" +
			"metre on each leg, what it passes under or over, and what it comes nearer to than is asked.",
		Example: "  undermark plan van.toml -o van.pdf\n  undermark plan van.toml --from \"along the exhaust\" -o falls.svg",
		Args:    oneJob, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error { return f.draw(args[0], shared, s) },
	}
	c.Flags().StringVarP(&f.out, "output", "o", "", "draw on `FILE`, which ends in .svg, .pdf or .png")
	c.Flags().StringVar(&f.view, "from", scene.Below.Projection().From, "seen from `WHERE`: "+strings.Join(viewNames(), ", ")+"; else "+scene.Below.Projection().From)
	c.Flags().Float64Var(&f.around, "around", 0, "only so many `MM` round the cut")
	_ = c.MarkFlagFilename("output", "svg", "pdf", "png") // fails only for a flag that isn't there
	return c
}

func oneJob(c *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("%s needs one job file, or - for standard input", c.Name())
	}
	return nil
}

// views are those of the whole van.
func views() []scene.View {
	all := []scene.View{scene.Below}
	for v := scene.Below.Next(); v != scene.Below; v = v.Next() {
		all = append(all, v)
	}
	return append(append(all, scene.Sides[:]...), scene.FromLeft)
}

// viewNames are the views by where they look from.
func viewNames() (names []string) {
	for _, v := range views() {
		names = append(names, v.Projection().From)
	}
	for _, of := range vehicles.RunKinds {
		names = append(names, alongThe+of.String())
	}
	return names
}

func viewNamed(name string) (scene.View, error) {
	for _, v := range views() {
		if v.Projection().From == name {
			return v, nil
		}
	}
	return 0, fmt.Errorf("--from %q: the van is seen from %s", name, strings.Join(viewNames(), ", ")+"; else "+scene.Below.Projection().From)
}

// draw draws a job's plan on the file.
func (f *planFlags) draw(job string, shared *sharedFlags, s streams) error {
	run, along := runNamed(f.view)
	view, err := viewNamed(f.view)
	if err != nil && !along {
		return err
	}
	ink, known := inks[strings.ToLower(filepath.Ext(f.out))]
	switch {
	case !known:
		return fmt.Errorf("-o %q: name a file that ends in .svg, .pdf or .png", f.out)
	case f.around < 0 || !isPlace(f.around):
		return fmt.Errorf("--around %g: give mm, more than 0", f.around)
	case along && f.around > 0:
		return fmt.Errorf("--around is of the whole van: a run is shown whole, leave it out")
	}
	if along {
		return draws(f.out, job, shared, s, func(r rules.Result) ([]byte, error) { return drawAlong(ink, r, run) })
	}
	return draws(f.out, job, shared, s, func(r rules.Result) ([]byte, error) {
		if f.around > 0 && r.Job.Cut == nil {
			return nil, lacking{Key: "cut", Text: "there is no [cut] to draw round: place it, or leave --around out"}
		}
		return ink(harmless.Text(r.Job.Ref), func(b vector.Board) { drawPlan(b, r, view, f.around) })
	})
}

// draws writes the file out with what is drawn of a judged job, over nothing that it is drawn from.
func draws(out, job string, shared *sharedFlags, s streams, draw func(rules.Result) ([]byte, error)) error {
	f := answerFlags{out: out}
	if err := f.spares([]string{job, shared.path()}, s); err != nil {
		return err
	}
	book, err := shared.load()
	if err != nil {
		return err
	}
	_, _, err = answer(job, book, s.in, func(r rules.Result) (string, error) {
		data, err := draw(r)
		if err != nil {
			return "", err
		}
		return "", vehicles.WriteLike(f.from, out, data)
	})
	if err != nil {
		s.complain(err)
		return exit(exitFailed)
	}
	return nil
}

// The page that a plan is drawn on, mm: A4 across.
var pageWide, pageHigh = template.Papers["a4"].High, template.Papers["a4"].Wide

// How it is drawn there, mm: how high letters are, and how much stays white round all of it.
const pageLetters, pageEdge = 3.2, 12

// pageBox is what of the page a picture fills: the title stands over it, its rulers to the left of it and below it.
func pageBox() vector.Box {
	space := vector.RulerSpace(pageLetters)
	return vector.Box{Left: pageEdge + space, Top: pageEdge + 2*pageLetters, Width: pageWide - 2*pageEdge - space, Height: pageHigh - 2*pageEdge - space - 2*pageLetters}
}

// pageTitle is what stands over it.
func pageTitle(b vector.Board, words string) {
	b.Write(geometry.Point{X: pageEdge, Y: pageEdge}, vector.Text{Words: words, Size: pageLetters * 1.25, Bold: true, Colour: vector.Ink})
}

// inks make a file of what is drawn on a page, by how the file's name ends.
var inks = map[string]func(title string, draw func(vector.Board)) ([]byte, error){
	".svg": func(_ string, draw func(vector.Board)) ([]byte, error) {
		b := vector.NewSVG(pageWide, pageHigh)
		draw(b)
		return b.Bytes(), nil
	},
	".pdf": func(title string, draw func(vector.Board)) ([]byte, error) {
		b := vector.NewPDF(title)
		b.Page(pageWide, pageHigh)
		draw(b)
		return b.Bytes()
	},
	".png": func(_ string, draw func(vector.Board)) ([]byte, error) {
		const perMM = 8 // about 200 dpi
		b := vector.NewPixels(int(pageWide*perMM), int(pageHigh*perMM), perMM)
		b.Face([]geometry.Point{{}, {X: pageWide}, {X: pageWide, Y: pageHigh}, {Y: pageHigh}}, vector.White)
		draw(b)
		var out bytes.Buffer
		err := png.Encode(&out, b.Picture)
		return out.Bytes(), err
	},
}

// drawPlan draws a judged job on a page.
func drawPlan(b vector.Board, r rules.Result, view scene.View, around float64) {
	const worst = 3
	shown := drawing.Worst(r.Findings, func(f *rules.Finding) bool { return f.Rule.AtCut }, worst)
	s := drawing.Draw(r, drawing.Options{View: view, Selected: -1, Shown: shown})
	look := vector.Black(pageLetters, func(m scene.Measure) string { return words.Measure(m, survey.Millimetres) }, harmless.Text)
	box := pageBox()
	frame := vector.Fit(&s, box)
	if around > 0 {
		at := r.Plan.Cut.At
		frame = vector.At(&s, box, s.Projection.Point(at.At(0)), 2*around/min(box.Width, box.Height))
	}
	vector.Draw(b, &s, frame, look)
	vector.Rulers(b, &s, frame, look, func(w scene.Way) string { return w.Called(r.Job.Datum.Name) })
	pageTitle(b, harmless.Text(r.Job.Ref))
}
