package tui

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// cautionsVersion changes with the meaning of the text, so that it is shown again.
const cautionsVersion = "2"

// What is read before the first mark.
const drillingTitle = "Read this before drilling"

var drillingOccasions = []rules.Occasion{rules.BeforeDrilling, rules.EveryTime}

// newCautions shows all the cautions, to be read.
func newCautions() *reader {
	return &reader{title: "Read this before working on a van", must: true, text: func(_ *rules.Result, styles desk.Styles, w int) []string {
		return cautionRows(rules.Cautions(), styles, w)
	}}
}

// cautionsFor shows those of some occasions that apply to the job as it is.
func cautionsFor(title string, must bool, occasions ...rules.Occasion) *reader {
	return &reader{title: title, must: must, text: func(r *rules.Result, styles desk.Styles, w int) []string {
		var list []rules.Caution
		for _, when := range occasions {
			list = append(list, rules.CautionsFor(when, r)...)
		}
		return cautionRows(list, styles, w)
	}}
}

func cautionRows(list []rules.Caution, styles desk.Styles, w int) (rows []string) {
	for i, c := range list {
		if i > 0 {
			rows = append(rows, "")
		}
		rows = append(rows, styles.Strong.Render(c.About))
		for _, row := range desk.Wrap(c.Say, w-2) {
			rows = append(rows, "  "+row)
		}
	}
	return rows
}
