package rules

import (
	"math"

	"bench.example/undermark/vehicles"
)

// SteelPlates are what a timber deck takes at the hole.
const SteelPlates = "a steel plate above and one below"

// StubTimber is the rule of what burns round the hole: what suits steel does not suit it.
var StubTimber = &Rule{
	ID: "stub.timber", Unit: MM, Sense: Least, Weight: Kills, AtCut: true,
	Word:  "exhaust stub and timber",
	named: wordAlone,
	Title: "Exhaust stub away from wood, foam and lining",
	Ask: "A rim of steel may be near the stub. Wood chars, foam and lining burn: cut them back round the hole. A timber deck " +
		"then takes " + SteelPlates + ", to carry the heater and to close the gap.",
	Advice: "cut wood, foam and lining back to a wider circle, with " + SteelPlates + ", and say how wide.",
	short:  tooClose,
	check:  stubFromTimber,
}

// notRelieved is why the stub's distance from timber is doubtful while nobody has said how far that is cut back.
const notRelieved = "wood at the hole: say in Place how wide it is cut back, with steel plates above and below a timber deck"

// stubFromTimber judges the exhaust's stub against what is cut back round it. Till somebody has said how far that is, timber
// may stand at the rim of the cut: the value is to there.
func stubFromTimber(j *judge, r *Rule) {
	if !j.placed() || j.job.Exhaust == nil {
		return
	}
	relieved := j.job.Cut.Relieved
	if !relieved.Set && j.job.Floor.Deck != vehicles.Timber && j.job.Floor.Layers != vehicles.Wood {
		return
	}
	at := j.job.Heater.ExhaustStub
	f := j.open(j.book.of(r), the(TheExhaust), the(TheCut))
	f.Value = relieved.Or(j.job.Cut.Across)/2 - (math.Hypot(at[0], at[1]) + j.job.Exhaust.Across/2)
	if j.close(f, 0); !relieved.Set {
		f.Verdict, f.Why = Doubtful, notRelieved
	}
}
