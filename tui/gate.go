package tui

import (
	"io"
	"os"
	"sync"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui/answers"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/pixels"
	"bench.example/undermark/tui/sparing"
)

// The marks round a pasted text (xterm's control sequences, bracketed paste mode).
const (
	pasteBegins = "\x1b[200~"
	pasteEnds   = "\x1b[201~"
)

const (
	// wholePaste is how many bytes of a paste come through as they are: as many as the longest that is taken may have.
	wholePaste = form.LongestPaste * utf8.UTFMax
	// refusedPaste is how many come through of a longer one: what follows on wholePaste comes as filler, which by itself is
	// longer than any paste that is taken.
	refusedPaste = wholePaste + form.LongestPaste + 1
	filler       = 'x'
)

// gate stands between the terminal and the library that reads it. The library looks through all of an unfinished paste again
// at each 256 bytes: a megabyte would take it seconds. The gate lets only so much of a paste through that it is known to be
// too long. All else comes through byte by byte as it was read, and in the same reads.
type gate struct {
	one     sync.Mutex // where the program was stopped and goes on, the library begins to read anew, and the reader before may not have ended yet
	from    io.Reader
	inside  bool // of a paste
	bytes   int  // of the paste, so far
	matched int  // bytes of the mark that may come next
}

func (g *gate) Read(p []byte) (int, error) {
	g.one.Lock()
	defer g.one.Unlock()
	held := 0 // bytes in front of p that may begin a mark
	for {
		n, err := g.from.Read(p[held:])
		end := held + n
		if g.wanted(p[held:end]) || n == 0 || err != nil {
			return end, err
		}
		held = copy(p, p[end-min(g.matched, end):end])
		if held == len(p) {
			return held, nil
		}
	}
}

// wanted says whether any of the bytes just read has to come through, and makes filler of those that come only to make a
// paste too long.
func (g *gate) wanted(read []byte) (any bool) {
	for i, b := range read {
		if g.matches(b) || !g.inside {
			any = true
			continue
		}
		if g.bytes++; g.bytes > refusedPaste {
			continue
		}
		any = true
		if g.bytes > wholePaste && g.matched == 0 {
			read[i] = filler
		}
	}
	return any
}

// matches takes a byte and says whether a mark ended with it. No byte of a mark but the first is its first.
func (g *gate) matches(b byte) bool {
	mark := pasteBegins
	if g.inside {
		mark = pasteEnds
	}
	switch {
	case b == mark[g.matched]:
		g.matched++
	case b == mark[0]:
		g.matched = 1
	default:
		g.matched = 0
	}
	if g.matched < len(mark) {
		return false
	}
	g.inside, g.bytes, g.matched = !g.inside, 0, 0
	return true
}

// keyboard is the terminal's file, read through a gate.
type keyboard struct {
	*os.File
	gate *gate
}

func (k keyboard) Read(p []byte) (int, error) { return k.gate.Read(p) }

// gated has the keys read through a gate, and the terminal's answers taken out before. Where keys do not come from the standard
// input, the library finds the terminal; that is then not asked for anything, nor is it without a screen.
func (r *Root) gated(screen *sparing.Terminal, pictures *pixels.Terminal) []tea.ProgramOption {
	if !term.IsTerminal(os.Stdin.Fd()) {
		return nil
	}
	from := io.Reader(os.Stdin)
	if more := answers.More(os.Stdin); screen != nil && more != nil {
		asking := []answers.Awaiter{screen.Asks()}
		if r.mayShowPictures() {
			asking = append(asking, pictures)
			r.desk.State.Pixels = pictures
		}
		from = &answers.Reader{From: from, For: asking, More: more}
	}
	from = r.options.Letters.Reader(from)
	return []tea.ProgramOption{tea.WithInput(keyboard{os.Stdin, &gate{from: from}})}
}

// mayShowPictures tells whether a terminal may be asked whether it shows pictures: not where nobody wants colours, nor where it is
// known to write out what it does not know.
func (r *Root) mayShowPictures() bool {
	return r.desk.State.Settings.Colour != desk.NoColour && os.Getenv("TERM") != "linux"
}

// pictured says that the terminal shows pictures: the screen is painted anew.
type pictured struct{}

func (pictured) happened(*Root) tea.Cmd { return nil }
