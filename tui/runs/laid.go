package runs

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// toTell is what the line above the foot had no room for when runs were put in. It stands in the panel while the job has them as they were put in.
type toTell struct {
	text string
	runs [3]*vehicles.Run
}

// runsOf are the runs of a job, by kind.
func runsOf(job *vehicles.Job) (runs [3]*vehicles.Run) {
	for _, of := range vehicles.RunKinds {
		runs[of] = job.Run(of)
	}
	return runs
}

// rows are its rows in a panel of w columns.
func (t toTell) rows(s desk.State, w int) []string {
	if t.text == "" || t.runs != runsOf(&s.Job) {
		return nil
	}
	return desk.Wrapped(s.Settings.Styles().Plain, t.text, w)
}

// brevity is how much is left to the panel of what is said of runs that were put in.
type brevity int

const (
	inFull   brevity = iota
	untaken          // what they were taken to be
	unsized          // and how long they are
	unnamed          // and what is nearest to them; the panel lists it
	uncalled         // and what is doubtful of them, which is counted
)

// saysLaid says what is put in, in as many words as the line has room for, and what is left to the panel.
func (m screen) saysLaid(s desk.State) (say, rest string) {
	for how := inFull; how <= uncalled; how++ {
		say, rest = m.saysSo(how, s)
		if m.w == 0 || len(desk.Wrap(say, m.w)) <= sayingRows {
			break
		}
	}
	return say, rest
}

// saysSo is what is said and left so briefly.
func (m screen) saysSo(how brevity, s desk.State) (say, rest string) {
	q, undo := m.finder.quest, desk.KeyUndo.Help().Key+" takes it back."
	if how > inFull && !wholePanel(m.w, m.h) {
		undo = desk.KeyUndo.Help().Key + " undoes it; " + keyProfile.Help().Key + ": more."
	}
	laid, sizes := m.laidSo(how, s)
	say = survey.Joined(" ", laid, undo)
	switch how {
	case inFull:
		return survey.Joined(" ", say, q.saysTaken(), q.lacks), ""
	case untaken:
		return survey.Joined(" ", say, q.lacks), q.saysTaken()
	}
	return say, survey.Joined(" ", sizes, q.lacks, q.saysTaken())
}

// saysTaken says what runs that were not there were taken to be.
func (q quest) saysTaken() string {
	if len(q.taken) == 0 {
		return ""
	}
	return "Taken (" + keyPipe.Help().Key + ", " + keyType.Help().Key + ": other): " + strings.Join(q.taken, "; ") + "."
}

// laidSo says what was put in and what stayed, and by itself how long one is that is said without that.
func (m screen) laidSo(how brevity, s desk.State) (laid, sizes string) {
	said := m.finder.found.Said
	var put []int
	for i := range said {
		if said[i].Run != nil && !said[i].Here {
			put = append(put, i)
		}
	}
	switch {
	case len(put) == 1 && how < unsized:
		laid = inFullOf(m.finder.quest.runs[put[0]], said[put[0]], s)
	case len(put) > 0:
		begins, each := "Laid: ", []string(nil)
		for _, i := range put {
			if said[i].Found() {
				begins = "Laid; to spare: "
			}
			each = append(each, spareOf(m.finder.quest.runs[i], said[i], how < unnamed, s))
		}
		laid = survey.Joined(" ", begins+strings.Join(each, "; ")+".", doubtsOf(said, how < uncalled))
		if len(put) == 1 {
			sizes = words.Upper(sizesOf(m.finder.quest.runs[put[0]], said[put[0]], s)) + "."
		}
	}
	if said[0].Here {
		laid = survey.Joined(" ", stayed(said, s), laid)
	}
	return laid, sizes
}

// spareOf says what a run keeps, by name of what is nearest or without.
func spareOf(of vehicles.RunKind, r rules.Route, named bool, s desk.State) string {
	text := of.String() + " "
	switch {
	case !r.Found():
		return text + missed(r, s)
	case !r.Margin.Set:
		return text + "nothing near"
	}
	text += desk.Length(r.Margin.Value, s.Settings.Units)
	if named {
		text += " (" + r.Against + ")"
	}
	return text
}

// missed says of a run that breaks rules which is the worst of them and by how much: beside that nothing is to spare.
func missed(r rules.Route, s desk.State) string {
	worst := r.Missed()[0]
	return desk.VerdictWord(worst.Verdict) + ": " + worst.About() + ", " + words.Margin(worst, s.Settings.Units)
}

// sizesOf says how long a run is, and how much it bends.
func sizesOf(of vehicles.RunKind, r rules.Route, s desk.State) string {
	u := s.Settings.Units
	return fmt.Sprintf("%s laid: %s long, %s of bends", of, desk.Length(r.Length, u), desk.Quantity(r.Bends, rules.Degree, u))
}

// inFullOf says of a run that was put in how long it is, what it keeps and what is not clear of it.
func inFullOf(of vehicles.RunKind, r rules.Route, s desk.State) string {
	text := sizesOf(of, r, s) + ", "
	switch {
	case !r.Found():
		return text + missed(r, s) + "."
	case !r.Margin.Set:
		text += "nothing that was entered is near it."
	default:
		text += "of what was entered " + r.Against + " is nearest, " + desk.Length(r.Margin.Value, s.Settings.Units) + " to spare."
	}
	if r.Verdict != rules.Clear && len(r.Misses) > 0 {
		text += " " + words.Upper(desk.VerdictWord(r.Verdict)) + ": " + r.Misses[0].About() + "."
	}
	return text
}

// doubtsOf says what is doubtful of runs that were found, a thing once, by name or how many; "" for nothing.
func doubtsOf(routes []rules.Route, byName bool) string {
	var named []string
	for i := range routes {
		r := &routes[i]
		if r.Here || r.Verdict != rules.Doubtful || len(r.Misses) == 0 {
			continue
		}
		if name := against(&r.Misses[0]); !slices.Contains(named, name) {
			named = append(named, name)
		}
	}
	switch {
	case len(named) == 0:
		return ""
	case !byName:
		named = []string{survey.Counted(len(named), "thing")}
	}
	return words.Upper(desk.VerdictWord(rules.Doubtful)) + ": " + strings.Join(named, ", ") + "."
}

// against names what a finding has a run beside, or all of what it is of.
func against(f *rules.Finding) string {
	if _, other, is := f.Apart(); is {
		return other
	}
	return f.About()
}
