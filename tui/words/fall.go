package words

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// upright is how little a leg goes aside in plan, mm, that stands.
const upright = 1

// Fall is how steep a leg is: mm down or up in a metre of plan, or that it stands, lies level, or is steeper than 45 degrees.
func Fall(leg geometry.Point3) string {
	plan := leg.Plan().Norm()
	switch fall := -1000 * leg.Z / plan; {
	case plan < upright && leg.Z <= 0:
		return "down"
	case plan < upright:
		return "up"
	case math.Round(fall) == 0:
		return "level"
	case fall < -steep:
		return "↑>" + steepIs
	case fall > steep:
		return "↓>" + steepIs
	case fall < 0:
		return "↑" + survey.Figure(math.Round(-fall))
	default:
		return "↓" + survey.Figure(math.Round(fall))
	}
}
