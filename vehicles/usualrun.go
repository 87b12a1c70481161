package vehicles

// UsualRun is what a run starts with until the fitter says otherwise: pipe and hose of a heater of 2 kW, bent by hand. common
// practice, no source.
func UsualRun(k RunKind) Run {
	return Run{Across: [...]float64{26, 28, 4.5}[k], Bend: [...]Number{Some(60), Some(60), {}}[k]}
}
