package drawing

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
)

// dimensions draws a line between the nearest points of the worst findings, and of the one in focus.
func (d *drawer) dimensions() {
	if f := d.opts.Focus; f != nil {
		d.dimension(f, true)
	}
	type pair struct{ subject, against rules.Thing }
	drawn := map[pair]bool{}
	for i := range d.result.Findings {
		f := &d.result.Findings[i]
		if len(drawn) >= d.opts.Worst {
			return
		}
		if p := (pair{f.Subject, f.Against}); f.Places >= 2 && !drawn[p] {
			drawn[p] = true
			if !d.focused(f) {
				d.dimension(f, false)
			}
		}
	}
}

func (d *drawer) focused(f *rules.Finding) bool {
	focus := d.opts.Focus
	return focus != nil && focus.Rule == f.Rule && focus.Against == f.Against && focus.Subject == f.Subject
}

// dimension draws what a finding is about: a line with its length, or a spot where it has only one place.
func (d *drawer) dimension(f *rules.Finding, selected bool) {
	if f.Places == 0 {
		return
	}
	it := scene.Item{
		Role: scene.Dimension, State: stateOf(f.Verdict), Primitive: scene.Spot, At: f.At[0],
		Measure: &scene.Measure{Value: f.Value, Unit: string(f.Rule.Unit)}, Selected: selected,
	}
	if f.Places > 1 {
		it.Primitive, it.Path = scene.Stroke, scene.Straight(f.At[0], f.At[1])
	}
	d.add(it)
}

// marks draws the places to mark; those done are clear.
func (d *drawer) marks() {
	for i, m := range d.opts.Marks {
		it := scene.Item{Role: scene.Mark, Primitive: scene.Spot, At: m.Plan.At(0), Label: m.Words, Ref: i}
		if d.opts.Ticked[m.Name] {
			it.State = scene.Clear
		}
		d.items = append(d.items, it)
	}
}
