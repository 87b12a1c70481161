package runs

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// taken is the change that a prompt comes to.
func (m screen) taken(p placed, values []moving.Value, s desk.State) (desk.Change, error) {
	switch p.sort {
	case point:
		return m.takenPoint(p, values, s)
	case pipe:
		return m.takenPipe(values, s)
	case tank:
		return m.takenTank(values, s)
	}
	if p.alone() {
		return m.takenHung(p.kind, values, s)
	}
	laid, along := s.Job.Laid(m.of), values[0].Number
	switch {
	case !along.Set:
		return desk.Change{}, errors.New("how far along is wanted; " + keyDelete.Help().Key + " outside the field deletes it")
	case laid != nil && along.Value > laid.Line.Length()+vehicles.AlongNoise:
		return desk.Change{}, fmt.Errorf("the %s is %s long: less than that", m.of, desk.Length(laid.Line.Length(), s.Settings.Units))
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Hanging.Thing(p.kind, p.index).Put(0, along.Value) })}, nil
}

func (m screen) takenPoint(p placed, values []moving.Value, s desk.State) (desk.Change, error) {
	if !values[2].Number.Set {
		return desk.Change{}, errors.New("how far below the floor is wanted")
	}
	to := m.run(s).Path[p.index]
	to.Drop = values[2].Number.Value
	if strings.TrimSpace(m.prompt.Text(0)+m.prompt.Text(1)) != "" {
		at, err := m.prompt.Place(s, to.Drop)
		if err != nil {
			return desk.Change{}, err
		}
		to.X, to.Y = moving.Hundredth(at.X), moving.Hundredth(at.Y)
	}
	return m.setPoint(s, p.index, to, ""), nil
}

func (m screen) takenPipe(values []moving.Value, s desk.State) (desk.Change, error) {
	if !values[0].Number.Set {
		return desk.Change{}, errors.New("the pipe's width is wanted")
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) {
		run.Across = values[0].Number.Value
		if m.of != vehicles.FuelRun {
			run.Bend = values[1].Number
		} else {
			run.Supply.Bore, run.Supply.Hole = values[1].Number, values[2].Number
		}
	})}, nil
}

// onLeg is the place on a leg that the first two fields come to, of a thing of a length.
func (m screen) onLeg(values []moving.Value, length float64, s desk.State) (leg int, start float64, err error) {
	laid, n := s.Job.Laid(m.of), values[0].Number
	legs := len(m.run(s).Path)
	if laid != nil {
		legs = laid.Legs()
	}
	switch {
	case !n.Set || n.Value != math.Trunc(n.Value) || n.Value > float64(legs):
		return 0, 0, fmt.Errorf("the %s has legs 1 to %d: say which", m.of, legs)
	case !values[1].Number.Set:
		return 0, 0, errors.New("how far along its leg is wanted")
	}
	leg, start = int(n.Value), values[1].Number.Value
	if laid == nil {
		return leg, start, nil
	}
	if has := laid.Path[leg].Sub(laid.Path[leg-1]).Norm(); start+length > has+vehicles.AlongNoise {
		u := s.Settings.Units
		return 0, 0, errors.New("it would end " + vehicles.PastLeg(desk.Length(start+length, u), leg, desk.Length(has, u)) + vehicles.ChooseAnotherLeg)
	}
	return leg, start, nil
}

// takenHung is a thing of which a run has one as its fields come to: its place on a leg, then its details.
func (m screen) takenHung(kind *vehicles.HangingKind, values []moving.Value, s desk.State) (desk.Change, error) {
	next := *m.run(s)
	thing := next.Hanging.Thing(kind, 0)
	for i, d := range thing.Details() {
		switch v := values[onItsLeg+i]; {
		case d.Word != nil:
			*d.Word = ""
			if v.Text != vehicles.NotKnown {
				*d.Word = v.Text
			}
		case d.Figure != nil:
			*d.Figure = v.Number
		case !v.Number.Set:
			return desk.Change{}, errors.New(d.Wanted)
		default:
			*d.Size = v.Number.Value
		}
	}
	leg, start, err := m.onLeg(values, thing.Length(), s)
	if err != nil {
		return desk.Change{}, err
	}
	thing.Put(leg, start)
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { *run = next })}, nil
}

func (m screen) takenTank(values []moving.Value, s desk.State) (desk.Change, error) {
	from, to := values[3].Number, values[4].Number
	switch {
	case from.Set != to.Set:
		return desk.Change{}, errors.New("both heights of the tank are wanted, or none")
	case from.Set && from.Value >= to.Value:
		return desk.Change{}, errors.New("the tank's first height must be less than its second")
	}
	drop := 0.0
	if values[2].Text == tankBelow && from.Set {
		drop = from.Value
	}
	var t vehicles.Tank
	if old := m.run(s).Supply.Tank; old != nil { // what it holds and where it is filled is said elsewhere
		t = *old
		t.Rise, t.Drop = vehicles.Span{}, vehicles.Span{}
	}
	if m.run(s).Supply.Tank == nil || strings.TrimSpace(m.prompt.Text(0)+m.prompt.Text(1)) != "" {
		at, err := m.prompt.Place(s, drop)
		if err != nil {
			return desk.Change{}, err
		}
		t.At = [2]float64{moving.Hundredth(at.X), moving.Hundredth(at.Y)}
	}
	span := vehicles.Span{From: from.Value, To: to.Value, Set: from.Set}
	if values[2].Text == tankAbove {
		t.Rise = span
	} else {
		t.Drop = span
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Supply.Tank = &t })}, nil
}
