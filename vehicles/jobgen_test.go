package vehicles

import (
	"fmt"
	"time"

	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// anyJob draws a job that a file can hold. Its readings need not make sense together.
func anyJob(t *rapid.T) Job {
	j := Job{
		Ref: "TL-" + anyLine(t, "ref"), Vehicle: anyLine(t, "vehicle"), Fitter: anyLine(t, "fitter"),
		Date: anyDate(t), Notes: rapid.StringMatching(`[a-z"'\\ \n\r\té#=\[]{0,20}`).Draw(t, "notes"),
		Floor: Floor{From: anyNumber(t), Length: anySize(t), Width: anySize(t), Thickness: anySize(t), Ground: anySize(t)},
	}
	if rapid.Bool().Draw(t, "outline") {
		j.Floor.Layers = rapid.SampledFrom([]string{"", Wood, NoLayers}).Draw(t, "layers")
		j.Floor.Outline, j.Floor.Deck = Outline{maybe(t, anySize), maybe(t, anySize), maybe(t, anyNumber)}, Timber
	}
	if rapid.Bool().Draw(t, "datum") {
		j.Datum = anyDatum(t)
	}
	j.Bow = anyBow(t)
	if rapid.Bool().Draw(t, "tape") {
		j.Tape = Tape{"III", maybe(t, anySize), maybe(t, anySize), maybe(t, anySize), maybe(t, anySize)}
	}
	anyThings(t, &j)
	anyPlans(t, &j)
	if rapid.Bool().Draw(t, "sizes") {
		anySizes(t, &j)
	}
	for _, kind := range rapid.SliceOfNDistinct(rapid.SampledFrom(Kinds), 0, 3, rapid.ID).Draw(t, "looked") {
		j.Looked = put(j.Looked, kind, rapid.Bool().Draw(t, kind))
		j.LookedRuns = put(j.LookedRuns, kind, rapid.Bool().Draw(t, kind))
	}
	for _, kind := range rapid.SliceOfNDistinct(rapid.SampledFrom(OpeningKinds), 0, 3, rapid.ID).Draw(t, "looked openings") {
		j.LookedOpenings = put(j.LookedOpenings, kind, rapid.Bool().Draw(t, kind))
	}
	j.RunChecks = rapid.SampledFrom([]string{"", InFull}).Draw(t, "run checks")
	for _, id := range rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"cut.reach", "cut.clearance.brake line", "exhaust.fall", "a rule of tomorrow", "plain"}), 0, 3, rapid.ID).Draw(t, "rules") {
		j.Rules = put(j.Rules, id, anyNumber(t))
	}
	anyWork(t, &j)
	if rapid.Bool().Draw(t, "extra") {
		j.Extra = anyExtra(t)
	}
	if rapid.Bool().Draw(t, "kept") {
		anyKept(t, &j)
	}
	return j
}

func anyThings(t *rapid.T, j *Job) {
	for i := range rapid.IntRange(0, 3).Draw(t, "obstructions") {
		j.Obstructions = append(j.Obstructions, Obstruction{
			Name: fmt.Sprint(i, anyLine(t, "name")), Kind: rapid.SampledFrom(Kinds).Draw(t, "kind"), Place: anyPlace(t),
			Drop: anySpan(t), TapedAt: maybe(t, anyNumber), Measured: rapid.Bool().Draw(t, "measured"),
			Holds: rapid.SampledFrom([]string{"", "petrol"}).Draw(t, "holds"), Travel: maybe(t, anySize), Total: anyTotals(t),
		})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "openings") {
		drop := anySpan(t)
		drop.Set = true
		j.Openings = append(j.Openings, Opening{
			Name: fmt.Sprint(i, anyLine(t, "name")), Kind: rapid.SampledFrom(OpeningKinds).Draw(t, "kind"), Place: anyPlace(t), Drop: drop,
			Unconfirmed: rapid.Bool().Draw(t, "unconfirmed"),
		})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "fittings") {
		rise := anySpan(t)
		rise.Set = true
		j.Fittings = append(j.Fittings, Fitting{Name: fmt.Sprint(i), Kind: rapid.SampledFrom([]string{"", "wiring"}).Draw(t, "kind"), Place: anyPlace(t), Rise: rise, Total: anyTotals(t), Unconfirmed: rapid.Bool().Draw(t, "unconfirmed")})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "ties") {
		j.Ties = append(j.Ties, Tie{fmt.Sprint(i), anyPoint(t), anyPoint(t), rapid.Bool().Draw(t, "use")})
	}
	for range rapid.IntRange(0, 2).Draw(t, "wheels") {
		j.Wheels = append(j.Wheels, Wheel{[2]float64{anyNumber(t), anyNumber(t)}, anySize(t), anySize(t)})
	}
}

