package drawing

import "bench.example/undermark/rules"

// Worst are the findings that a plan shows of those that concern something: those with a place, at most n, as people read them,
// one for each thing. That of the cut goes before those of its bolt holes, which lie beside it; the figure is a list's all the same.
func Worst(findings []rules.Finding, concerns func(*rules.Finding) bool, n int) (shown []*rules.Finding) {
	at := map[rules.Thing]int{}
	for _, f := range rules.ForPeople(findings) {
		if f.Places == 0 || !concerns(f) {
			continue
		}
		i, there := at[f.Against]
		switch {
		case there && f.Against.Sort != rules.Nothing:
			if f.Subject.Sort == rules.TheCut && shown[i].Subject.Sort != rules.TheCut && f.Verdict == shown[i].Verdict {
				shown[i] = f
			}
		case len(shown) < n:
			at[f.Against] = len(shown)
			shown = append(shown, f)
		}
	}
	return shown
}
