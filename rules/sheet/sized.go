package sheet

import (
	"strings"

	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/parts"
	"bench.example/undermark/rules/sizing"
)

// sized are the sizes behind the job, as far as they are known: what nobody has said is told once below them.
func (s *source) sized() Section {
	section := Section{Heading: "Sizes: floor, fuel, electrics, heat, duct, saw; no verdict rests on them"}
	t := Table{Size: small, Close: true, Cols: []Col{{Head: "size"}, {Figure: true}, {Head: "how it is reckoned, and what was taken as nobody has said it; " + before + " " + sizing.InstructionsFirst}, {Head: "by"}}}
	var lacks []string
	var by sources
	for _, subject := range sizing.Of(s.Result) {
		rows := []Row{{Cells: []string{subject.Title}, Strong: true}}
		for _, r := range subject.Rows {
			if len(r.Lacks) > 0 {
				lacks = append(lacks, subject.Title+", "+r.Label+": "+strings.Join(r.Lacks, "; "))
				continue
			}
			rows = append(rows, Row{Cells: []string{r.Label, sizeOf(r), reckoned(r), by.letters(r.Source.String())}, Strong: true})
		}
		if len(rows) > 1 {
			t.Rows = append(t.Rows, rows...)
		}
	}
	if len(t.Rows) == 0 {
		return section
	}
	section.Parts = []Part{t, by.told("By: where it is from")}
	if len(lacks) > 0 {
		section.Parts = append(section.Parts, Titled{"Not reckoned, as nobody has said:", List(lacks)})
	}
	return section
}

// sizeOf is a size as it stands by its point: what is said of it in words stands with how it is reckoned.
func sizeOf(r sizing.Row) string {
	r.Text = ""
	return r.Said()
}

// before stands where the heater's own instructions have a figure.
const before = "‡"

// reckoned is what stands behind a size.
func reckoned(r sizing.Row) string {
	var words []string
	if r.Amiss != "" {
		words = append(words, "Put right: "+r.Amiss+".")
	}
	if r.Text != "" {
		words = append(words, strings.ToUpper(r.Text[:1])+r.Text[1:]+".")
	}
	if r.Why != "" {
		words = append(words, r.Why)
	}
	if len(r.Taken) > 0 {
		words = append(words, "Taken: "+strings.Join(r.Taken, "; ")+".")
	}
	if r.Instructions {
		words = append(words, before)
	}
	return strings.Join(words, " ")
}

// toOrder is what the job takes, to be ordered before the van comes.
func (s *source) toOrder() Section {
	section := Section{Heading: "Parts: to order before the van comes"}
	l := parts.Of(s.Result, cutlist.Usual())
	if len(l.Rows) == 0 {
		return section
	}
	t := Table{Size: small, Close: true, Cols: []Col{{Head: "part"}, {Head: "size"}, {Head: "wanted", Figure: true}, {Head: "usual kit holds", Figure: true}, {Head: "to buy", Figure: true}, {Head: ""}, {Head: "note"}}}
	last := ""
	for _, r := range l.Rows {
		if r.For != last {
			t.Rows = append(t.Rows, Row{Cells: []string{"For the " + r.For}})
		}
		last = r.For
		t.Rows = append(t.Rows, Row{Cells: []string{r.Of, r.Size, r.Count.Text(), r.Kit.Text(), r.Buy().Text(), r.Unit, r.Note}})
	}
	told := "What the usual kit holds: common practice, no source; count yours. Where sealant, screws, cable and fuse are from stands with the sizes."
	if len(l.Absent) > 0 {
		told += " Not counted: " + strings.Join(l.Absent, "; ") + "."
	}
	section.Parts = []Part{t, Text{Words: told, Size: small}}
	return section
}
