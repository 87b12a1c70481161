package work

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// CollarsDepth is what people call how deep the heater's collar is, where it is planned, measured and told.
const CollarsDepth = "collar's depth"

// mounting is what fastens, feeds and earths the heater.
var mounting = []kind{
	{
		id: "collar-cut", part: Mounting, do: "Cut the collar to its depth where the heater's instructions allow it, and file its edge smooth.", defers: heaterSays, applies: collarTooDeep,
		of: collarOf, measured: CollarsDepth, expect: collarDepth, known: collarKnown,
	},
	{
		id: "dry-fit", part: Mounting, do: "Dry fit: heater and plate down, collar and stubs through the floor, runs held in place, before any sealant is opened.", applies: hasHeater,
		after: []string{"sawn"}, danger: "Collar and stubs have nothing to go through.",
	},
	{
		id: "sealed", part: Mounting, do: "Lay both beads of sealant: " + sizing.WhereBeadsGo + ".", defers: heaterSays, applies: hasHeater, of: beadsOf,
		after: []string{"deburred", "swarf", "primed", "scraped", "swages-packed", "dry-fit"}, danger: "What does not seal lets exhaust gas in.",
	},
	{
		id: "heater-set", part: Mounting, do: "Set collar and heater in, stubs through the hole, warm air the way that is planned, and see the sealant come out all round.",
		defers: heaterSays, applies: hasPlate,
	},
	{
		id: "fastened", part: Mounting, do: "Draw the heater's bolts up evenly, crosswise.", defers: heaterSays, applies: hasHeater, of: boltsIn,
		measured: "torque", expect: inWords(asHeaterSays, rules.NeedsFigure),
	},
	{id: "ducts", part: Mounting, do: "Clip the warm-air ducts on, and see that the air can come back.", applies: hasDucts, of: Ducts},
	{id: "earth", part: Mounting, do: "Earth the heater on bright metal, tighten it, and grease it.", defers: heaterSays, applies: hasHeater, of: earthOf},
	{
		id: "supply-laid", part: Mounting, do: "Lay the supply cable from the battery in a sleeve, clipped, away from heat and edges; no fuse in it yet.", defers: heaterSays, applies: hasHeater,
		of: supplyOf, measured: "length one way", expect: cableLength,
	},
	{
		id: "control-laid", part: Mounting, do: "Lay the control's lead, clipped, away from heat and edges, and plug it in.", defers: heaterSays, applies: hasHeater, of: controlOf,
	},
}

// runs is what carries gas and air.
var runs = []kind{
	{
		id: "stubs-joined", part: Runs, do: "Push exhaust and intake home on the heater's stubs, below the floor, a clamp each; nothing bears on a stub.", defers: heaterSays, applies: hasHeater,
		of: stubsOf,
	},
	{id: "exhaust-hung", part: Runs, do: "Hang the exhaust, muffler and clips, and tighten its clamps.", applies: hasHeater, of: exhaustOf},
	{
		id: "exhaust-tight", part: Runs, do: "Test the exhaust's joints: outlet held shut, smoke or soapy water, a little air; nothing comes out.", caution: rules.AboutMonoxide, applies: hasHeater, of: unlaid(vehicles.ExhaustRun),
		after: []string{"stubs-joined", "exhaust-hung"}, danger: "Exhaust gas kills without a smell.",
	},
	{
		id: "fall", part: Runs, do: "Lay a level on each leg of the exhaust: it falls all the way to the muffler, and has a drain where it doesn't.", applies: hasHeater, of: unlaid(vehicles.ExhaustRun),
		measured: "least fall before the muffler", expect: leastFall,
	},
	{id: "drain-down", part: Runs, do: "See that each drain hole is lowest, open, and away from every opening.", applies: hasDrains, of: drainsOf},
	{id: "shielded", part: Runs, do: "Fit the heat shields before what they guard.", applies: hasShields, of: shieldsOf},
	{id: "intake-hung", part: Runs, do: "Hang the intake and its clips, its mouth out of spray and away from the outlet, and tighten its clamps.", applies: hasHeater, of: intakeOf},
	{id: "intake-tight", part: Runs, do: "Test the intake's joints as the exhaust's: one that leaks sucks its air from where nobody wants it.", applies: hasHeater, of: unlaid(vehicles.IntakeRun)},
}

