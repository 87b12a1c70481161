package vehicles

// Unfinished begins the key under [extra] where things lie that were begun and lack readings: "unfinished obstruction",
// "unfinished opening", "unfinished fitting". They can't be judged, but something is there.
const Unfinished = "unfinished "

// UnfinishedCount is how many things of the job were begun and lack readings.
func (j Job) UnfinishedCount() int {
	n := 0
	for _, what := range []string{"obstruction", "opening", "fitting"} {
		switch list := j.Extra[Unfinished+what].(type) {
		case []map[string]any:
			n += len(list)
		case []any:
			n += len(list)
		}
	}
	return n
}
