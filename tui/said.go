package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// said is the line above the foot. It goes with the next key or tap, or by itself.
type said struct {
	say      string
	sayUntil time.Time // no key takes the line away before that
	now      func() time.Time
	fade     time.Duration // a line that no key took away goes after that; 0: never
	number   uint64        // of the line, counted up
	faded    uint64        // the last line whose end is on its way
}

// bounce is how soon after a tick another press of Enter or Space is the same press, of a key that bounces or is held: no hand
// makes two marks so fast.
const bounce = 150 * time.Millisecond

// eager is how soon after a text was read to its end another press of Enter or Space is one more for that text: nobody has seen yet
// what lies below it, which takes a quarter of a second, and decided on it.
const eager = 400 * time.Millisecond

const (
	// sayAtLeast is how long a line stays whatever is pressed: keys that were on their way when it came were not pressed in
	// answer to it.
	sayAtLeast = time.Second
	// sayAtMost is how long it stays with nothing pressed: two seconds to look up, and time to read four rows twice.
	sayAtMost = 20 * time.Second
)

// tell says a line above the foot.
func (s *said) tell(line string) {
	s.say, s.sayUntil = line, s.now().Add(sayAtLeast)
	s.number++
}

// heard takes the line away that was there when a key was pressed.
func (r *Root) heard() {
	if r.saying() && r.now().After(r.sayUntil) {
		r.say = ""
	}
}

// fading takes a new line away after a while.
func (s *said) fading() tea.Cmd {
	if s.say == "" || s.fade == 0 || s.faded == s.number {
		return nil
	}
	s.faded = s.number
	number := s.number
	return tea.Tick(s.fade, func(time.Time) tea.Msg { return silence{number} })
}

// silence ends the line of that number.
type silence struct{ number uint64 }

func (m silence) happened(r *Root) tea.Cmd {
	switch {
	case m.number != r.number:
	case r.overlay() != nil: // nobody could read it
		r.faded = 0
	default:
		r.say = ""
	}
	return nil
}
