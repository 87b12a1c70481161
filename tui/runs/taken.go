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
	case muffler:
		return m.takenMuffler(values, s)
	case filter:
		return m.takenFilter(values, s)
	case pump:
		return m.takenPump(values, s)
	case tank:
		return m.takenTank(values, s)
	}
	laid, along := s.Job.Laid(m.of), values[0].Number
	switch {
	case !along.Set:
		return desk.Change{}, errors.New("how far along is wanted; " + keyDelete.Help().Key + " outside the field deletes it")
	case laid != nil && along.Value > laid.Line.Length()+vehicles.AlongNoise:
		return desk.Change{}, fmt.Errorf("the %s is %s long: less than that", m.of, desk.Length(laid.Line.Length(), s.Settings.Units))
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { setAlong(run, p.part, along.Value) })}, nil
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
		return 0, 0, fmt.Errorf("it would end %s along leg %d, which is %s long: start it earlier, or choose another leg",
			desk.Length(start+length, u), leg, desk.Length(has, u))
	}
	return leg, start, nil
}

func (m screen) takenMuffler(values []moving.Value, s desk.State) (desk.Change, error) {
	if !values[2].Number.Set || !values[3].Number.Set {
		return desk.Change{}, errors.New("the muffler's length and width are wanted")
	}
	h := vehicles.Muffler{Length: values[2].Number.Value, Across: values[3].Number.Value}
	if drain := values[4].Text; drain != notKnown {
		h.Drain = drain
	}
	var err error
	if h.Leg, h.Start, err = m.onLeg(values, h.Length, s); err != nil {
		return desk.Change{}, err
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Muffler = &h })}, nil
}

func (m screen) takenFilter(values []moving.Value, s desk.State) (desk.Change, error) {
	var h vehicles.Filter
	var err error
	if h.Leg, h.Start, err = m.onLeg(values, 0, s); err != nil {
		return desk.Change{}, err
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Filter = &h })}, nil
}

func (m screen) takenPump(values []moving.Value, s desk.State) (desk.Change, error) {
	if !values[2].Number.Set {
		return desk.Change{}, errors.New("how far up the pump's outlet points is wanted: 0 lies level, 90 stands")
	}
	h := vehicles.Pump{Tilt: values[2].Number.Value, MlPer1000: values[3].Number, Hz: values[4].Number}
	var err error
	if h.Leg, h.Start, err = m.onLeg(values, 0, s); err != nil {
		return desk.Change{}, err
	}
	return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Pump = &h })}, nil
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
	if old := m.run(s).Supply.Tank; old != nil && strings.TrimSpace(m.prompt.Text(0)+m.prompt.Text(1)) == "" {
		t.At = old.At
	} else {
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
