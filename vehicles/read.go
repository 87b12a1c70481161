package vehicles

import (
	"strings"
	"unicode"

	"bench.example/undermark/geometry/survey"
)

// readJob reads all tables of a file and reports what is wrong with them to r. What is wrong is left out of the job.
func readJob(r *reader, values map[string]any) Job {
	t := &table{r: r, values: values}
	t.known = append(t.known, "format")
	var j Job
	if s := t.sub("job", required); s != nil {
		s.job(&j)
	}
	if s := t.sub("floor", required); s != nil {
		j.Floor = s.floor()
	}
	if s := t.sub("datum", optional); s != nil {
		j.Bow = s.bow()
		j.Datum = s.datum()
	}
	if s := t.sub("tape", optional); s != nil {
		j.Tape = s.tape()
	}
	t.things(&j)
	t.plans(&j)
	t.sizes(&j)
	j.Looked = t.flags("looked", Kinds, "obstruction")
	j.LookedRuns = t.flags("looked_runs", Kinds, "obstruction")
	j.LookedOpenings = t.flags("looked_openings", OpeningKinds, "opening")
	if s := t.sub("check", optional); s != nil {
		j.RunChecks = s.choice("runs", optional, []string{InFull})
		s.done()
	}
	t.built(&j)
	j.Done = t.record()
	j.Rules = t.ruleValues("rules")
	if s := t.sub("extra", optional); s != nil && len(s.values) > 0 {
		j.readExtra(s.values)
	}
	if wrong := j.TooMany(); wrong != "" {
		r.fault("", " %s", wrong)
	}
	r.texts("", values)
	t.done()
	return j
}

// things reads the lists of tables.
func (t *table) things(j *Job) {
	for _, s := range t.list("obstruction") {
		j.Obstructions = append(j.Obstructions, s.obstruction())
	}
	for _, s := range t.list("opening") {
		j.Openings = append(j.Openings, s.opening())
	}
	for _, s := range t.list("fitting") {
		j.Fittings = append(j.Fittings, s.fitting())
	}
	for _, s := range t.list("tie") {
		j.Ties = append(j.Ties, s.tie())
	}
	for _, s := range t.list("wheel") {
		j.Wheels = append(j.Wheels, s.wheel())
	}
	for _, key := range []string{"obstruction", "opening", "fitting", "tie"} {
		t.r.unique(key)
	}
}

// plans reads what is planned, and where the customer would like it.
func (t *table) plans(j *Job) {
	t.made(j)
	if s := t.sub("wish", optional); s != nil {
		j.Wish = s.wish()
	}
}

// made reads what is made: the heater, its cut and its runs.
func (t *table) made(j *Job) {
	if s := t.sub("heater", optional); s != nil {
		j.Heater = s.heater()
	}
	if s := t.sub("cut", optional); s != nil {
		j.Cut = s.cut()
	}
	for _, k := range RunKinds {
		if s := t.sub(k.Table(), optional); s != nil {
			*j.run(k) = s.run(k)
		}
	}
}

// sizes reads what sizes are reckoned from.
func (t *table) sizes(j *Job) {
	for _, s := range t.list("layer") {
		j.Stack = append(j.Stack, s.layer())
	}
	if s := t.sub("mount", optional); s != nil {
		j.Mount = s.mount()
	}
	if s := t.sub("electrics", optional); s != nil {
		j.Electrics = s.electrics()
	}
	if s := t.sub("wiring", optional); s != nil {
		j.Wiring = s.wiring()
	}
	if s := t.sub("duct", optional); s != nil {
		j.Ductwork = s.ductwork()
	}
	if s := t.sub("body", optional); s != nil {
		j.Body = s.body()
	}
	for _, s := range t.list("surface") {
		j.Surfaces = append(j.Surfaces, s.surface())
	}
	t.r.unique("surface")
}

func (t *table) job(j *Job) {
	j.Ref = t.line("ref", required)
	j.Vehicle = t.line("vehicle", optional)
	j.Fitter = t.line("fitter", optional)
	j.Date = t.date("date")
	j.Notes = t.text("notes", optional, AText, func(r rune) bool {
		return unicode.IsControl(r) && r != '\n' && r != '\t' && r != '\r'
	})
	t.done()
}

func (t *table) floor() Floor {
	var outline Outline
	if s := t.sub("outline", optional); s != nil {
		outline = Outline{s.number("left", optional, ASize), s.number("right", optional, ASize), s.number("rear", optional, ALength)}
		s.done()
	}
	f := Floor{
		Outline:   outline,
		Deck:      t.choice("deck", optional, []string{Steel, Timber}),
		Layers:    t.choice("layers", optional, []string{Wood, NoLayers}),
		From:      t.number("from", required, ALength).Value,
		Length:    t.number("length", required, ASize).Value,
		Width:     t.number("width", required, ASize).Value,
		Thickness: t.number("thickness", required, ASize).Value,
		Ground:    t.number("ground", required, ASize).Value,
	}
	t.done()
	return f
}

