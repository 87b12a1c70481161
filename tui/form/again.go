package form

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// mostAgain is how often refused texts are tried again for one change: each time something was taken that others may have
// waited for.
const mostAgain = 3

// Again tries the texts again that a job refused, as something has changed since: a hook's drop, a matching point, another
// edge. It returns the job in which what now fits is taken and the rest has the reason it has now, and the texts taken.
func Again(records func(desk.State) []Record, s desk.State) (job vehicles.Job, taken []vehicles.Refusal) {
	for range mostAgain {
		before := s.Job.Refused()
		for _, record := range records(s) {
			if len(Refused(record, s.Job)) > 0 {
				s.Job = again(record, s)
			}
		}
		now := s.Job.Refused()
		gone := slices.DeleteFunc(before, func(r vehicles.Refusal) bool {
			return slices.ContainsFunc(now, func(o vehicles.Refusal) bool { return o.Field == r.Field && o.Text == r.Text && o.Label == r.Label })
		})
		if taken = append(taken, gone...); len(gone) == 0 {
			break
		}
	}
	return s.Job, taken
}

// again tries the refused texts of one record again.
func again(record Record, s desk.State) vehicles.Job {
	_, s.Faults = rules.Reduce(s.Job, s.Book)
	texts := held(record, s.Job)
	after, next, err := record.Set(s, texts)
	if err == nil {
		return taken(s.Job, after, record, next, texts)
	}
	all := Refused(record, s.Job)
	for _, r := range all[max(0, len(all)-mostAlone):] {
		one := map[string]string{r.Field: r.Text}
		if after, next, fails := record.Set(s, one); fails == nil {
			return taken(s.Job, after, record, next, one)
		}
	}
	return rejudged(record, err, s)
}

// rejudged gives the refused texts of a record the reason they have now.
func rejudged(record Record, why error, s desk.State) vehicles.Job {
	of, _ := NameOf(record, s.Job)
	all := s.Job.Refused()
	var mine []*vehicles.Refusal
	for i := range all {
		if all[i].Of == of {
			mine = append(mine, &all[i])
		}
	}
	judge(record, mine, why, s)
	return s.Job.WithRefused(all)
}
