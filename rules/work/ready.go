package work

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// ready is what comes before anything is drilled.
var ready = []kind{
	{id: "instructions", do: "Read the heater's own instructions and the van maker's for bodybuilders, and keep them at hand.", defers: heaterSays, caution: rules.AboutAll},
	{id: "stands", do: "Stand the van on firm level ground, chock its wheels, put it on stands at the maker's points.", defers: vanSays, caution: rules.AboutStands},
	{
		id: "high-voltage", do: "Have trained people make the high-voltage system dead, prove it dead and lock it off.", defers: vanSays, caution: rules.AboutHighVoltage,
		applies: inDangerOf(rules.AboutHighVoltage),
	},
	{id: "battery-off", do: "Take the van's battery off, minus first, and see to it that the clamp can't spring back.", defers: vanSays},
	{
		id: "seat-wait", do: "Wait as long as the van maker says before a connector of a seat or a belt is touched.", defers: vanSays, caution: rules.AboutSeats,
		measured: "minutes waited", since: "battery-off", expect: inWords("as long as the van maker says", rules.Practice), applies: hasSeats,
		after: []string{"battery-off"}, danger: "The charges in a seat are live until the battery is off and the wait is over.",
	},
	{
		id: "seat-connectors", do: "Part the connectors of seat and belt, mark them, take the seat out and keep its bolts.", defers: vanSays, caution: rules.AboutSeats, applies: hasSeats,
		after: []string{"battery-off", "seat-wait"}, danger: "A belt or an airbag can go off in your hands.",
	},
	{
		id: "tank-lowered", do: "Lower the fuel tank and take it out; air the place until nothing smells.", defers: vanSays, caution: rules.AboutPetrol, applies: inDangerOf(rules.AboutPetrol),
		after: []string{"battery-off"}, danger: "A clamp that sparks lights petrol vapour.",
	},
	{id: "gas-shut", do: "Shut the gas bottles, burn the pipe empty at the cooker, and leave them shut.", applies: has(vehicles.HoldsGas)},
	{id: "mat-up", do: "Lift mat and lining round the cut and over each hole, and look at what runs there."},
}

// holes is what is drilled and sawn.
var holes = []kind{
	{id: "extinguisher", part: Holes, do: "Put the fire extinguisher by the door, not behind the work.", caution: rules.AboutFire},
	{id: "marked", part: Holes, do: "Make the marks on top as the tape says, each ticked as it is made.", applies: hasCut},
	{
		id: "template-laid", part: Holes, do: "Lay the template on the marks, its arrow to the van's front, and prick its centres through; tape the plate's diagonals.",
		applies: hasPlate, measured: "difference of the plate's diagonals", expect: diagonals,
	},
	{
		id: "pilot-drilled", part: Holes, do: "Drill the pilot hole: a stop on the bit, a board between bit and what lies below, nobody under the van.", caution: rules.AboutDrilling,
		applies: hasCut, of: pilotOf, foul: foulCut, known: pilotKnown,
		after: []string{"high-voltage", "battery-off", "tank-lowered", "gas-shut", "extinguisher"}, danger: "The bit may meet what is live, or what burns.",
	},
	{
		id: "pilot-looked", part: Holes, do: "Bit out: look at the pilot hole from below, measure where it came out, read the checks again.", caution: rules.AboutSaw, applies: hasCut, of: lookedOf, known: pilotKnown,
		after: []string{"pilot-drilled"}, danger: "Nobody can look at a hole that is not there.",
	},
	{
		id: "depth", part: Holes, do: "Measure the floor's depth in the pilot hole, from its top to its underside.", applies: hasCut, measured: "depth of the floor",
		expect: floorDepth,
	},
	{
		id: "sawn", part: Holes, do: "Saw the hole.", caution: rules.AboutSwarf, applies: hasCut, of: cutOf, foul: foulCut, known: sawnKnown,
		after: []string{"pilot-looked"}, danger: NoUncut,
	},
	{
		id: vehicles.BoltsDrilled, part: Holes, do: "Drill the holes for the heater's bolts.", caution: rules.AboutDrilling, applies: hasBolts, of: boltsOf, foul: foulCut,
		after: []string{"pilot-looked"}, danger: "What the pilot shows decides where the plate lies.",
	},
	{
		id: "fuel-hole", part: Holes, do: "Drill the hole for the fuel line, put its grommet in.", caution: rules.AboutDrilling, applies: hasFuelHole, of: fuelHoleOf, foul: foulCut,
		after:  beforeDrill,
		danger: "The bit may meet what is live, or what burns: petrol vapour lights at a drill.",
	},
	{
		id: "clips-drilled", part: Holes, do: "Drill the holes for clips and pump, each only where you know what lies behind it: no tank, line, cable or double skin.",
		caution: rules.AboutDrilling, applies: hasClips, of: clipHolesOf, foul: foulCut, after: beforeDrill,
		danger: "The bit may meet what is live, or what burns: petrol vapour lights at a drill.",
	},
	{id: "cut-back", part: Holes, do: "Cut wood, foam and lining back from the hot stub.", applies: cutsBack, of: relievedOf},
	{id: "deburred", part: Holes, do: "File every edge smooth, above and below.", applies: drills},
	{
		id: "swarf", part: Holes, do: "Get the swarf out: magnet and vacuum over floor, seams, box sections and off the tank.", caution: rules.AboutSwarf, applies: drills,
	},
}

// beforeDrill are the steps before any drill but the pilot's.
var beforeDrill = []string{"high-voltage", "battery-off", "tank-lowered", "gas-shut", "extinguisher", "pilot-looked"}

// metal is what keeps the cut from rust and damp.
var metal = []kind{
	{
		id: "primed", part: Metal, do: "Prime and coat the bare metal of every hole, and let it cure.", defers: tinSays, applies: steelDrilled,
		measured: "hours cured", expect: inWords("as long as stands on the tin", rules.Practice),
	},
	{id: "timber-sealed", part: Metal, do: "Seal the timber's cut edges, and put the steel plates on above and below.", applies: timberDrilled},
	{id: "scraped", part: Metal, do: "Scrape undercoat and loose paint off where the plate seals; leave the sound primer.", applies: steelDeck},
	{
		id: "swages-packed", part: Metal, do: "Pack the swages under the plate with metal, sealed on both faces.", applies: hasSwages,
	},
}

// inDangerOf applies a step to the jobs that a caution applies to.
func inDangerOf(about string) func(*rules.Result) bool {
	return func(r *rules.Result) bool {
		for _, c := range rules.Cautions() {
			if c.About == about {
				return c.AppliesTo(r)
			}
		}
		return false
	}
}

// NoUncut is said before a hole is cut.
const NoUncut = "A hole can't be uncut."