func anyPlans(t *rapid.T, j *Job) {
	if rapid.Bool().Draw(t, "heater") {
		h, _ := HeaterClass(rapid.SampledFrom(HeaterClasses()).Draw(t, "class"))
		if rapid.Bool().Draw(t, "own") {
			h.Body, h.Space, h.Turret, h.Yaw = [3]float64{anySize(t), 1, 2}, Space{1, 2, 3, anySize(t)}, Some(anySize(t)), anyNumber(t)
			h.Given |= HasBody | HasSpace | HasTurret | HasYaw
		}
		if rapid.Bool().Draw(t, "bolts") {
			h.Bolts, h.Bolt, h.Packed = [][2]float64{{anyNumber(t), 60}, {-80, anyNumber(t)}}, anySize(t), rapid.Bool().Draw(t, "packed")
			h.Given |= HasBolts | HasBolt | HasPacked
		}
		if rapid.Bool().Draw(t, "space") {
			h.Space.Rear, h.Given = anySize(t), h.Given|HasRearSpace
		}
		if rapid.Bool().Draw(t, "air") {
			anyAir(t, &h)
		}
		j.Heater = &h
	}
	if rapid.Bool().Draw(t, "cut") {
		j.Cut = &Cut{At: [2]float64{anyNumber(t), anyNumber(t)}, Across: 100 + anySize(t)/2, Pilot: maybe(t, func(*rapid.T) float64 { return 6 })}
		if rapid.Bool().Draw(t, "drilled") {
			p := anyPoint(t)
			j.Cut.Drilled = &p
		}
		if rapid.Bool().Draw(t, "old pilot") {
			p := anyPoint(t)
			j.Cut.Old = &p
		}
		if len(j.Obstructions) > 0 && rapid.Bool().Draw(t, "direct") {
			gap := survey.FromNumber(anySize(t), false)
			j.Cut.Direct, j.Cut.Relieved = List[DirectTape]{{j.Obstructions[0].Name, gap}}, Some(j.Cut.Across+anySize(t)/8)
		}
	}
	if rapid.Bool().Draw(t, "wish") {
		j.Wish = &Wish{At: [2]float64{anyNumber(t), anyNumber(t)}, Within: maybe(t, anySize)}
	}
	if rapid.Bool().Draw(t, "exhaust") {
		r := anyRun(t)
		r.Shielded.All = rapid.Bool().Draw(t, "shielded")
		if len(j.Obstructions) > 0 && !r.Shielded.All && rapid.Bool().Draw(t, "one") {
			r.Shielded.Names = []string{j.Obstructions[0].Name}
		}
		if rapid.Bool().Draw(t, "drains") {
			r.Drains = []float64{anySize(t), 0}
		}
		if rapid.Bool().Draw(t, "muffler") {
			r.Muffler = &Muffler{
				rapid.IntRange(1, len(r.Path)).Draw(t, "leg"), anySize(t), anySize(t), anySize(t),
				rapid.SampledFrom([]string{"", DrainDown}).Draw(t, "drain"),
			}
		}
		if rapid.Bool().Draw(t, "clips") {
			r.Clips = []float64{250, anySize(t)}[:rapid.IntRange(0, 2).Draw(t, "how many")]
		}
		j.Exhaust = &r
	}
	if rapid.Bool().Draw(t, "intake") {
		r := anyRun(t)
		j.Intake = &r
	}
	if rapid.Bool().Draw(t, "fuel") {
		r := anyRun(t)
		r.Bend, r.Path = Number{}, append(r.Path, RunPoint{1, 2, 3})
		r.Supply = Supply{Kind: "petrol", Bore: maybe(t, anySize)}
		if rapid.Bool().Draw(t, "pump") {
			r.Pump = &Pump{1, anySize(t), 45, maybe(t, anySize), maybe(t, anySize)}
		}
		if rapid.Bool().Draw(t, "filter") {
			r.Filter = &Filter{1, anySize(t)}
		}
		if rapid.Bool().Draw(t, "tank") {
			r.Supply.Tank = &Tank{At: [2]float64{anyNumber(t), 5}, Rise: anySpan(t), Litres: maybe(t, anySize), Filler: rapid.SampledFrom([]string{"", TankOutside}).Draw(t, "filler")}
		}
		j.Fuel = &r
	}
}