// fuelLine is what carries fuel.
var fuelLine = []kind{
	{
		id: "tank-vented", part: FuelLine, do: "See that the tank's filler and its breather end outside the people's space.", applies: hasTankInside, caution: rules.AboutRefuelling,
	},
	{
		id: "tank-take-off", part: FuelLine, do: "Make the take-off at the van's own tank as its maker says: no spark near, no swarf in, a new seal.", defers: vanSays, applies: takesOff,
		of: takeOffOf, caution: rules.AboutFuelLine, after: []string{"battery-off"}, danger: "A spark lights fuel vapour.",
	},
	{id: "line-whole", part: FuelLine, do: "Lead the fuel line through in one piece: no joint inside the van.", caution: rules.AboutFuelLine, applies: hasHeater, of: unlaid(vehicles.FuelRun)},
	{
		id: "pump-hung", part: FuelLine, do: "Hang the pump in rubber, its outlet end up.", defers: heaterSays, applies: hasHeater, of: pumpOf, measured: "outlet up from level",
		expect: pumpTilt,
	},
	{
		id: "pump-wired", part: FuelLine, do: "Lay the pump's lead, clipped, away from heat and edges, and plug it in.", defers: heaterSays, applies: hasHeater, of: pumpLeadOf,
	},
	{id: "fuel-clipped", part: FuelLine, do: "Clip the fuel line, away from heat and edges, and tighten the clamps at its joints.", applies: hasHeater, of: fuelOf},
}

// vanAgain is what brings the van back as it was.
var vanAgain = []kind{
	{
		id: "waxed", part: VanAgain, do: "Spray wax into the box sections beside the holes, once nothing is drilled any more.", applies: steelDeck,
	},
	{
		id: "fuse", part: VanAgain, do: "Put the heater's fuse in at the battery, last of all the wiring.", defers: heaterSays, caution: rules.AboutFuse, applies: hasHeater, of: fuseOf,
		measured: "fuse", expect: fuseSize,
	},
	{
		id: "seat-joined", part: VanAgain, do: "Put the seat back and join its connectors while the battery is still off.", defers: vanSays, caution: rules.AboutSeats, applies: hasSeats,
		after: []string{"battery-off", "seat-connectors"}, danger: "Joining them live sets faults, and can set a charge off.",
	},
	{
		id: "seat-bolts", part: VanAgain, do: "Tighten the seat's bolts to the van maker's torque, with new bolts where it asks for them.", defers: vanSays, applies: hasSeats,
		measured: "torque", expect: inWords("as the van maker says", "the van maker's figure"),
	},
	{
		id: "battery-on", part: VanAgain, do: "Put the battery on again, plus first, with nobody's head near a charge.", defers: vanSays,
		after: []string{"seat-joined"}, danger: "Joining a seat under power sets faults, and can set a charge off.",
	},
	{
		id: "restraint-lamp", part: VanAgain, do: "Ignition on: the lamp of the belts and airbags comes on, and goes out again.", caution: rules.AboutSeats, applies: hasSeats,
		after: []string{"battery-on"}, danger: "Without power no lamp tells anything.",
	},
	{id: "seat-travel", part: VanAgain, do: "Run the seat through its whole travel: it touches neither heater nor duct nor wiring.", applies: hasSeats},
}

