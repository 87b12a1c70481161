package jobcard

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
)

// cardTexts are what is said beside a card.
var cardTexts = [...]string{
	jobCard:   "What stands on the sheets that come out of the printer and go into the van's folder.",
	tapeCard:  "How well the tape was made and how well it is read decides how near a pipe a cut may come. When in doubt, say more: a wider ± is never a wrong hole.",
	fuelCard:  "What the heater burns, and which tank or line it is taken from. The fuel line itself is laid in Runs.",
	wheelCard: "Where the tyres stand says how steep a ramp the runs may meet, and where spray is thrown. The front axle stands before the floor's middle, mostly ahead of the floor.",
	showCard:  "These go with this workshop and not with the job: the file always holds what the tape said.",
}

// actTexts are what is said beside something to do.
var actTexts = [...]string{
	doSave:     "Writes the job where it was read from. What other programs put under extra stays as it is.",
	doSaveAs:   "Asks for another name; the file this job came from stays as it is.",
	doSheet:    "All that is worked from, for the printer: plans, marks, runs, checks, cut list, cautions. A PDF beside the job's file.",
	doTemplate: "Cut, plate and bolts at their true size, to be taped to the floor, and their mirror for below. A PDF beside the job's file.",
	doCustomer: "One page that goes with the van: what is where, what to mind, how it is looked after. A PDF beside the job's file.",
	doCautions: "A heater that is fitted wrong burns, poisons and kills. What is measured here is no substitute for the heater's own instructions, the rules of your country, and whoever is licensed to sign the work off.",
	doFirstRun: "What is to be seen to when the heater first runs, and whenever it has run: where, who stays out, how it is stopped.",
}

// What is said of how the plan is drawn.
const (
	planInPixels = "This terminal shows true pictures. Should the plan be empty or strange all the same, have it drawn in cells."
	planInCells  = "The plan is drawn in cells, as this terminal has not said that it shows true pictures."
)

// cardBeside is what is said beside a card: of the fuel also its cautions, of what is shown also what the terminal can.
func cardBeside(c card, s desk.State) string {
	text := cardTexts[c]
	switch {
	case c == showCard && s.Pixels.Shows():
		text += " " + planInPixels
	case c == showCard:
		text += " " + planInCells
	}
	if c == fuelCard {
		for _, caution := range rules.FuelCautions() {
			text += " " + caution.Say
		}
	}
	return text
}

// beside paints what is said about a row; rows is how many rows of w columns it needs.
func beside(e entryscreen.Entry, s desk.State, w, _ int) (text string, rows int) {
	record, ok := e.Here(s)
	if !ok {
		return "", 0
	}
	look := s.Settings.Styles()
	var out []string
	add := func(text string, paint func(string) string) {
		if text == "" {
			return
		}
		for _, line := range desk.Wrap(text, w-1) {
			out = append(out, " "+paint(line))
		}
	}
	switch h := record.(type) {
	case cardRecord:
		add(cardBeside(h.card, s), look.Plain.Render)
	case actRecord:
		add(actTexts[h.act], look.Plain.Render)
		if h.act == doSave {
			add(savedAt(s), look.Strong.Render)
		}
	case ruleRecord:
		l, _ := h.limit(s)
		add(h.title(), look.Strong.Render)
		add(desk.Asked(l, s.Settings.Units)+", "+l.Book, look.Plain.Render)
		add(h.rule.Ask, look.Plain.Render)
		add("Source: "+l.Source, look.Faint.Render)
		add(h.key(), look.Faint.Render)
	}
	return strings.Join(out, "\n"), max(1, len(out))
}