// anyWork draws what is recorded of the work, and what was made otherwise: what else may be made.
func anyWork(t *rapid.T, j *Job) {
	for _, kind := range rapid.SliceOfNDistinct(rapid.SampledFrom(StepKinds), 0, 4, func(k StepKind) string { return k.ID }).Draw(t, "steps") {
		d := Done{
			Step: kind.ID, At: rapid.SampledFrom([]string{"", "2026-11-27", "2026-11-27T10:15:00", "1999-01-01T23:59:59.25"}).Draw(t, "at"),
			Due: anyDate(t), Note: rapid.StringMatching(`[a-z"'\\ \n\té#]{0,9}`).Draw(t, "note"),
		}
		if kind.Measures() {
			d.Value = maybe(t, anySize)
		}
		for range rapid.IntRange(0, 2).Draw(t, "photos") {
			d.Photos = append(d.Photos, rapid.StringMatching(`[a-z"é]{1,5}\.jpg`).Draw(t, "photo"))
		}
		j.Done = append(j.Done, d)
	}
	if rapid.IntRange(0, 3).Draw(t, "built otherwise") == 0 {
		made := Job{Obstructions: j.Obstructions}
		if anyPlans(t, &made); made.Cut != nil {
			made.Cut.Sawn = anyTotals(t)
		}
		*j = j.WithBuilt(Built{made.Heater, made.Cut, made.Exhaust, made.Intake, made.Fuel})
	}
}

// anyAir draws where a heater's air goes and comes from.
func anyAir(t *rapid.T, h *Heater) {
	h.Duct, h.DuctAcross, h.ReturnArea = Ends{rapid.Bool().Draw(t, "front"), rapid.Bool().Draw(t, "rear")}, anySize(t), maybe(t, anySize)
	h.Air, h.Stored = rapid.SampledFrom(AirPlaces).Draw(t, "from"), rapid.SampledFrom(EveryStored()).Draw(t, "stored")
	h.Given |= HasDuct | HasDuctAcross | HasAir | HasStored
	if h.ReturnArea.Set {
		h.Given |= HasReturnArea
	}
}

func anyRun(t *rapid.T) Run {
	r := Run{Across: anySize(t), Bend: maybe(t, anySize)}
	for range rapid.IntRange(1, 4).Draw(t, "points") {
		r.Path = append(r.Path, RunPoint{anyNumber(t), anyNumber(t), anyNumber(t)})
	}
	return r
}

func anyPlace(t *rapid.T) Place {
	switch rapid.IntRange(0, 2).Draw(t, "form") {
	case 0:
		p := Place{X: Pair{anyReading(t, survey.X), anyReading(t, survey.X)}, Y: Pair{anyReading(t, survey.Y), anyReading(t, survey.Y)}}
		if rapid.Bool().Draw(t, "turned") {
			p.Turn = anyNumber(t)
		}
		return p
	case 1:
		return Place{Shape: Piped, Path: []Pair{anyPoint(t), anyPoint(t), anyPoint(t)}, Across: Some(anySize(t))}
	}
	return Place{Shape: Disc, Centre: anyPoint(t), Across: Some(anySize(t))}
}

func anyPoint(t *rapid.T) Pair { return Pair{anyReading(t, survey.X), anyReading(t, survey.Y)} }

