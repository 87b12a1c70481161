package sheet

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

const cautionsHeading = "Cautions: read before you drill, tick what is seen to"

// cautions are all that apply to the job, in the order of the work, each with a box to tick once it is seen to.
func (s *source) cautions() Section {
	section := Section{Heading: cautionsHeading}
	titles := map[rules.Occasion]string{
		rules.EveryTime: "Every time", rules.BeforeDrilling: "Before drilling and cutting", rules.FittingHeater: "While the heater is fitted",
		rules.FirstRun: "The first run",
	}
	for when := rules.EveryTime; when <= rules.FirstRun; when++ {
		var ticks Ticks
		for _, c := range rules.CautionsFor(when, s.Result) {
			ticks = append(ticks, Tick{Name: c.About, Words: c.Say})
		}
		if len(ticks) > 0 {
			section.Parts = append(section.Parts, Titled{titles[when], ticks})
		}
	}
	return section
}

// signOff is who did what, to be signed.
func (s *source) signOff() Section {
	parts := Parts{}
	if len(s.Job.BuiltOtherwise().Tables()) == 0 && s.Job.Cut != nil {
		parts = append(parts, s.madeOtherwise())
	}
	return Section{Heading: "Signed off", Parts: []Part{Kept{append(parts,
		Text{Words: "When this was printed " + standing(s.Result, s.say) + ". Whoever signs has seen to what is doubtful or foul, or has written down here why it may stay."},
		Lines{""},
		Beside{Left: Lines{"heater, model", "fitted by", "date", "signed"}, Right: Lines{"serial number", "checked by", "date", "signed"}},
	)}}}
}

// madeOtherwise are lines for what comes out otherwise than planned, as the tape says it.
func (s *source) madeOtherwise() Parts {
	hole := rules.ReadBelow(&s.Job, s.Plan.Cut.At)
	return Parts{
		Text{Words: fmt.Sprintf("Made otherwise than planned, as the tape says it from below; the hole's centre is planned at %s, left %s, right %s:",
			survey.Figure(hole.Bumper), survey.Figure(hole.Left), survey.Figure(hole.Right))},
		Beside{Left: Lines{"hole, collar", "exhaust"}, Right: Lines{"intake", "fuel line"}},
	}
}

// notes are what the job says beside.
func (s *source) notes() Section {
	section := Section{Heading: "Notes"}
	if s.Job.Notes != "" {
		section.Parts = []Part{Text{Words: s.Job.Notes}}
	}
	return section
}
