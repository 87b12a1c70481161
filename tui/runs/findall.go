package runs

import (
	"context"
	"fmt"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// findBoth begins to find exhaust and intake together, and beside them the fuel line, where the job has none that breaks nothing and it is
// known where one begins.
func (m screen) findBoth(s desk.State) (screen, desk.Change) {
	q, why := m.begins(s, vehicles.ExhaustRun, vehicles.IntakeRun)
	if why != "" {
		return m, desk.Change{Say: why}
	}
	fuel, wanted := m.fuelToFind(s)
	switch {
	case wanted:
		q.runs, q.taken = append(q.runs, vehicles.FuelRun), append(q.taken, fuel.taken...)
		q.of.Job = q.of.Job.WithRun(vehicles.FuelRun, nil)
		q.of.Plan.Fuel = nil
	case s.Job.Fuel == nil:
		q.lacks = words.Sentence(words.NoFuelFor(rules.FuelLacks(&s.Job)))
	}
	q.of = rules.WithRoomForFuel(q.of)
	q.find = func(ctx context.Context, r *rules.Result, tell func(string)) []rules.Route {
		pair := rules.FindPair(ctx, r, func(done, of int) { tell(fmt.Sprintf("%d of about %d searches", done, of)) })
		switch {
		case !pair.Exhaust.Found():
			return []rules.Route{pair.Exhaust}
		case !wanted || !pair.Intake.Found():
			return []rules.Route{pair.Exhaust, pair.Intake}
		}
		line := rules.FindFuelBeside(ctx, r, pair, fuel.of.Job.Fuel, func(at rules.Aim, tried int) { tell("the fuel line, " + words.Tried(at, tried)) })
		return []rules.Route{pair.Exhaust, pair.Intake, line}
	}
	m.finder = finder{wants: true, quest: q}
	return m, desk.Change{}
}

// fuelToFind is the job with the fuel line to find beside the other runs: the usual one where it has none, its own where that is foul.
func (m screen) fuelToFind(s desk.State) (q quest, wanted bool) {
	if s.Job.Fuel != nil && verdictOf(vehicles.FuelRun, s) != rules.Foul {
		return q, false
	}
	q, why := m.begins(s, vehicles.FuelRun)
	return q, why == ""
}

// stayed says that a pair which is there keeps as much as any that was found.
func stayed(there []rules.Route, s desk.State) string {
	pair := rules.Pair{Exhaust: there[0], Intake: there[1]}
	text := "Exhaust and intake stay as they are: no pair was found that keeps more"
	if least := pair.Margin(); least.Set {
		text += " than their " + desk.Length(least.Value, s.Settings.Units)
	}
	return text + "."
}

// keepsLess tells whether a pair that was found keeps less from what is under the floor than the one that is there, which breaks no rule.
func (m screen) keepsLess(s desk.State) (found, there float64, less bool) {
	said := m.finder.found.Said
	if len(m.finder.quest.runs) < 2 || len(said) < 2 || said[0].Here {
		return 0, 0, false
	}
	pair := rules.Pair{Exhaust: said[0], Intake: said[1]}
	least := pair.Margin()
	for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		if s.Result.Plan.Run(of) == nil || verdictOf(of, s) > pair.Verdict() {
			return 0, 0, false
		}
	}
	own := rules.LeastKept(&s.Result, vehicles.ExhaustRun, vehicles.IntakeRun)
	return least.Value, own.Value, least.Set && (!own.Set || own.Value > least.Value+toTheTape)
}

// toTheTape is how much less a pair may keep than another and be as good, mm: a tape tells no less.
const toTheTape = 0.5
