package rules

import (
	"cmp"
	"fmt"
	"slices"

	"bench.example/undermark/vehicles"
)

// Advice is one reading worth taking next.
type Advice struct {
	Text        string  `json:"text"`        // "measure: brake pipe, right, drop: ends 3 doubts"
	Obstruction int     `json:"obstruction"` // of the job, from 0; -1 when it is about none
	Field       string  `json:"field"`       // of the job file: drop, taped_at, measured, total.x, total.y, tie, drilled
	Decides     int     `json:"decides"`     // doubtful findings it would make clear or foul
	Gain        float64 `json:"gain"`        // variance it would take away from the doubtful findings together, mm^2
	Opening     int     `json:"-"`           // of the job, from 0; -1 when it is about none

	What, Does string `json:"-"` // what Text is made of: "brake pipe, right, drop" and "ends 3 doubts"

	// taken returns the job after the reading was taken and came out as expected: what was entered is confirmed as it
	// stands, a chain is measured from its zero to where it ends, a drop nobody measured is that of the things of its
	// kind, or of all. It is for asking what would change, never for keeping.
	taken func(vehicles.Job) vehicles.Job
}

// Next ranks the readings not yet taken, or taken loosely, by how many doubtful findings of a judged job each would
// decide, then by the variance it would take away. Each is simulated by judging the job with it. Those that would change
// nothing are left out, so an empty list says that only moving something can help.
func Next(r Result, book *Book) []Advice {
	doubts := doubtful(&r)
	if len(doubts) == 0 {
		return nil
	}
	var list []Advice
	for _, a := range candidates(&r) {
		after, faults := Judge(a.taken(r.Job), book)
		if len(faults) > 0 {
			continue
		}
		if a.Field == FieldDrilled && !cutIsClear(&after) {
			continue // a hole can't be undone: only when the cut is then clear of all
		}
		a.weigh(doubts, &after)
		if a.Decides == 0 && a.Gain < leastGain {
			continue
		}
		if a.Decides > 0 {
			a.Does = "ends 1 doubt"
			if a.Decides > 1 {
				a.Does = fmt.Sprintf("ends %d doubts", a.Decides)
			}
		} else {
			a.Does = "makes it surer"
		}
		a.Text = "measure: " + a.What + ": " + a.Does
		list = append(list, a)
	}
	slices.SortStableFunc(list, func(a, b Advice) int {
		return cmp.Or(cmp.Compare(b.Decides, a.Decides), cmp.Compare(b.Gain, a.Gain))
	})
	return list
}

// leastGain is the variance, mm^2, below which a reading that decides nothing is not worth naming: a tenth of a
// millimetre squared.
const leastGain = 0.01

// ask is what a finding is about, so that it is found again in another judging of the same things.
type ask struct {
	rule             *Rule
	subject, against Thing
}

func (f *Finding) ask() ask { return ask{f.Rule, f.Subject, f.Against} }

// doubtful are the findings to be decided, by what they are about.
func doubtful(r *Result) map[ask]*Finding {
	found := map[ask]*Finding{}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Verdict == Doubtful {
			found[f.ask()] = f
		}
	}
	return found
}

// weigh counts what of the doubts a judging with the reading has decided, and the variance it took away.
func (a *Advice) weigh(doubts map[ask]*Finding, after *Result) {
	for i := range after.Findings {
		f := &after.Findings[i]
		before := doubts[f.ask()]
		if before == nil {
			continue
		}
		if f.Verdict != Doubtful {
			a.Decides++
		}
		if f.Rule.Unit == MM {
			a.Gain += max(0, before.Spread.Sum()-f.Spread.Sum())
		}
	}
}

// cutIsClear tells whether everything that is asked of the cut's place is clear.
func cutIsClear(r *Result) bool {
	return !slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Subject.Sort == TheCut && f.Verdict != Clear })
}
