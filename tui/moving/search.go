package moving

import (
	"context"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// Search is what is worked out beside a screen, of the job as it was when that began, and what came of it. The zero Search was never
// begun. It is a plain value: what goes on beside it is stopped by Stop, and whatever comes late is heard by nobody.
type Search[T any] struct {
	Far    string // how far it was when it was last looked at
	Done   bool   // it is over: Said is what came of it, unless it Failed
	Failed bool
	Said   T

	on *going
}

// going is a search that goes on.
type going struct {
	of     *rules.Finding // the first finding of the result that it is of: no other has it
	cancel context.CancelFunc
	far    atomic.Pointer[string]
}

// Find works something out. It ends once ctx is done, and tells now and then how far it is. It only reads what it is of.
type Find[T any] func(ctx context.Context, tell func(far string)) T

// answered is what came of a search.
type answered[T any] struct {
	on     *going
	said   T
	failed bool
}

// glanced says that it is time to look how far a search is.
type glanced struct{ on *going }

// Seek begins a search of the job on the desk, which has been judged. The commands are the search and, a moment later, a look at it.
func Seek[T any](s desk.State, find Find[T]) (Search[T], tea.Cmd) {
	ctx, cancel := context.WithCancel(context.Background())
	on := &going{of: first(s), cancel: cancel}
	work := func() (msg tea.Msg) {
		defer cancel()
		defer func() {
			if recover() != nil {
				msg = answered[T]{on: on, failed: true}
			}
		}()
		said := find(ctx, func(far string) { on.far.Store(&far) })
		if ctx.Err() != nil {
			return nil // nobody waits for it any more
		}
		return answered[T]{on: on, said: said}
	}
	return Search[T]{on: on}, tea.Batch(work, on.watch())
}

// first is the first finding of the result, nil for none.
func first(s desk.State) *rules.Finding {
	if len(s.Result.Findings) == 0 {
		return nil
	}
	return &s.Result.Findings[0]
}

// watch looks at a search a moment later.
func (on *going) watch() tea.Cmd {
	return tea.Tick(desk.Glance, func(time.Time) tea.Msg { return glanced{on} })
}

// Going tells whether something is still worked out.
func (k Search[T]) Going() bool { return k.on != nil && !k.Done }

// Outdated tells whether the job has changed since the search began.
func (k Search[T]) Outdated(s desk.State) bool { return k.on != nil && k.on.of != first(s) }

// Stop has the search end at its next step; what came of it is forgotten.
func (k Search[T]) Stop() Search[T] {
	if k.on != nil {
		k.on.cancel()
	}
	return Search[T]{}
}

// Heard takes an answer or a look that is its own; mine is false for every other message. The command is the next look.
func (k Search[T]) Heard(msg tea.Msg) (next Search[T], again tea.Cmd, mine bool) {
	switch msg := msg.(type) {
	case answered[T]:
		if k.on == nil || msg.on != k.on {
			return k, nil, false
		}
		k.Done, k.Failed, k.Said = true, msg.failed, msg.said
		return k, nil, true
	case glanced:
		if msg.on != k.on || !k.Going() {
			return k, nil, false
		}
		if far := k.on.far.Load(); far != nil {
			k.Far = *far
		}
		return k, k.on.watch(), true
	}
	return k, nil, false
}
