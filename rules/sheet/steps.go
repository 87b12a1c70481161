package sheet

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
)

// steps are the work from its first step to its last, each with a box, and with room for what is measured in it.
func (s *source) steps() Section {
	section := Section{Heading: "The work, step by step, with the record of the first run"}
	list := work.Of(s.Result)
	section.Parts = append(section.Parts, Named{{"At hand", strings.Join(work.Tools(s.Result), "; ") + ". Torques, distances and order that the heater's own instructions give come first. A figure without a source is " + rules.Practice + "."}})
	var ticks Ticks
	title := ""
	flush := func() {
		if len(ticks) > 0 {
			section.Parts = append(section.Parts, Titled{title, ticks})
			ticks = nil
		}
	}
	for _, row := range list.Rows() {
		if row.Part != "" {
			flush()
			title = row.Part
		}
		ticks = append(ticks, stepTick(row))
	}
	flush()
	title = "Recorded of steps that this job has not"
	if last := len(section.Parts) - 1; last > 0 {
		section.Parts[last] = Carried{section.Parts[last]}
	}
	for _, row := range list.Unplaced(&s.Job) {
		ticks = append(ticks, stepTick(row))
	}
	flush()
	return section
}

// stepTick is a step as it is ticked on paper: what is done and expected, and what is written behind it, or was.
func stepTick(row work.Row) Tick {
	words := []string{row.Do, row.Barred, row.Briefly}
	if row.Cautions != "" {
		words = append(words, "Caution: "+row.Cautions+".")
	}
	if row.Note != "" {
		words = append(words, "Note: "+row.Note+".")
	}
	if len(row.Photos) > 0 {
		words = append(words, "Photos: "+strings.Join(row.Photos, ", ")+".")
	}
	if row.Wrong != "" {
		words = append(words, "Look again: "+row.Wrong+".")
	}
	t := Tick{Name: row.Name, Done: row.Ticked, Answers: []Answer{{Ask: "when", Value: row.When}}}
	for _, w := range words {
		if w != "" {
			t.Words = strings.TrimSpace(t.Words + " " + w)
		}
	}
	if row.Unit != "" {
		t.Answers = append(t.Answers, Answer{Ask: row.Unit, Value: row.Value})
	}
	if row.Dated {
		t.Answers = append(t.Answers, Answer{Ask: "agreed for", Value: row.Due})
	}
	return t
}
