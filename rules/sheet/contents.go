package sheet

// contents are the sections of a job sheet, in the order in which the work goes.
var contents = []func(*source) Section{
	(*source).above,
	(*source).below,
	(*source).runs,
	(*source).checks,
	(*source).built,
	(*source).cuts,
	(*source).toOrder,
	(*source).sized,
	(*source).cautions,
	(*source).steps,
	(*source).notes,
	(*source).signOff,
}
