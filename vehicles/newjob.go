package vehicles

// NewJob returns a job for an empty van. Its floor is that of a middling van, to be measured before anything else:
// common practice, no source. Its errors start larger than the file's defaults, so that a fitter who never looks at
// them gets doubt and not false comfort. Its floor's sizes count as guesses until each is measured, and how the tapes are held is asked.
func NewJob(ref string) Job {
	heater, _ := HeaterClass(DefaultHeaterClass)
	job := Job{
		Ref:    ref,
		Floor:  Floor{From: 40, Length: 3000, Width: 1750, Thickness: 30, Ground: 450},
		Datum:  Datum{Frames: Some(5)},
		Tape:   Tape{Class: defaultClass, Read: Some(1.5), Height: Some(3)},
		Heater: &heater,

		RunChecks: InFull,
	}
	return job.WithFloorGuessed().withTapesAsked()
}
