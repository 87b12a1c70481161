package drawing

import (
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Legend returns the kinds that a job has under the floor or inside it, in the order of lists, each once.
func Legend(job vehicles.Job) []vehicles.Kind {
	there := map[string]bool{}
	for i := range job.Obstructions {
		there[vehicles.KindOf(job.Obstructions[i].Kind).Name] = true
	}
	for i := range job.Fittings {
		if f := &job.Fittings[i]; rules.InsideFloor(f) {
			there[vehicles.KindOf(f.Kind).Name] = true
		}
	}
	var legend []vehicles.Kind
	for _, name := range vehicles.Kinds {
		if there[name] {
			legend = append(legend, vehicles.KindOf(name))
		}
	}
	return legend
}
