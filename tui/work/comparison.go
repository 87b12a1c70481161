package work

import (
	"fmt"
	"strings"
	"sync/atomic"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
)

// What came of it that something was made otherwise: the findings as built beside those planned.

// comparison is a job as built beside itself as planned.
type comparison struct {
	planned, built rules.Result
	fault          string // why what was built can't be judged, "" where it can
	deviations     []rules.Deviation
	differ         []rules.Compared
}

// lastCompared is the comparison that was made last: a picture asks for it several times, and judging takes as long as a key may.
var lastCompared atomic.Pointer[comparison]

// compared is the job on the desk as it was built beside itself as planned; ok is false where nothing was made otherwise.
func compared(s desk.State) (c *comparison, ok bool) {
	if s.Job.Built == nil || s.Result.Job.Built == nil || len(s.Faults) > 0 || len(s.Result.Findings) == 0 {
		return nil, false
	}
	if c = lastCompared.Load(); c == nil || !c.of(&s.Result) {
		c = compare(s)
		lastCompared.Store(c)
	}
	return c, true
}

// of tells whether the comparison is of a result: the same findings, and the same made otherwise. Neither is ever edited in place.
func (c *comparison) of(r *rules.Result) bool {
	return c.planned.Job.Built == r.Job.Built && &c.planned.Findings[0] == &r.Findings[0]
}

// compare judges the job as it was built.
func compare(s desk.State) *comparison {
	c := comparison{planned: s.Result}
	built, wrong := rules.AsBuilt(&s.Result, s.Book)
	var faults []string
	for _, f := range wrong {
		faults = append(faults, f.Text)
	}
	if c.built, c.fault = built, strings.Join(faults, "; "); c.fault != "" {
		return &c
	}
	c.deviations = rules.Deviations(&c.planned, &c.built)
	for _, pair := range rules.Compare(&c.planned, &c.built) {
		if !pair.Same() {
			c.differ = append(c.differ, pair)
		}
	}
	return &c
}

// head says how the job stands both ways.
func (c *comparison) head() string {
	if c.fault != "" {
		return "As built it can't be worked out: " + c.fault
	}
	worse := 0
	for _, p := range c.differ {
		if p.Worse() {
			worse++
		}
	}
	return fmt.Sprintf("As built: %s. As planned: %s. Worse than planned: %d.", words.Tally(c.built.Findings), words.Tally(c.planned.Findings), worse)
}

// lines are the same as lines.
func (c *comparison) lines(s desk.State) (lines []string) {
	u := s.Settings.Units
	for _, d := range c.deviations {
		lines = append(lines, words.DeviationLine(d, u))
	}
	if note := words.Unexplained(c.deviations); note != "" {
		lines = append(lines, note)
	}
	for _, p := range c.differ {
		of := p.Built
		if of == nil {
			lines = append(lines, fmt.Sprintf("%s: %s, planned %s", words.BuiltVerdict(p), p.Planned.About(), words.Margin(*p.Planned, u)))
			continue
		}
		line := fmt.Sprintf("%s: %s, %s", words.BuiltVerdict(p), of.About(), words.Margin(*of, u))
		if p.Planned != nil {
			line += ", planned " + words.Margin(*p.Planned, u)
		}
		lines = append(lines, line)
	}
	return lines
}

// Nothing was made otherwise.
const asPlanned = "All as planned. What came out otherwise is typed here, and every clearance is judged anew beside the one planned; a blank is as planned."

// builtRow is a row of what was made.
func builtRow(r builtRecord, s desk.State) form.Row {
	out := form.Row{Mark: "   ", Text: r.of.String(), Right: "as planned"}
	if r.of == firstBuilt(s) {
		out.Head = "As built"
	}
	for _, name := range words.BuiltOtherwise(&s.Job) {
		if name == r.of.String() {
			out.Right = "otherwise"
		}
	}
	if !r.of.there(&s.Job) {
		out.Right, out.Fault = "! built, and planned no more", true
	}
	return out
}

// firstBuilt is the first thing made that the job has.
func firstBuilt(s desk.State) builtOf {
	if all := builtRecords(&s.Job); len(all) > 0 {
		return all[0].(builtRecord).of
	}
	return builtCut
}
