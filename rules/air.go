package rules

import (
	"strings"

	"bench.example/undermark/vehicles"
)

// The rules of the air that the heater warms: how it comes back, and what it may carry.
var airRules = []*Rule{
	{
		ID: "heater.return", Unit: Times, Sense: Least, Weight: Damages,
		Word:   "air's way back",
		named:  wordAlone,
		Title:  "Air's way back over the area of the ducts",
		Ask:    "What the ducts carry away must come back to the heater, or it overheats and shuts down.",
		Advice: "open a wider way back for the air: gaps, grilles and holes together.",
		short:  shortfall{words: "%s of the ducts' area too little"},
		check:  airReturns,
	},
	{
		ID: "heater.store", Unit: Count, Sense: Most, Weight: Kills,
		Word:   "kept where the heater takes its air",
		named:  wordAlone,
		Title:  "Petrol, gas bottles and lead batteries kept where the heater takes its air",
		Ask:    "Its fan would carry what leaks from them past the flame's hot wall, and into the van.",
		Advice: "keep them elsewhere, or let the heater take its air from elsewhere.",
		check:  airFromStore,
	},
}

// AirComesBackBy is what the air that ducts carry away comes back through: to what, goes on.
const AirComesBackBy = "gaps and grilles by which air comes back to"

// airReturns judges the way back of the air that ducts carry away.
func airReturns(j *judge, r *Rule) {
	h := j.job.Heater
	if h == nil || h.Duct.Count() == 0 {
		return
	}
	f := j.open(j.book.of(r), the(TheHeater), Thing{})
	if !h.ReturnArea.Set {
		j.unsaid(f, "measure the "+AirComesBackBy+" the heater, and enter their cm2 together")
		return
	}
	f.Value = h.ReturnArea.Value / h.DuctArea()
	j.close(f, 0)
}

// airFromStore judges what is kept in the space that the heater takes its air from: what was said to be there counts, also while
// nobody has said which space that is. Air from outside comes past none of it.
func airFromStore(j *judge, r *Rule) {
	h := j.job.Heater
	said := h != nil && h.Given&vehicles.HasStored != 0
	if h == nil || h.Air == vehicles.Outside || h.Air == "" && !said {
		return
	}
	f := j.open(j.book.of(r), the(TheHeater), Thing{})
	if !said {
		j.unsaid(f, "unanswered: are petrol, gas bottles or lead batteries kept in the "+h.Air+"?")
		return
	}
	f.Value, f.Why = float64(h.Stored.Count()), strings.Join(h.Stored.Words(), ", ")
	if j.close(f, 0); h.Air == "" && f.Verdict == Foul {
		f.Why += ", and nobody has said where the heater takes its air"
	}
}

// unsaid ends a finding whose value nobody has said what it takes to know: it is doubtful, without a margin.
func (j *judge) unsaid(f *Finding, ask string) {
	f.Unsaid, f.Verdict, f.Why = true, Doubtful, ask
}
