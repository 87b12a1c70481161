package drawing

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

// Kind is how a kind of obstruction is drawn: one or two letters and the role that gives its pattern.
type Kind struct {
	Name, Code string
	Role       scene.Role
}

// kinds are in the order of vehicles.Kinds. What is long and narrow has a single letter, to fit across it.
var kinds = []Kind{
	{"crossmember", "C", scene.Steel},
	{"chassis rail", "R", scene.Steel},
	{"floor rib", "I", scene.Steel},
	{"brake line", "B", scene.Lines},
	{"fuel line", "F", scene.Lines},
	{"fuel tank", "FT", scene.Lines},
	{"wiring", "W", scene.Lines},
	{"vehicle exhaust", "E", scene.Hot},
	{"spare wheel", "S", scene.Movable},
	{"suspension", "SU", scene.Movable},
	{"driveshaft", "D", scene.Movable},
	{"jacking point", "J", scene.Steel},
	{"plastic part", "P", scene.Movable},
	{"heat shield", "HS", scene.Hot},
	{"wheel arch", "WA", scene.Steel},
	{"double skin", "DS", scene.Steel},
	{"seat mount", "SM", scene.Steel},
	{"seat-belt mount", "SB", scene.Steel},
	{"reductant tank", "RT", scene.Lines},
	{"gas tank", "GT", scene.Lines},
	{"hand-brake cable", "H", scene.Lines},
	{"air line", "A", scene.Lines},
	{"tyre", "T", scene.Movable},
	{"body sill", "BS", scene.Steel},
	{"other", "O", scene.Movable},
}

// KindOf returns how a kind of obstruction is drawn; an unknown one as "other".
func KindOf(name string) Kind {
	for _, k := range kinds {
		if k.Name == name {
			return k
		}
	}
	return kinds[len(kinds)-1]
}

// Legend returns the kinds that a job has, in the order of lists, each once.
func Legend(job vehicles.Job) []Kind {
	there := map[string]bool{}
	for i := range job.Obstructions {
		there[KindOf(job.Obstructions[i].Kind).Name] = true
	}
	var legend []Kind
	for _, k := range kinds {
		if there[k.Name] {
			legend = append(legend, k)
		}
	}
	return legend
}
