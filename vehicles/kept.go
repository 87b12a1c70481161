package vehicles

import (
	"fmt"
	"maps"
	"slices"
)

// In a job file what the screens keep of their own lies under [extra], beside what others keep there, each under a name.
// A job has it in fields. What of it is of another shape than the screens write is somebody else's, stays in Job.Extra under that
// name, and is written back.

// kept is a value that lies under a name of ours.
type kept struct {
	name string
	of   Subject
	// take puts what is ours of a value into the job and returns what is not, nil for nothing.
	take func(j *Job, value any) (rest any)
	// give returns the job's own for the file, nil for nothing.
	give func(j Job) any
}

// ours are all the values of ours.
var ours = []kept{
	begun("unfinished obstruction", OfBegunObstruction, func(u *Unfinished) *List[Begun] { return &u.Obstructions }),
	begun("unfinished opening", OfBegunOpening, func(u *Unfinished) *List[Begun] { return &u.Openings }),
	begun("unfinished fitting", OfBegunFitting, func(u *Unfinished) *List[Begun] { return &u.Fittings }),
	begun("unfinished matching point", OfBegunTie, func(u *Unfinished) *List[Begun] { return &u.Ties }),
	{"refused", OfRefused, takeRefusals, giveRefusals},
	{"guesses", OfGuesses, takeGuesses, giveGuesses},
	{"tape held", OfHeld, takeHeld, giveHeld},
	{"looked round", OfLookedRound, takeLooked, giveLooked},
	looksKept("looked round runs", AtRuns),
	looksKept("looked round outlet", AtOutlet),
}

// readExtra takes what is ours from what a file says under [extra], and keeps the rest.
func (j *Job) readExtra(values map[string]any) {
	j.Extra = maps.Clone(values)
	for _, k := range ours {
		value, there := values[k.name]
		if !there {
			continue
		}
		if rest := k.take(j, value); rest != nil {
			j.Extra[k.name] = rest
		} else {
			delete(j.Extra, k.name)
		}
	}
	if len(j.Extra) == 0 {
		j.Extra = nil
	}
}

// allExtra is what the job's file says under [extra].
func (j Job) allExtra() map[string]any {
	all := maps.Clone(j.Extra)
	for _, k := range ours {
		if own := k.give(j); own != nil {
			all = putBeside(all, k.name, own)
		}
	}
	return all
}

// Keeping returns the job with values of others kept under a name of their own.
func (j Job) Keeping(name string, others map[string]any) Job {
	if len(others) > 0 {
		j.Extra = putBeside(maps.Clone(j.Extra), name, others)
	}
	return j
}

// putBeside puts a value under a name, together with what is there already: behind it in a list, between it in a table,
// else under another name.
func putBeside(m map[string]any, name string, own any) map[string]any {
	rest, there := m[name]
	if !there {
		return put(m, name, own)
	}
	if a, b := asTable(own), asTable(rest); a != nil && b != nil {
		return put(m, name, any(between(a, b)))
	}
	if a, b := asList(own), asList(rest); a != nil && b != nil {
		return put(m, name, any(slices.Concat(a, b)))
	}
	m[aside(m, name)] = rest
	return put(m, name, own)
}

// between is a table with the values of another. What keeps its name goes first, or what is put aside could take it.
func between(own, others map[string]any) map[string]any {
	all := maps.Clone(own)
	for key, value := range others {
		if _, taken := own[key]; !taken {
			all[key] = value
		}
	}
	for _, key := range sortedKeys(others) {
		if _, taken := own[key]; taken {
			all[aside(all, key)] = others[key]
		}
	}
	return all
}

// aside is the first name that is free for what others keep under a name that is needed.
func aside(m map[string]any, name string) string {
	for n := 1; ; n++ {
		other := name + " of others"
		if n > 1 {
			other = fmt.Sprint(other, " ", n)
		}
		if _, taken := m[other]; !taken {
			return other
		}
	}
}

func asTable(value any) map[string]any {
	table, _ := value.(map[string]any)
	return table
}

func asList(value any) []any {
	switch list := value.(type) {
	case []any:
		return list
	case []map[string]any:
		out := make([]any, len(list))
		for i := range list {
			out[i] = list[i]
		}
		return out
	}
	return nil
}
