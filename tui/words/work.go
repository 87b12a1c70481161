package words

import (
	"cmp"
	"fmt"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// WorkTally says how many of the steps are done: "3 of 52 done", "all 52 done".
func WorkTally(l work.List) string {
	if done := l.Count(); done < len(l) {
		return fmt.Sprintf("%d of %d done", done, len(l))
	}
	return fmt.Sprintf("all %d done", len(l))
}

// Box is what stands before a step: whether it is done.
func Box(ticked bool) string {
	if ticked {
		return "[x]"
	}
	return "[ ]"
}

// StepDefers says whose word goes first, "" for nobody's.
func StepDefers(s *work.Step) string {
	if s.Defers == "" {
		return ""
	}
	return "First word: " + s.Defers + "."
}

// StepCaution is the caution that stands with a step, "" for none.
func StepCaution(s *work.Step) string {
	for _, c := range rules.Cautions() {
		if s.Caution != "" && c.About == s.Caution {
			return "Caution: " + c.About + ". " + c.Say
		}
	}
	return ""
}

// StepCautionBrief is what such a caution says first, where a row has little room, and the key that shows all of it.
func StepCautionBrief(s *work.Step) string {
	for _, c := range rules.Cautions() {
		if s.Caution != "" && c.About == s.Caution {
			first := cmp.Or(c.Brief, c.Say)
			if c.Brief == "" {
				first = firstClause(first)
			}
			return "Caution: " + strings.TrimSuffix(first, ".") + " (" + desk.KeyCautions.Help().Key + ")."
		}
	}
	return ""
}

// firstClause is a text up to the first stop that has some words before it; "No. 122" has none.
func firstClause(text string) string {
	const someWords = 24
	for i := someWords; i < len(text); i++ {
		if strings.ContainsRune(".;:", rune(text[i])) && !strings.ContainsAny(text[i:min(i+3, len(text))], "0123456789") {
			return text[:i]
		}
	}
	return text
}

// StepWrong is what is wrong with what is recorded of step i, where a row has little room.
func StepWrong(l work.List, i int) string {
	if s := &l[i]; s.Amiss() == "" && s.Ticked() && len(l.Early(i)) > 0 {
		names := []string{}
		for _, first := range l.Early(i) {
			names = append(names, first.Name())
		}
		return "before " + strings.Join(names, ", ")
	}
	return l.Wrong(i)
}

// StepStands says in short what is recorded of a step: when, what came out, on which day it is due.
func StepStands(s *work.Step) string {
	parts := []string{}
	if v := s.Value(); v != "" {
		parts = append(parts, v)
	}
	switch {
	case s.Ticked():
		parts = append(parts, s.Done.When())
	case s.Done.Due != "":
		parts = append(parts, "due "+s.Done.Due)
	}
	return strings.Join(parts, ", ")
}

// StepNote is a note in one line, "" for none.
func StepNote(note string) string {
	if note == "" {
		return ""
	}
	return "note: " + strings.Join(strings.Fields(note), " ")
}

// StepPhotos are the names of a step's photos, "" for none.
func StepPhotos(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return "photos: " + strings.Join(names, ", ")
}

// DueOn says on which day a step is to be done, "" for none.
func DueOn(day string) string {
	if day == "" {
		return ""
	}
	return "to be done on " + day
}

// OfNoStep is what is recorded of a step that the job has not.
const OfNoStep = "recorded, and no step of this job"

// WorkElsewhere names a record of a step that the job has not.
func WorkElsewhere(d vehicles.Done) string {
	text := OfNoStep + ": " + vehicles.StepName(d.Step)
	if said := d.String(); said != "" {
		text += ", " + said
	}
	for _, more := range []string{StepNote(d.Note), StepPhotos(d.Photos)} {
		if more != "" {
			text += "; " + more
		}
	}
	return text
}

// BuiltOtherwise names what of a job was made otherwise than planned, in a fitter's words; none for nothing.
func BuiltOtherwise(j *vehicles.Job) (names []string) {
	for _, table := range j.BuiltOtherwise().Tables() {
		names = append(names, BuiltTable(table))
	}
	return names
}

// BuiltTable is what people call a table of the job file that was made otherwise.
func BuiltTable(table vehicles.BuiltTable) string {
	switch table {
	case vehicles.BuiltHeater:
		return "heater and collar"
	case vehicles.BuiltFuel:
		return vehicles.FuelRun.String()
	}
	return table.String()
}

// BuiltVerdict is the verdict of what was built, with that of what was planned where it is another.
func BuiltVerdict(c rules.Compared) string {
	switch {
	case c.Built == nil:
		return "gone, planned " + c.Planned.Verdict.String()
	case c.Planned == nil:
		return c.Built.Verdict.String() + ", not planned"
	case c.Built.Verdict != c.Planned.Verdict:
		return c.Built.Verdict.String() + ", planned " + c.Planned.Verdict.String()
	}
	return c.Built.Verdict.String()
}
