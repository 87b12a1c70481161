package rules_test

import (
	"math"
	"math/cmplx"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// turned is a turn of so many degrees anticlockwise.
func turned(degrees float64) complex128 { return cmplx.Rect(1, degrees*math.Pi/180) }

// panelVan is the van of the proof. Its things lie round the cut; each is judged against the cut by itself, so
// that they may be in each other's way.
func panelVan(ties int) *van {
	v := &van{
		hookBelow: 150, sideBelow: 130, hookAbove: 60, left: 890, right: 890, aboveLeft: 885, zeroAbove: 25,
		turn: 1, cut: 1210 + 240i, radius: 63.5,
	}
	if ties > 0 {
		v.turn, v.shift = turned(0.6), -14+6i
		v.ties = []complex128{420 - 560i, 2310 + 610i, 1950 - 480i, 620 + 520i, 2700 - 150i}[:ties:ties]
	}
	v.things = []truth{
		crossEdge("edge across", "crossmember", 1000, 1084),
		longEdge("edge along", "chassis rail", 350, 410),
		cornered("corner", "fuel tank"),
		askew("turned edge", "floor rib", v.cut, 25, 150+40i, -1i, 60),
		askew("turned corner", "suspension", v.cut, -30, 200+60i, (-1+1i)/math.Sqrt2, 0),
		wheel("round", "spare wheel", 1400+420i, 200),
		piped("line at its bend", "brake line", 8, (*visit).fromMiddle, 900+60i, 1212+98i, 1600+40i),
		head("edge ends opposite", "plastic part"),
	}
	return v
}

// crossEdge lies behind the cut, its far edge run on from the near one.
func crossEdge(name, kind string, near, far float64) truth {
	return truth{
		name: name, kind: kind, bottom: 95, tapeAt: 95, gap: fromBox(near, far, -850, 850),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				X: vehicles.Pair{v.x(near, drop), v.on(far - near)},
				Y: vehicles.Pair{v.fromCentre(-850), v.fromCentre(850)},
			}
		},
	}
}

// longEdge lies to the left of the cut, its right edge run on from the left one.
func longEdge(name, kind string, right, left float64) truth {
	return truth{
		name: name, kind: kind, bottom: 110, tapeAt: 110, gap: fromBox(310, 2600, right, left),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				X: vehicles.Pair{v.x(310, drop), v.x(2600, drop)},
				Y: vehicles.Pair{v.fromLeft(left, drop), v.on(left - right)},
			}
		},
	}
}

// cornered shows the cut its rear left corner.
func cornered(name, kind string) truth {
	return truth{
		name: name, kind: kind, top: 20, bottom: 220, tapeAt: 200, gap: fromBox(1300, 1900, -500, 150),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				X: vehicles.Pair{v.x(1300, drop), v.x(1900, drop)},
				Y: vehicles.Pair{v.fromRight(-500, drop), v.on(650)},
			}
		},
	}
}

// askew is a turned rectangle 110 mm from the cut's centre: facing is the direction from it to the cut in its own frame,
// aside how far along its side the cut stands from its middle. It is taped as a job file has it: its four edges before the turn.
func askew(name, kind string, cut complex128, degrees float64, half, facing complex128, aside float64) truth {
	turn := turned(degrees)
	nearest := complex(math.Copysign(real(half), real(facing)), math.Copysign(imag(half), imag(facing)))
	if real(facing) == 0 {
		nearest = complex(aside, imag(nearest))
	}
	middle := cut - turn*(nearest+110*facing)
	low, high := middle-half, middle+half
	return truth{
		name: name, kind: kind, bottom: 60, tapeAt: 60, gap: fromTurned(middle, half, turn),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				X:    vehicles.Pair{v.x(real(low), drop), v.x(real(high), drop)},
				Y:    vehicles.Pair{v.fromLeft(imag(low), drop), v.fromLeft(imag(high), drop)},
				Turn: degrees + v.hand.off(v.hand.turn),
			}
		},
	}
}

func wheel(name, kind string, centre complex128, across float64) truth {
	return truth{
		name: name, kind: kind, top: 60, bottom: 260, tapeAt: 160, gap: fromRound(centre, across/2),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				Shape: vehicles.Disc, Across: vehicles.Some(across),
				Centre: vehicles.Pair{v.x(real(centre), drop), v.fromLeft(imag(centre), drop)},
			}
		},
	}
}

// head lies in front of the cut, whose middle is level with its left end: an error to the right finds it at its front
// edge, one to the left at its corner.
func head(name, kind string) truth {
	return truth{
		name: name, kind: kind, bottom: 80, tapeAt: 80, gap: fromBox(1340, 1440, -300, 240),
		tape: func(v *visit, drop float64) vehicles.Place {
			return vehicles.Place{
				X: vehicles.Pair{v.x(1340, drop), v.x(1440, drop)},
				Y: vehicles.Pair{v.fromRight(-300, drop), v.fromLeft(240, drop)},
			}
		},
	}
}

// sideways is how a y is taped: from a side edge, or level from the centreline.
type sideways = func(v *visit, y, drop float64) survey.Reading

// piped is a line, each of its points taped by itself.
func piped(name, kind string, across float64, y sideways, path ...complex128) truth {
	return truth{
		name: name, kind: kind, top: 20, bottom: 30, tapeAt: 25, gap: fromLine(across/2, path...),
		tape: func(v *visit, drop float64) vehicles.Place {
			p := vehicles.Place{Shape: vehicles.Piped, Across: vehicles.Some(across)}
			for _, q := range path {
				p.Path = append(p.Path, vehicles.Pair{v.x(real(q), drop), y(v, imag(q), drop)})
			}
			return p
		},
	}
}
