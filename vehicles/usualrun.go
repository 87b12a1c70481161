package vehicles

// UsualRun is what a run starts with until the fitter says otherwise: pipe and hose of a heater of 2 kW, bent by hand. common
// practice, no source.
func UsualRun(k RunKind) Run {
	return Run{Across: [...]float64{26, 28, 4.5}[k], Bend: [...]Number{Some(60), Some(60), {}}[k]}
}

// UsualWhole is that with the usual one of what a run of its kind is not whole without, on its first leg.
func UsualWhole(of RunKind) Run {
	run := UsualRun(of)
	for _, k := range HangingOn(of) {
		if k.Wanted {
			k.Hang(&run.Hanging, 1, 0)
		}
	}
	return run
}
