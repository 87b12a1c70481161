package drawing

import "bench.example/undermark/vehicles"

// Legend returns the kinds that a job has, in the order of lists, each once.
func Legend(job vehicles.Job) []vehicles.Kind {
	there := map[string]bool{}
	for i := range job.Obstructions {
		there[vehicles.KindOf(job.Obstructions[i].Kind).Name] = true
	}
	var legend []vehicles.Kind
	for _, name := range vehicles.Kinds {
		if there[name] {
			legend = append(legend, vehicles.KindOf(name))
		}
	}
	return legend
}
