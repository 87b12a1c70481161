package vehicles

import "maps"

// A tape from below is held level, or it slopes from its hook and has a drop (Datum.HookBelow, SideBelow). Without a drop it counts as
// level; whether anybody has said so is kept beside it, and no verdict rests on that.

// HeldTapes are the tapes of which it is asked how they are held: from the datum line, and from a side edge.
var HeldTapes = []string{"below", "side"}

// HeldLevel is what a job says of a tape without a drop that is level; NotSaid where that was asked and nobody has answered yet.
const HeldLevel = "level"

// WithHeld says of one of HeldTapes that it is held level, or that nobody has said how; "" leaves it to its drop.
func (j Job) WithHeld(tape, how string) Job {
	j.Held = maps.Clone(j.Held)
	if delete(j.Held, tape); how != "" {
		j.Held = put(j.Held, tape, how)
	}
	if len(j.Held) == 0 {
		j.Held = nil
	}
	return j
}

// withTapesAsked asks of all tapes from below how they are held.
func (j Job) withTapesAsked() Job {
	for _, tape := range HeldTapes {
		j = j.WithHeld(tape, NotSaid)
	}
	return j
}

// takeHeld takes what is ours of what a file says of the tapes.
func takeHeld(j *Job, value any) any {
	others := maps.Clone(asTable(value))
	for _, tape := range HeldTapes {
		if how := others[tape]; how == HeldLevel || how == NotSaid {
			j.Held = put(j.Held, tape, how.(string))
			delete(others, tape)
		}
	}
	switch {
	case len(j.Held) == 0:
		return value
	case len(others) == 0:
		return nil
	}
	return others
}

func giveHeld(j Job) any {
	if len(j.Held) == 0 {
		return nil
	}
	table := map[string]any{}
	for tape, how := range j.Held {
		table[tape] = how
	}
	return table
}