func (t *table) datum() Datum {
	d := Datum{
		Name:       t.line("name", optional),
		HookBelow:  t.number("hook_below", optional, ALength),
		HookAbove:  t.number("hook_above", optional, ALength),
		ShiftAbove: t.number("shift_above", optional, ALength),
		Left:       t.number("left", optional, ASize),
		Right:      t.number("right", optional, ASize),
		AboveLeft:  t.number("above_left", optional, ASize),
		AboveRight: t.number("above_right", optional, ASize),
		SideBelow:  t.number("side_below", optional, ALength),
		SideAbove:  t.number("side_above", optional, ALength),
		Frames:     t.number("frames", optional, anError),
		Pins:       t.number("pins", optional, ASize),
		PinsOn:     t.choice("pins_on", optional, []string{Batten}),
		EdgesBelow: t.line("edges_below", optional),
		EdgesAbove: t.line("edges_above", optional),
	}
	t.done()
	return d
}

func (t *table) tape() Tape {
	tape := Tape{
		Class:  t.choice("class", optional, TapeClasses),
		Read:   t.number("read", optional, anError),
		Mark:   t.number("mark", optional, anError),
		Height: t.number("height", optional, anError),
		Turn:   t.number("turn", optional, anError),
	}
	t.done()
	return tape
}

func (t *table) obstruction() Obstruction {
	o := Obstruction{
		Name:     t.line("name", required),
		Kind:     t.choice("kind", required, Kinds),
		Place:    t.place(required),
		Drop:     t.drop(optional),
		TapedAt:  t.number("taped_at", optional, ALength),
		Measured: t.flag("measured", true),
		Holds:    t.choice("holds", optional, FuelKinds),
		Travel:   t.number("travel", optional, ADistance),
		Total:    t.totals(),
	}
	t.done()
	return o
}

func (t *table) opening() Opening {
	o := Opening{
		Name:  t.line("name", required),
		Kind:  t.choice("kind", required, OpeningKinds),
		Place: t.place(optional),
		Drop:  t.drop(required),
	}
	o.Unconfirmed = !t.flag("measured", true)
	t.done()
	return o
}

func (t *table) fitting() Fitting {
	f := Fitting{Name: t.line("name", required), Kind: t.choice("kind", optional, Kinds), Place: t.place(required), Rise: t.rise(required), Total: t.totals()}
	f.Unconfirmed = !t.flag("measured", true)
	t.done()
	return f
}

func (t *table) tie() Tie {
	tie := Tie{
		Name:  t.line("name", required),
		Below: t.pair("below", required, survey.X, survey.Y),
		Above: t.pair("above", required, survey.X, survey.Y),
		Use:   t.flag("use", true),
	}
	t.done()
	return tie
}

func (t *table) wheel() Wheel {
	w := Wheel{
		At:     t.point("at", required),
		Across: t.number("across", optional, ASize).Value,
		Width:  t.number("width", optional, ASize).Value,
	}
	t.done()
	return w
}

func (t *table) cut() *Cut {
	c := Cut{
		At:     t.point("at", required),
		Across: t.number("across", required, ASize).Value,
		Pilot:  t.number("pilot", optional, ASize),
	}
	c.Drilled, c.Old = t.hole("drilled"), t.hole("old_pilot")
	if strings.HasPrefix(t.path, "built.") { // a hole that is planned is not sawn
		c.Sawn = t.eitherOf("sawn", `sawn = { x = 1222, y = "L 652" }`)
	}
	for _, s := range t.list("direct") {
		c.Direct = append(c.Direct, s.direct())
	}
	c.Relieved = t.number("relieved", optional, ASize)
	if c.Across > 0 && c.Pilot.Value >= c.Across {
		t.r.fault(joinKey(t.path, "pilot"), " is %s; it must be less than across, %s", survey.Exact(c.Pilot.Value), survey.Exact(c.Across))
	}
	if c.Across > 0 && c.Relieved.Set && c.Relieved.Value < c.Across {
		t.r.fault(joinKey(t.path, "relieved"), " is %s; it must be at least across, %s", survey.Exact(c.Relieved.Value), survey.Exact(c.Across))
	}
	t.done()
	return &c
}

// hole reads where a hole was measured from below, nil for none.
func (t *table) hole(key string) *Pair {
	t.known = append(t.known, key)
	if !t.has(key) {
		return nil
	}
	p := t.pair(key, optional, survey.X, survey.Y)
	return &p
}

// direct reads a tape from the drilled hole to a thing.
func (t *table) direct() DirectTape {
	d := DirectTape{To: t.line("to", required)}
	if value, path, ok := t.take("gap", required, acceptedGap); ok {
		if text, isText := value.(string); isText && startsAtASide(text) {
			t.wrong(path, value, acceptedGap)
		} else if d.Gap = t.reading(path, value, survey.X); d.Gap.Length < 0 {
			t.wrong(path, value, acceptedGap)
		}
	}
	t.done()
	return d
}

// startsAtASide tells whether a reading is of another start than the place the tape is held to.
func startsAtASide(text string) bool {
	r, err := survey.Parse(text, survey.Y)
	return err == nil && r.Start != survey.Datum
}

const acceptedGap = "a reading of 0 or more, without L, R and +: a number of mm, or a text like \"65.2cm\""
