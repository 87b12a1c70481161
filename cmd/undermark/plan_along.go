package main

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
	"bench.example/undermark/vehicles/harmless"
)

// alongThe begins what a run laid out straight is seen from.
const alongThe = "along the "

// runNamed is the run that a view is along.
func runNamed(view string) (of vehicles.RunKind, ok bool) {
	for _, of := range vehicles.RunKinds {
		if view == alongThe+of.String() {
			return of, true
		}
	}
	return of, false
}

// drawAlong draws a run of a judged job laid out straight.
func drawAlong(ink func(string, func(vector.Board)) ([]byte, error), r rules.Result, of vehicles.RunKind) ([]byte, error) {
	laid := r.Plan.Run(of)
	if laid == nil || len(laid.Path) < 2 {
		return nil, lacking{Key: of.Table(), Text: fmt.Sprintf("there is no %s to draw along: lay it, or have it found", of)}
	}
	return ink(harmless.Text(r.Job.Ref), func(b vector.Board) { drawProfile(b, r, of, laid) })
}

// drawProfile draws it on a page, the fall of each leg, mm in a metre, below its middle.
func drawProfile(b vector.Board, r rules.Result, of vehicles.RunKind, laid *vehicles.LaidRun) {
	look := vector.Black(pageLetters, func(m scene.Measure) string { return words.Measure(m, survey.Millimetres) }, harmless.Text)
	box := pageBox()
	stretch := drawing.Stretch(&r, of, box.Width, box.Height)
	s, _ := drawing.Along(r, of, stretch)
	s.Items = append(s.Items, drawing.FarGround(r, of)...)
	frame := vector.Fit(&s, box)
	vector.Draw(b, &s, frame, look)
	vector.Rulers(b, &s, frame, look, func(w scene.Way) string { return string(w) })
	for i := range laid.Line.Legs {
		leg := &laid.Line.Legs[i]
		along := (laid.CornerAlong(i) + laid.CornerAlong(i+1)) / 2
		at := frame.Place(geometry.Point{X: along, Y: laid.Line.At(along).Z * stretch})
		b.Write(at.Add(geometry.Point{Y: 2 * pageLetters}), vector.Text{Words: fallInWords(leg.B.Sub(leg.A)), Size: pageLetters, Align: vector.ByMiddle, Colour: vector.Ink, Rim: vector.White})
	}
	title := fmt.Sprintf("%s, %s: %s long, falls in mm/m", harmless.Text(r.Job.Ref), of, survey.InMM(laid.Line.Length()))
	if stretch > 1 {
		title += fmt.Sprintf(", heights %s times as high as they are", survey.Exact(stretch))
	}
	pageTitle(b, title)
}

// fallInWords is the fall of a leg without arrows: paper has letters alone.
func fallInWords(leg geometry.Point3) string {
	return strings.NewReplacer("↓", "down ", "↑", "up ").Replace(words.Fall(leg))
}
