package vehicles

import "bench.example/undermark/geometry/survey"

// TapeClasses are the accuracy classes of 2014/32/EU annex X.
var TapeClasses = []string{"I", "II", "III"}

// The defaults of job file format 1, mm and degrees.
const (
	defaultFrames   = 2
	defaultPins     = 0.4 // of the floor's width
	defaultClass    = "II"
	defaultRead     = 1
	defaultMark     = 1
	defaultHeight   = 2
	defaultTurn     = 1
	defaultPilot    = 6
	defaultFuelHole = 12
)

// UsualAcross is the hole this program is for, mm, until a job has one: 127 mm (5 in). common practice, no source.
const UsualAcross = 127

// SideLeft returns the way from the centreline to the left side reference edge used from below, mm.
func (j *Job) SideLeft() float64 { return j.Datum.Left.Or(j.Floor.Width / 2) }

// SideRight returns the way from the centreline to the right side reference edge used from below, mm.
func (j *Job) SideRight() float64 { return j.Datum.Right.Or(j.Floor.Width / 2) }

// AboveLeft returns the way from the centreline to the left side reference edge used from above, mm.
func (j *Job) AboveLeft() float64 { return j.Datum.AboveLeft.Or(j.SideLeft()) }

// AboveRight returns the way from the centreline to the right side reference edge used from above, mm.
func (j *Job) AboveRight() float64 { return j.Datum.AboveRight.Or(j.SideRight()) }

// Frames returns how far the frames below and above may differ at the cut without two ties, +/- mm.
func (j *Job) Frames() float64 { return j.Datum.Frames.Or(defaultFrames) }

// Pins returns how far the two datum pins stand from the centreline, mm.
func (j *Job) Pins() float64 { return j.Datum.Pins.Or(defaultPins * j.Floor.Width) }

// SurveyTape returns the tape with its defaults filled in.
func (j *Job) SurveyTape() survey.Tape {
	class := j.Tape.Class
	if class == "" {
		class = defaultClass
	}
	return survey.Tape{
		Class:  survey.Class(class),
		Read:   j.Tape.Read.Or(defaultRead),
		Mark:   j.Tape.Mark.Or(defaultMark),
		Height: j.Tape.Height.Or(defaultHeight),
		Turn:   j.Tape.Turn.Or(defaultTurn),
	}
}

// HoleAcross returns the diameter of the fuel line's own hole through the floor, mm.
func (s Supply) HoleAcross() float64 { return s.Hole.Or(defaultFuelHole) }

// PilotAcross returns the diameter of the pilot hole, mm.
func (c Cut) PilotAcross() float64 { return c.Pilot.Or(defaultPilot) }

// OutlineLeft and OutlineRight are how far the van's skin is from the centreline, at the height of the exhaust's outlet, mm.
func (j *Job) OutlineLeft() float64  { return j.Floor.Outline.Left.Or(j.Floor.Width / 2) }
func (j *Job) OutlineRight() float64 { return j.Floor.Outline.Right.Or(j.Floor.Width / 2) }

// OutlineRear is where the van's skin ends at the rear, mm in x. Nobody knows where x starts at another line than the bumper's
// edge: ok is then false, unless the job says.
func (j *Job) OutlineRear() (rear float64, ok bool) {
	return j.Floor.Outline.Rear.Value, j.Floor.Outline.Rear.Set || j.Datum.Name == ""
}
