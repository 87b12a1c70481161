package place

import (
	"context"
	"fmt"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// search is a search for places that goes on beside the screen; nil for none.
type search struct {
	cancel context.CancelFunc
	far    atomic.Pointer[far]
}

// far is how far a search is.
type far struct {
	at       rules.Stage
	done, of int
}

func (f far) String() string {
	switch f.at {
	case rules.AtYaws:
		return fmt.Sprintf("heading %d of %d", f.done+1, f.of)
	case rules.AtInTheWay:
		return fmt.Sprintf("what stands in the way, %d of %d", f.done+1, f.of)
	}
	return "the nearest place beyond"
}

// seek works out where the heater fits; it may take longer than a frame.
func seek(s desk.State) (*search, tea.Cmd) {
	ctx, cancel := context.WithCancel(context.Background())
	on := &search{cancel: cancel}
	result, of := s.Result, &s.Result.Findings[0]
	return on, func() (msg tea.Msg) {
		defer cancel()
		defer func() {
			if recover() != nil {
				msg = assisted{of: of, failed: true}
			}
		}()
		said, err := rules.Assist(ctx, &result, func(at rules.Stage, done, of int) { on.far.Store(&far{at, done, of}) })
		if err != nil {
			return nil // nobody waits for it any more
		}
		return assisted{of: of, said: said}
	}
}

// stop has the search end at its next step.
func (s *search) stop() {
	if s != nil {
		s.cancel()
	}
}

// glanced says that it is time to look how far a search is.
type glanced struct{ of *search }

// watch looks at a search a moment later.
func watch(s *search) tea.Cmd {
	return tea.Tick(desk.Glance, func(time.Time) tea.Msg { return glanced{s} })
}

// looked looks how far the search is, and again in a moment while it goes on.
func (m screen) looked(g glanced) (screen, tea.Cmd) {
	if !m.choosing || m.places.of != nil || g.of != m.search {
		return m, nil
	}
	if now := g.of.far.Load(); now != nil {
		m.progress = " " + now.String() + ". Esc stops it."
	}
	return m, watch(g.of)
}
