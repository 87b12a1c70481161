package tui

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// cautionsVersion changes with the meaning of the text, so that it is shown again.
const cautionsVersion = "2"

// drillingTitle heads what is read before the first mark.
const drillingTitle = "Read this before drilling"

// drillingOccasions are those of the cautions that are read then, by whom has read none yet.
var drillingOccasions = []rules.Occasion{rules.BeforeDrilling, rules.EveryTime}

// newCautions shows all the cautions, to be looked up.
func newCautions() *reader {
	return &reader{title: "All the cautions", text: func(_ *rules.Result, styles desk.Styles, w int) []string {
		return cautionRows(rules.Cautions(), styles, w)
	}}
}

// atStart shows those that hold whatever is done, about a screenful; where the others are, it says.
func atStart() *reader {
	reader := cautionsFor("Read this before working on a van", true, rules.EveryTime)
	own := reader.text
	reader.text = func(r *rules.Result, styles desk.Styles, w int) []string {
		return append(own(r, styles, w), desk.Wrapped(styles.Faint, "More come where they are needed; all of them: "+desk.KeyCautions.Help().Key+".", w)...)
	}
	return reader
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
	for _, c := range list {
		for i, row := range desk.Wrap(c.About+": "+c.Say, w) {
			if about, text, cut := strings.Cut(row, ": "); i == 0 && cut {
				rows = append(rows, styles.Strong.Render(about+":")+styles.Plain.Render(" "+text))
				continue
			}
			rows = append(rows, styles.Plain.Render(row))
		}
	}
	return rows
}

// beforeDrilling are the occasions whose cautions are read before drilling: those for every time once a run of the program.
func (r *Root) beforeDrilling() []rules.Occasion {
	if r.warned {
		return []rules.Occasion{rules.BeforeDrilling}
	}
	return drillingOccasions
}
