package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// stood is where names stood in the picture before, for a picture of the same places in which they stay where they can: the eye finds them again, the
// terminal is sent less, and nobody seeks a place for each anew.
type stood struct {
	in    Map
	faces bool
	lost  int // how many of what is in the way had no place
	at    map[nameKey]standing
}

// nameKey is whose name it is.
type nameKey struct {
	role      scene.Role
	primitive scene.Primitive
	ref       int
	name      string
}

// standing is where a name stood, in which of its forms, and at what it is fastened.
type standing struct {
	seat
	form      int
	cost      int
	low, high geometry.Point
}

// calm is how much more a name may hide before another place is sought for it.
const calm = 24

func keyOf(it *part) nameKey { return nameKey{it.Role, it.Primitive, it.Ref, it.Label} }

// begin forgets what was in another picture.
func (s *stood) begin(p *painter) {
	if !p.look.Calm || s.in != p.Map || s.faces != p.look.Faces {
		clear(s.at)
	}
	s.in, s.faces = p.Map, p.look.Faces
	if s.at == nil {
		s.at = map[nameKey]standing{}
	}
}

// note keeps where a name stands now.
func (p *painter) note(it *part, form int, best choice) {
	low, high := p.fastened(it, best.led)
	p.stood.at[keyOf(it)] = standing{best.seat, form, best.cost, low, high}
}

// fastened is the box of what a name is fastened to: a leader goes to what is in the way, not to the mark of that.
func (p *painter) fastened(it *part, led bool) (low, high geometry.Point) {
	if it.Role == scene.Conflict && led {
		if of := p.inWay(it); of != nil {
			it = of
		}
	}
	if it.Line != nil {
		return it.Line[0], it.Line[len(it.Line)-1]
	}
	return it.Area.Bounds()
}

// asBefore writes names where they stood, and the rest where there is place; false where more of what is in the way than before has none, or a name
// that stood.
func (p *painter) asBefore(names []naming) bool {
	if len(p.stood.at) == 0 {
		return false
	}
	were := p.stood.at
	p.stood.at = make(map[nameKey]standing, len(were))
	var others []naming
	for i := range names {
		if was, ok := were[keyOf(names[i].it)]; !ok || !p.again(&names[i], &was) {
			others = append(others, names[i])
		}
	}
	o := p.inOrder(others, len(p.stood.at), &try{}, nil)
	if len(o.lost) > p.stood.lost {
		return false
	}
	for i := range others {
		key := keyOf(others[i].it)
		_, was := were[key]
		if _, is := p.stood.at[key]; was && !is && others[i].must {
			return false
		}
	}
	p.stood.lost = len(o.lost)
	return true
}

// again writes a name where it stood, if what it is of is where it was and the place is not much worse.
func (p *painter) again(n *naming, was *standing) bool {
	if low, high := p.fastened(n.it, was.led); low != was.low || high != was.high {
		return false
	}
	forms := p.forms(n)
	if was.form >= len(forms) {
		return false
	}
	f, s := &forms[was.form], was.seat
	if s.led {
		s.off = p.ledOff(&f.label, s)
	}
	best := choice{cost: min(f.most(), was.cost+calm)}
	if p.choose(&best, &f.label, append(p.seats[:0], s)); !best.found {
		return false
	}
	p.put(f.label, best.seat)
	best.cost = min(best.cost, was.cost) // or it would wander off by and by
	p.note(n.it, was.form, best)
	return true
}

// ledOff is what the leader of a seat costs now.
func (p *painter) ledOff(l *label, s seat) int {
	way, col, row := p.crossingFrom(s.of, l.line()), s.of[0], s.of[1]
	off, step := leaderCost, 1
	if s.row == row {
		if s.align == byEnd {
			step = -1
		}
		for c := col + step; c != s.col; c += step {
			off += way.crosses(c, row)
		}
		return off + leaderRow*abs(s.col-col)/2
	}
	if s.row < row {
		step = -1
	}
	for r := row + step; r != s.row; r += step {
		off += way.crosses(col, r)
	}
	if off += leaderRow * abs(s.row-row); s.align == byMiddle {
		return off + leaderOver
	}
	return off + way.crosses(col, s.row)
}
