package sizing

// ID tells one result from all others. Only this package makes one, so that nobody asks for a result by a word that none has.
type ID struct {
	of   Topic
	word string // within its topic, as programs read it
}

// String is what programs read, within its topic: "collar-order".
func (id ID) String() string { return id.word }

// Results of the floor stack.
var (
	Thickest      = ID{Floor, "thickest"}
	Thinnest      = ID{Floor, "thinnest"}
	CollarNeeded  = ID{Floor, "collar"}
	CollarHas     = ID{Floor, "collar-has"}
	CollarToOrder = ID{Floor, "collar-order"}
	Gives         = ID{Floor, "soft"}
	Screw         = ID{Floor, "screw"}
	Bolt          = ID{Floor, "bolt"}
	Sealant       = ID{Floor, "sealant"}
	Cartridges    = ID{Floor, "cartridges"}
	CutBack       = ID{Floor, "cut-back"}
)

// Results of the fuel. Its line's lengths and heights are as Checks has them.
var (
	NoTank         = ID{Fuel, "tank"}
	Filler         = ID{Fuel, "filler"}
	Breather       = ID{Fuel, "breather"}
	Endurance      = ID{Fuel, "endurance"}
	EnduranceLeast = ID{Fuel, "endurance-least"}
	Suction        = ID{Fuel, "suction"}
	Delivery       = ID{Fuel, "delivery"}
	Lift           = ID{Fuel, "lift"}
	Head           = ID{Fuel, "head"}
	LineHolds      = ID{Fuel, "volume"}
	Priming        = ID{Fuel, "strokes"}
	PrimingTakes   = ID{Fuel, "seconds"}
)

// Results of the electrics.
var (
	AfterRun      = ID{Electrics, "after-run"}
	Fuse          = ID{Electrics, "fuse"}
	CableByDrop   = ID{Electrics, "area-drop"}
	CableByFuse   = ID{Electrics, "area-fuse"}
	CableArea     = ID{Electrics, "area"}
	CableDrop     = ID{Electrics, "drop"}
	BatteryLasts  = ID{Electrics, "battery"}
	BatteryNights = ID{Electrics, "nights"}
)

// Results of the heat. Each surface of the body has one of its own beside them.
var (
	HeatLost   = ID{Heat, "loss"}
	AirChanged = ID{Heat, "air"}
	Class      = ID{Heat, "class"}
	Burning    = ID{Heat, "burning"}
	FuelANight = ID{Heat, "litres"}
	WarmIn     = ID{Heat, "warm-up"}
)

// Results of the warm-air duct.
var (
	NoDuct   = ID{Duct, "none"}
	DuctAir  = ID{Duct, "speed"}
	DuctLoss = ID{Duct, "loss"}
	DuctFlow = ID{Duct, "flow"}
)

// Results of the hole saw.
var (
	SawTurns       = ID{Saw, "speed"}
	Disc           = ID{Saw, "disc"}
	OldPilotBeside = ID{Saw, "old-pilot"}
	PilotMoved     = ID{Saw, "moved"}
)
