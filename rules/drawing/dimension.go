package drawing

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// dimensions draws the finding in focus and what the findings shown are about, the one in focus alone of what it is against.
// Each has the figure that lists have of it.
func (d *drawer) dimensions() {
	focus := d.opts.Focus
	if focus != nil {
		d.dimension(focus, true)
	}
	for _, f := range d.opts.Shown {
		if (focus == nil || focus.Against != f.Against) && (f.Verdict == rules.Foul || near(f)) {
			d.dimension(f, false)
		}
	}
}

// near tells whether what a finding is of lies as near as one looks for obstructions: what is farther off needs no line
// across the plan.
func near(f *rules.Finding) bool {
	return f.Places == 2 && f.At[0].Sub(f.At[1]).Norm() <= vehicles.LookRound
}

// dimension draws what a finding is about: a line between its nearest places, or a spot where it has only one. What stands in
// the way of the cut is a spot on that.
func (d *drawer) dimension(f *rules.Finding, selected bool) {
	if f.Places == 0 {
		return
	}
	it := scene.Item{Role: scene.Dimension, State: stateOf(f.Verdict), Primitive: scene.Spot, At: f.At[f.Places-1], Selected: selected, Ref: -1}
	switch {
	case f.Verdict == rules.Foul && f.Rule.AtCut:
		it.Role = scene.Conflict
		if f.Against.Sort == rules.AnObstruction {
			it.Ref = int(f.Against.Index)
		}
	case f.Places > 1:
		it.Primitive, it.Path = scene.Stroke, scene.Straight(f.At[0], f.At[1])
	}
	if f.Margin.Set {
		it.Label = about(f)
		it.Measure = spareOf(f)
		d.named(f.Against)
	}
	d.items = append(d.items, it)
}

// about is what a figure is of, where a plan shows which part of the heater it is held against.
func about(f *rules.Finding) string {
	if other := nameOf(f.Against); other != "" {
		return other
	}
	return f.About()
}

// nameOf is what a thing is called in a picture, "" where it has no name.
func nameOf(thing rules.Thing) string {
	if kind, run := thing.Sort.Run(); run {
		return roleOf(kind).Pen().Means
	}
	return thing.String()
}

// spareOf is what a finding with a margin has to spare, as a figure.
func spareOf(f *rules.Finding) *scene.Measure {
	return &scene.Measure{Value: f.Margin.Value, Unit: string(f.Rule.Unit), Bare: f.Rule.Unit == scene.MM, Spare: true}
}

// named takes the name from an obstruction, as it stands at a figure.
func (d *drawer) named(t rules.Thing) {
	if t.Sort != rules.AnObstruction {
		return
	}
	for i := range d.items {
		if it := &d.items[i]; it.OfObstruction() && it.Ref == int(t.Index) && it.Layer != scene.Upon {
			it.Label = ""
		}
	}
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