func anyReading(t *rapid.T, axis survey.Axis) survey.Reading {
	if rapid.Bool().Draw(t, "bare") {
		v := anyNumber(t)
		return survey.FromNumber(v, v == float64(int64(v)) && rapid.Bool().Draw(t, "whole"))
	}
	texts := []string{"652", "+84", "65.2cm", "0.652m", `2'6 1/2"`, "30 3/4in", "+ 3/8 in", "-12.5 mm", " 5 "}
	if axis == survey.Y {
		texts = append(texts, "L 240", "R310mm", `L 1'0"`)
	}
	r, err := survey.Parse(rapid.SampledFrom(texts).Draw(t, "text"), axis)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func anySpan(t *rapid.T) Span {
	if rapid.Bool().Draw(t, "span") {
		from := anyNumber(t)
		return Span{from, from + (survey.Longest-from)/2, true}
	}
	return Span{}
}

func anyBow(t *rapid.T) (bow []BowPoint) {
	for i := range rapid.IntRange(0, 3).Draw(t, "bow") {
		bow = append(bow, BowPoint{Y: float64(i), Offset: anyNumber(t)})
	}
	return bow
}

// anyTotals draws overall readings of a chain, mostly none.
func anyTotals(t *rapid.T) (p Totals) {
	for axis := range p {
		if rapid.IntRange(0, 3).Draw(t, "total") == 0 {
			p[axis] = anyReading(t, survey.Axis(axis))
		}
	}
	return p
}

func anyDatum(t *rapid.T) Datum {
	return Datum{
		rapid.SampledFrom([]string{"", "step of the side door"}).Draw(t, "datum name"),
		maybe(t, anyNumber), maybe(t, anyNumber), maybe(t, anyNumber), maybe(t, anySize), maybe(t, anySize),
		maybe(t, anySize), maybe(t, anySize), maybe(t, anyNumber), maybe(t, anyNumber), maybe(t, anySize), maybe(t, anySize),
		rapid.SampledFrom([]string{"", Batten}).Draw(t, "pins on"), rapid.SampledFrom([]string{"", "lip of the sill"}).Draw(t, "edges below"),
		rapid.SampledFrom([]string{"", "inner face of the lining"}).Draw(t, "edges above"),
	}
}

func anyExtra(t *rapid.T) map[string]any {
	value := rapid.OneOf(
		rapid.Just[any](int64(7)), rapid.Just[any](1.5), rapid.Just[any](4.0), rapid.Just[any]("a \"b\"\n\\c"), rapid.Just[any](true),
		rapid.Just[any](time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC)),
		rapid.Just[any]([]any{int64(1), "x", []any{1.5}}), rapid.Just[any](map[string]any{"in side": int64(1), "b": []any{}}),
		rapid.Just[any]([]map[string]any{{"a": int64(1)}, {"b": map[string]any{"c": "d"}}}),
	)
	return rapid.MapOfN(rapid.StringMatching(`[a-z .é]{1,6}`), value, 1, 4).Draw(t, "extra")
}

// anyKept fills in what the screens keep.
func anyKept(t *rapid.T, j *Job) {
	texts := rapid.MapOfN(rapid.SampledFrom([]string{"name", "kind", "x0", "p0x", "top"}), rapid.StringMatching(`[a-z0-9 "+]{1,6}`), 0, 4)
	for _, list := range []*List[Begun]{&j.Unfinished.Obstructions, &j.Unfinished.Openings, &j.Unfinished.Fittings, &j.Unfinished.Ties} {
		for range rapid.IntRange(0, 2).Draw(t, "begun") {
			*list = append(*list, Begun{}.Saying(texts.Draw(t, "texts")))
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "refused") {
		var r Refusal
		for _, e := range r.entries() {
			*e.at = anyLine(t, e.key)
		}
		j.Refusals = append(j.Refusals, r)
	}
	for _, key := range FloorKeys {
		if rapid.Bool().Draw(t, key) {
			j.Guesses = append(j.Guesses, key)
		}
	}
	for _, tape := range HeldTapes {
		*j = j.WithHeld(tape, rapid.SampledFrom([]string{"", HeldLevel, NotSaid}).Draw(t, tape))
	}
	for kind := range j.Looked {
		j.LookedAt = put(j.LookedAt, kind, [2]float64{anyNumber(t), anyNumber(t)})
	}
	for range rapid.IntRange(0, 2).Draw(t, "looks") {
		look := Look{Kinds: []string{rapid.SampledFrom(Kinds).Draw(t, "kind")}}
		look.Runs[rapid.SampledFrom(RunKinds[:]).Draw(t, "of")] = anyRun(t).Path
		j.RunLooks = append(j.RunLooks, look)
		j.OpeningLooks = append(j.OpeningLooks, Look{Kinds: []string{"door", "vent"}})
	}
}

func anyLine(t *rapid.T, label string) string {
	return rapid.StringMatching(`[a-zA-Z0-9 "'\\é#=\[\],.]{0,12}`).Draw(t, label)
}

func anyDate(t *rapid.T) string {
	return rapid.SampledFrom([]string{"", "2026-11-25", "1999-01-01"}).Draw(t, "date")
}

// anyNumber draws lengths as people write them and as arithmetic makes them.
func anyNumber(t *rapid.T) float64 {
	if rapid.Bool().Draw(t, "round") {
		return float64(rapid.IntRange(-20000, 20000).Draw(t, "n")) / 2
	}
	return rapid.Float64Range(-20000, 20000).Draw(t, "x") + 0
}

func anySize(t *rapid.T) float64 { return rapid.Float64Range(0.001, 20000).Draw(t, "size") }

func maybe(t *rapid.T, draw func(*rapid.T) float64) Number {
	if rapid.Bool().Draw(t, "set") {
		return Some(draw(t))
	}
	return Number{}
}