// firstRun is the heater's first run.
var firstRun = []kind{
	{
		id: "sealant-cured", part: FirstRun, do: "Leave the sealant as long as stands on its cartridge before it is warmed.", defers: tinSays, applies: hasHeater,
		measured: "hours cured", expect: inWords("as long as stands on the cartridge", rules.Practice), after: []string{"sealed"}, danger: "What was never laid does not cure.",
	},
	{
		id: "alarm", part: FirstRun, do: "Fit the carbon monoxide alarm, EN 50291-2, and test it as its instructions say.", caution: rules.AboutMonoxide, applies: hasHeater, of: alarmOf,
	},
	{id: "outside", part: FirstRun, do: "Stand the van in the open: doors shut, nobody in it, outlet free, no dry grass.", caution: rules.AboutFirstRun, applies: hasHeater},
	{
		id: "fuel-primed", part: FirstRun, do: "Fill the fuel line until fuel stands a hand's breadth short of the heater, and stop: more floods it.", defers: heaterSays, applies: hasHeater, of: pumpOf,
		measured: "strokes of the pump", expect: primingStrokes, after: []string{"fuel-clipped", "battery-on"}, danger: "A joint that nobody tightened drips.",
	},
	{
		id: "fuel-tight", part: FirstRun, do: "Wipe each joint of the full fuel line with paper: it stays dry.", applies: hasHeater, of: unlaid(vehicles.FuelRun),
		after: []string{"fuel-clipped"}, danger: "A joint that nobody tightened drips.",
	},
	{
		id: "start-current", part: FirstRun, do: "Switch the heater on, and measure the current while it glows.", defers: heaterSays, caution: rules.AboutFirstRun, applies: hasHeater,
		measured: "current at the start", expect: inWords(asHeaterSays+", under its fuse", rules.NeedsFigure),
		after:  []string{"supply-laid", "fuse", "exhaust-tight", "intake-tight", "battery-on", "sealant-cured", "alarm", "outside", "fuel-primed", "fuel-tight"},
		danger: "Gas or fuel may come out where people are, and fuel or a cable may catch fire.",
	},
	{
		id: "glow-voltage", part: FirstRun, do: "Measure the voltage at the heater's plug while it glows.", defers: heaterSays, applies: hasHeater,
		measured: "voltage while it glows", expect: inWords("above what the heater's instructions stop it at", rules.NeedsFigure),
	},
	{
		id: "co-inside", part: FirstRun, do: "Read the carbon monoxide meter inside from outside: it stays at 0, or the heater is switched off and nobody goes in.", caution: rules.AboutFirstRun,
		applies: hasHeater, measured: "carbon monoxide inside", expect: noGas, after: []string{"outside"}, danger: "Exhaust gas kills without a smell.",
	},
	{
		id: "ran", part: FirstRun, do: "Let it run, look and feel round exhaust, fuel line and wiring meanwhile: nothing smokes, drips or chars.", defers: heaterSays, caution: rules.AboutHotExhaust,
		applies: hasHeater, measured: "minutes it ran", since: "start-current", expect: runTime, after: []string{"co-inside"}, danger: "Nobody goes in before the meter has been read.",
	},
	{
		id: "cooled", part: FirstRun, do: "Switch it off at its own switch, and wait until its fan has stopped.", defers: heaterSays, caution: rules.AboutSwitchingOff, applies: hasHeater,
		measured: "minutes until it stopped", since: "ran", expect: inWords("until the fan stops by itself", rules.Practice),
	},
	{
		id: "power-off", part: FirstRun, do: "Only now may its power be taken off, if it is to be.", caution: rules.AboutSwitchingOff, applies: hasHeater,
		after: []string{"cooled"}, danger: "A heater whose power goes while it is hot burns its own inside.",
	},
}

// handingOver is what goes with the van.
var handingOver = []kind{
	{
		id: "clamps-again", part: HandingOver, do: "Tighten all clamps and screws again, cold, after the first heat.", applies: hasHeater,
		after: []string{"cooled"}, danger: "The exhaust burns " + rules.HotLongAfter + ".",
	},
	{id: "notice", part: HandingOver, do: "Put the notice at the fuel filler: " + rules.OffWhenRefuelled + ".", caution: rules.AboutRefuelling, applies: hasHeater},
	{id: "owner-shown", part: HandingOver, do: "Show the owner how it is switched off, the fuse, the alarm and its test, the outlet that stays free, and hand over its instructions.", applies: hasHeater},
	{
		id: "service-agreed", part: HandingOver, dated: true, do: "Agree with the owner on the day of the heater's first service, as its own instructions have it.", defers: heaterSays, applies: hasHeater,
	},
	{
		id: "retorque", part: HandingOver, dated: true, do: "Have the owner back on the day that was agreed: " + Retorque + ".", defers: heaterSays, applies: hasHeater,
	},
}
