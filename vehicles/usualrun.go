package vehicles

// UsualRun is what a run starts with until the fitter says otherwise: pipe and hose of a heater of 2 kW, bent by hand. common
// practice, no source.
func UsualRun(k RunKind) Run {
	return Run{Across: [...]float64{26, 28, 4.5}[k], Bend: [...]Number{Some(60), Some(60), {}}[k]}
}

// UsualMuffler and UsualPump are what hangs on a run until the fitter says otherwise, on its first leg; the pump's outlet is tilted up.
// common practice, no source
var (
	UsualMuffler = Muffler{Leg: 1, Length: 180, Across: 68}
	UsualPump    = Pump{Leg: 1, Tilt: 30}
)
