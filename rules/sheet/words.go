package sheet

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/vehicles"
)

// Words are what a sheet says in the same words as the screens: package words has them.
type Words struct {
	Standing    func(*rules.Result) string              // how the job stands: "foul"
	Measure     func(scene.Measure) string              // a picture's figure
	Found       func(rules.Finding) string              // "-24.6 mm"
	PlusMinus   func(rules.Finding) string              // "± 3 mm"; "" where nothing measured enters
	Asked       func(rules.Finding) string              // "at least 60 mm"
	Margin      func(rules.Finding) string              // "84.6 mm short"
	Short       func(f rules.Finding, v float64) string // a figure of what a finding is of, lengths without their unit: "60", "30°"
	Check       func(rules.Check) string                // "diagonal: plate 1 to plate 3"
	PilotOff    func(rules.Pilot) string
	Beside      func(*vehicles.Cut) string                    // what a centre beside the pilot hole takes
	BelowSpread func(sigma [2]float64) string                 // how far off a mark from below may be, in a sentence
	OldPilot    func(*rules.Result) string                    // what a centre takes that was moved from its pilot hole; "" for none
	InTheWay    func(*rules.Result, rules.MarkSheet) []string // what stands where tapes would lie on top, and what to do instead
	Moved       func([]rules.Moved) []string                  // "1.5 mm forward: plate 1, plate 2"
	Bits        func(cutlist.Piece) string                    // "137.9, bend 88.7° at radius 60 (92.9), 290.7"
	WhyClear    func(rules.Finding) string                    // why it is clear though its margin is less than its ±; "" of any other
	Spread95    func(sigma float64) string                    // "± 3.5"
	Fall        func(leg geometry.Point3) string              // "↓34", in mm in a metre
	Missing     func(*rules.Result) []Missing
	Otherwise   func(*vehicles.Job) []string // what was made otherwise than planned: "cut", "heater and collar"

	Deviation   func(rules.Deviation) [5]string // what, planned, built, by, "± 1.6"
	Unexplained func([]rules.Deviation) string  // what is said where a hole is farther off than readings explain, else ""
}

// Missing is a title over what was not entered, not said or not looked for.
type Missing struct {
	Title string
	Items []string
}
