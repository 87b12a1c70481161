package work

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Which jobs have which steps.

func hasHeater(r *rules.Result) bool { return r.Job.Heater != nil }
func hasCut(r *rules.Result) bool    { return r.Job.Cut != nil }
func hasBolts(r *rules.Result) bool  { return len(rules.Bolts(&r.Job, &r.Plan)) > 0 }
func hasPlate(r *rules.Result) bool  { return r.Job.Heater != nil && r.Job.Cut != nil }
func hasDucts(r *rules.Result) bool  { return r.Job.Heater != nil && r.Job.Heater.Duct.Count() > 0 }

func hasFuelHole(r *rules.Result) bool { return len(rules.FuelHoles(&r.Job, &r.Plan)) > 0 }

// hasClips tells whether clips or a pump are placed, whose holes are drilled.
func hasClips(r *rules.Result) bool {
	clips, pump := rules.ClipHoles(&r.Job, &r.Plan)
	return len(clips)+len(pump) > 0
}

// drills tells whether anything is cut or drilled.
func drills(r *rules.Result) bool {
	return hasCut(r) || hasBolts(r) || hasFuelHole(r) || hasClips(r)
}

func steelDrilled(r *rules.Result) bool  { return drills(r) && r.Job.Deck() != vehicles.Timber }
func timberDrilled(r *rules.Result) bool { return drills(r) && r.Job.Deck() == vehicles.Timber }

// steelDeck tells whether a plate lies on steel: what nobody has said of a deck is taken for it, as most are.
func steelDeck(r *rules.Result) bool { return hasHeater(r) && r.Job.Deck() != vehicles.Timber }

// has applies a step to the jobs that have a thing with one of some traits, below the floor or in it.
func has(t vehicles.Traits) func(*rules.Result) bool {
	return func(r *rules.Result) bool {
		return slices.ContainsFunc(r.Job.Obstructions, func(o vehicles.Obstruction) bool { return o.Is(t) }) ||
			slices.ContainsFunc(r.Job.Fittings, func(f vehicles.Fitting) bool { return f.Is(t) })
	}
}

// hasSeats tells whether seats or belts are fixed near the work: their connectors may have to be parted.
func hasSeats(r *rules.Result) bool { return has(vehicles.HoldsSeat)(r) }

// hasSwages tells whether the plate may lie on swages.
func hasSwages(r *rules.Result) bool {
	return r.Job.Heater != nil && (r.Job.Heater.Packed || has(vehicles.InSheetMetal)(r) ||
		slices.ContainsFunc(r.Job.Stack, func(l vehicles.Layer) bool { return l.Kind == vehicles.SwageLayer }))
}

// cutsBack tells whether what may burn lies round the stub.
func cutsBack(r *rules.Result) bool {
	return hasCut(r) && (r.Job.Deck() == vehicles.Timber || r.Job.OnDeck() == vehicles.Wood || r.Job.Cut.Relieved.Set)
}

func hasDrains(r *rules.Result) bool {
	drained := func(run *vehicles.Run) bool { return run != nil && (len(run.Drains) > 0 || run.Muffler != nil) }
	return drained(r.Job.Exhaust) || drained(r.Job.Intake)
}

func hasShields(r *rules.Result) bool {
	return r.Job.Exhaust != nil && (r.Job.Exhaust.Shielded.All || len(r.Job.Exhaust.Shielded.Names) > 0)
}

// takesOff tells whether the fuel comes from the van's own tank.
func takesOff(r *rules.Result) bool { return r.Job.Fuel != nil && r.Job.Fuel.Supply.From != "" }

// collarTooDeep tells whether the collar is deeper than the floor takes: the heater's, or the one that is ordered in its place.
func collarTooDeep(r *rules.Result) bool {
	needed, ok := collarNeeded(r)
	has := collarFitted(r)
	return ok && has.Set && has.Value > needed.Value.Value
}

// hasTankInside tells whether the fuel comes from a tank that stands above the floor.
func hasTankInside(r *rules.Result) bool {
	return r.Job.Fuel != nil && r.Job.Fuel.Supply.Tank != nil && r.Job.Fuel.Supply.Tank.Rise.Set
}
