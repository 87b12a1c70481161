package sheet

// contents are the sections of a job sheet, in the order in which the work goes. What is sized belongs behind the cut list, the parts to
// order behind that; the steps of the work and the record of the first run behind the cautions.
var contents = []func(*source) Section{
	(*source).above,
	(*source).below,
	(*source).runs,
	(*source).checks,
	(*source).cuts,
	(*source).cautions,
	(*source).notes,
	(*source).signOff,
}
