package vehicles

import (
	"math"

	"bench.example/undermark/geometry/survey"
)

// looksKept are the places of the runs when the kinds of a list were looked for.
func looksKept(name string, l LookList) kept {
	take := func(j *Job, value any) any {
		_, looks := j.lists(l)
		return takeItems(value, func(item any) bool {
			look, ok := asLook(asTable(item))
			if ok {
				*looks = append(*looks, look)
			}
			return ok
		})
	}
	give := func(j Job) any {
		_, looks := j.lists(l)
		return tablesOf(*looks, lookTable)
	}
	return kept{name, OfLookedRound, take, give}
}

// keptKinds is the key of the kinds in a look; a run's place stands under the run's own key.
const keptKinds = "kinds"

func lookTable(look Look) map[string]any {
	kinds := make([]any, len(look.Kinds))
	for i, kind := range look.Kinds {
		kinds[i] = kind
	}
	table := map[string]any{keptKinds: kinds}
	for _, k := range RunKinds {
		if len(look.Runs[k]) == 0 {
			continue
		}
		points := make([]any, len(look.Runs[k]))
		for i, p := range look.Runs[k] {
			points[i] = []any{p.X + 0, p.Y + 0, p.Drop + 0} // a negative zero becomes a plain one, as it does when it is read
		}
		table[k.Table()] = points
	}
	return table
}

// asLook is the look of a table with what we write in it and nothing else.
func asLook(table map[string]any) (look Look, ok bool) {
	known := 1
	for _, item := range asList(table[keptKinds]) {
		kind, isText := item.(string)
		if !isText {
			return look, false
		}
		look.Kinds = append(look.Kinds, kind)
	}
	for _, k := range RunKinds {
		value, there := table[k.Table()]
		if !there {
			continue
		}
		known++
		if look.Runs[k] = asPath(value); look.Runs[k] == nil {
			return look, false
		}
	}
	return look, len(look.Kinds) > 0 && known == len(table)
}

// asPath is the path of a list of points, nil when it is none.
func asPath(value any) (path List[RunPoint]) {
	for _, item := range asList(value) {
		list := asList(item)
		if len(list) != 3 {
			return nil
		}
		var p [3]float64
		for i := range p {
			v, isNumber := asNumber(list[i])
			if !isNumber || !(math.Abs(v) <= 4*survey.Longest) { // a stub may lie past the longest length
				return nil
			}
			p[i] = v
		}
		path = append(path, RunPoint{p[0], p[1], p[2]})
	}
	return path
}
