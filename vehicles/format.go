package vehicles

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"bench.example/undermark/geometry/survey"
)

// Format writes the job as a job file: the same job gives the same bytes, and ParseJob gives the same job back.
// What a file left out stays left out, readings are written as they were said, and comments are not kept.
func (j Job) Format() []byte {
	w := &writer{}
	w.line("format = %d", FormatVersion)
	w.table("job")
	w.text("ref", j.Ref)
	w.texts("vehicle", j.Vehicle)
	w.texts("fitter", j.Fitter)
	w.date("date", j.Date)
	w.texts("notes", j.Notes)
	w.table("floor")
	w.number("from", j.Floor.From)
	w.number("length", j.Floor.Length)
	w.number("width", j.Floor.Width)
	w.number("thickness", j.Floor.Thickness)
	w.number("ground", j.Floor.Ground)
	if o := j.Floor.Outline; o != (Outline{}) {
		w.value("outline", inline("left", o.Left.Text(), "right", o.Right.Text(), "rear", o.Rear.Text()))
	}
	w.texts("deck", j.Floor.Deck)
	w.texts("layers", j.Floor.Layers)
	w.datum(j.Datum)
	w.bow(j.Bow)
	w.tape(j.Tape)
	for _, o := range j.Obstructions {
		w.obstruction(o)
	}
	for _, o := range j.Openings {
		w.opening(o)
	}
	for _, f := range j.Fittings {
		w.fitting(f)
	}
	for _, t := range j.Ties {
		w.tie(t)
	}
	w.plans(j)
	return w.Bytes()
}

// plans writes what is planned, and what stands behind it in the file.
func (w *writer) plans(j Job) {
	w.made(j)
	w.sizes(j)
	w.looked("looked", j.Looked)
	w.looked("looked_runs", j.LookedRuns)
	w.looked("looked_openings", j.LookedOpenings)
	if j.RunChecks != "" {
		w.table("check")
		w.text("runs", j.RunChecks)
	}
	for _, wheel := range j.Wheels {
		w.wheel(wheel)
	}
	w.built(j.BuiltOtherwise())
	w.record(j.Done)
	if len(j.Rules) > 0 {
		w.table("rules")
		for _, id := range sortedKeys(j.Rules) {
			w.value(tomlText(id), survey.Exact(j.Rules[id]))
		}
	}
	w.extra(j.allExtra())
}

// made writes what is made, and what is measured from it.
func (w *writer) made(j Job) {
	if j.Heater != nil {
		w.heater(*j.Heater)
	}
	if j.Cut != nil {
		w.cut(*j.Cut)
	}
	if j.Wish != nil {
		w.wish(*j.Wish)
	}
	for _, k := range RunKinds {
		if r := j.Run(k); r != nil {
			w.run(k, *r)
		}
	}
}

// sizes writes what sizes are reckoned from.
func (w *writer) sizes(j Job) {
	for _, l := range j.Stack {
		w.layer(l)
	}
	w.mount(j.Mount)
	w.electrics(j.Electrics)
	w.wiring(j.Wiring)
	w.ductwork(j.Ductwork)
	w.body(j.Body)
	for _, s := range j.Surfaces {
		w.surface(s)
	}
}

func (w *writer) looked(name string, kinds map[string]bool) {
	if len(kinds) == 0 {
		return
	}
	w.table(name)
	for _, kind := range sortedKeys(kinds) {
		w.value(tomlKey(kind), strconv.FormatBool(kinds[kind]))
	}
}

// extra writes what is kept of the screens and for others, as the TOML library writes it: it may be any value at all.
func (w *writer) extra(values map[string]any) {
	if len(values) == 0 {
		return
	}
	var b bytes.Buffer
	e := toml.NewEncoder(&b)
	e.Indent = ""
	if err := e.Encode(map[string]any{"extra": values}); err == nil {
		fmt.Fprintf(w, "\n%s\n", bytes.TrimSpace(b.Bytes()))
	}
}

// writer writes the tables of a job file. Keys that say nothing are left out.
type writer struct {
	bytes.Buffer
	under string // the table that those written stand in, with its point; "" for the top
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(w, format+"\n", args...) }

func (w *writer) value(key, value string) { w.line("%s = %s", key, value) }

// table starts a table, list an item of a list of tables, each behind a blank line.
func (w *writer) table(name string) { w.line("\n[%s%s]", w.under, name) }
func (w *writer) list(name string)  { w.line("\n[[%s%s]]", w.under, name) }

func (w *writer) number(key string, v float64) { w.value(key, survey.Exact(v)) }

func (w *writer) maybe(key string, n Number) {
	if n.Set {
		w.number(key, n.Value)
	}
}

func (w *writer) text(key, s string) { w.value(key, tomlText(s)) }

// texts writes a text when there is one, over several lines when it has them.
func (w *writer) texts(key, s string) {
	switch {
	case s == "":
	case strings.Contains(s, "\n"):
		w.value(key, longText(s))
	default:
		w.text(key, s)
	}
}

// date writes a date, and as a text what is none: nothing typed is dropped, and reading the file says what to do.
func (w *writer) date(key, d string) {
	if _, err := time.Parse(time.DateOnly, d); err == nil {
		w.value(key, d)
		return
	}
	w.texts(key, d)
}

func (w *writer) pair(key string, p Pair) { w.value(key, tomlPair(p)) }

func (w *writer) span(key string, s Span) {
	if s.Set {
		w.value(key, numberList(s.From, s.To))
	}
}

func (w *writer) numbers(key string, v ...float64) { w.value(key, numberList(v...)) }

func numberList(v ...float64) string {
	texts := make([]string, len(v))
	for i := range v {
		texts[i] = survey.Exact(v[i])
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

func tomlReading(r survey.Reading) string {
	if r.Number {
		return r.Text
	}
	return tomlText(r.Text)
}

func tomlPair(p Pair) string { return "[" + tomlReading(p[0]) + ", " + tomlReading(p[1]) + "]" }

func tomlKey(key string) string {
	if bareKey(key) {
		return key
	}
	return tomlText(key)
}
