package tui

import (
	"io"
	"os"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/sparing"
	"bench.example/undermark/tui/words"
)

// The keys that hold only where nothing is drawn. Outside of fields one finger does what the chords do: there are no big figures and no
// look to be had with those keys.
var (
	keyReadAll = key.NewBinding(key.WithKeys("ctrl+l", desk.KeyFigures.Keys()[0]), key.WithHelp("Ctrl-L or "+desk.KeyFigures.Help().Key, "read the whole screen"))
	keyAgain   = key.NewBinding(key.WithKeys("ctrl+r", desk.KeyLook.Keys()[0]), key.WithHelp("Ctrl-R or "+desk.KeyLook.Help().Key, "say again where you are"))
)

// plainRows is how many rows a page has where nothing is drawn: as many lines as one keeps in mind.
const plainRows = 24

// plainly is the program where nothing is drawn: the same root, and a voice that writes what has become new, a line under the
// other. The library reads the keys and writes nothing.
type plainly struct {
	*Root
	voice *aloud.Voice
	last  told
	paste bool // the terminal marks pasted text
}

// told is what was told last.
type told struct {
	place   any // a screen's title, or what lies over it
	plain   desk.Plain
	heading string
	warning string
	number  uint64 // of the line said
}

// RunPlain runs the program without drawing on a terminal until the fitter quits; otherwise it is as Run.
func RunPlain(o Options, terminal *os.File, complain io.Writer) error {
	r, err := New(o)
	if err != nil {
		return err
	}
	leaving, width := sparing.NewLeaving(), func() int { return widthOf(terminal) }
	p := &plainly{Root: r, voice: aloud.NewVoice(o.Letters.Writer(leaving.Writer(terminal)), true, width), paste: os.Getenv("TERM") != "dumb"}
	p.begin()
	p.marksPastes(true)
	err = r.show(p, ended{complain, p}, leaving, append(r.gated(nil, nil), tea.WithOutput(io.Discard))...)
	p.end()
	return err
}

// ended writes to people once nothing more is said.
type ended struct {
	io.Writer
	p *plainly
}

func (e ended) Write(text []byte) (int, error) {
	e.p.end()
	return e.Writer.Write(text)
}

// end leaves the terminal as it was.
func (p *plainly) end() {
	p.voice.Shut()
	p.marksPastes(false)
	p.paste = false
}

// widthOf is how many columns a terminal has now.
func widthOf(terminal *os.File) int {
	w, _, err := term.GetSize(terminal.Fd())
	if err != nil || w < aloud.LeastWidth {
		return aloud.UsualWidth
	}
	return w
}

// begin makes ready what is told from now on.
func (p *plainly) begin() {
	p.plain = true
	p.Root.Update(tea.WindowSizeMsg{Width: aloud.Unbroken, Height: plainRows})
}

// marksPastes has the terminal mark pasted text, or no more: else what is pasted outside of a field would be keys.
func (p *plainly) marksPastes(on bool) {
	switch {
	case !p.paste:
	case on:
		p.voice.Order(ansi.SetModeBracketedPaste)
	default:
		p.voice.Order(ansi.ResetModeBracketedPaste)
	}
}

// Init starts what the root starts, and says where one is.
func (p *plainly) Init() tea.Cmd {
	p.voice.Say("Undermark, in lines. " + keyHint(keyReadAll) + ". " + keyHint(keyAgain) + ". " + keyHint(desk.KeyHelp) + ".")
	p.tellNew()
	return p.Root.Init()
}

// keyHint is a key and what it does, "" while it does nothing.
func keyHint(b key.Binding) string {
	if !b.Enabled() {
		return ""
	}
	name := b.Help().Key
	if word, has := keyWords[name]; has {
		name = word
	}
	return name + ": " + b.Help().Desc
}

// keyWords are what keys are called whose signs a screen reader passes over.
var keyWords = map[string]string{
	",": "comma", ".": "full stop", "+": "plus", "-": "minus", "?": "question mark", "[": "left bracket", "]": "right bracket",
}

// View draws nothing.
func (p *plainly) View() string { return "" }

// Update has the root answer a message, and says what is new.
func (p *plainly) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	press, isKey := msg.(tea.KeyMsg)
	switch {
	case isKey && press.Type == tea.KeyRunes && (press.Paste || p.takesLetters()):
	case isKey && key.Matches(press, keyReadAll):
		p.voice.Say(p.whole()...)
		return p, nil
	case isKey && key.Matches(press, keyAgain):
		p.again()
		return p, nil
	}
	switch msg.(type) {
	case suspended:
		p.marksPastes(false)
	case tea.ResumeMsg: // somebody else has had the terminal meanwhile
		p.marksPastes(true)
		p.again()
	}
	_, cmd := p.Root.Update(msg)
	if !p.tellNew() && isKey && cmd == nil && p.last.plain.Field == "" {
		p.voice.Say("Nothing new.")
	}
	return p, cmd
}

// takesLetters tells whether letters and digits belong to a field.
func (p *plainly) takesLetters() bool {
	if o := p.overlay(); o != nil {
		_, typed := o.(*prompt)
		return typed
	}
	return p.Root.takesLetters()
}

// now is what there is to tell.
func (p *plainly) now() told {
	t := told{place: p.screens[p.at].Title(), heading: heading(p.desk.State), warning: p.warning(), number: p.number}
	if o := p.overlay(); o != nil {
		t.place, t.plain = o, o.plain(p.Root)
		return t
	}
	t.plain = p.screens[p.at].Plain(p.desk.State)
	return t
}

// titled is a line that says where one is; what lies over the screens says that itself.
func (p *plainly) titled() string {
	if p.overlay() != nil {
		return ""
	}
	return "Screen " + strconv.Itoa(p.at+1) + " of " + strconv.Itoa(len(p.screens)) + ": " + p.screens[p.at].Title()
}

// tellNew says what has changed since it was told last, and whether anything was said.
func (p *plainly) tellNew() (said bool) {
	was, now := p.last, p.now()
	lines := p.message(&now)
	if field := now.plain.Field; field != "" && !now.plain.Picked && now.place == was.place && field == was.plain.Field {
		said := now.plain.Text != was.plain.Text
		now.heading, now.warning, now.plain.Here = was.heading, was.warning, was.plain.Here // told once the field is left
		p.last = now
		p.voice.Say(lines...)
		if said {
			p.voice.Type(now.plain.Text)
		}
		return said || len(lines) > 0
	}
	p.last = now
	status, here := changed(was, now), p.here(was, now)
	lines = append(became(was, now), unsaidBy(here, lines)...)
	if now.plain.Field != "" {
		lines = append(append(lines, status...), here...) // what is to be typed next comes last
	} else {
		lines = append(append(lines, here...), status...)
	}
	p.voice.Shut()
	p.voice.Say(lines...)
	return len(lines) > 0
}

// message is the line that is said above the foot, once it is new.
func (p *plainly) message(now *told) []string {
	if !p.saying() {
		now.number = p.last.number // it is said when it would be seen
		return nil
	}
	if now.number == p.last.number {
		return nil
	}
	return []string{p.say}
}

// unsaidBy are the lines that say more than what comes anyway: a change may be told in the words of what it changed.
func unsaidBy(here, lines []string) []string {
	return slices.DeleteFunc(lines, func(line string) bool {
		return slices.ContainsFunc(here, func(said string) bool { return said != "" && strings.HasSuffix(line, said) })
	})
}

// became is what became of a field that was left.
func became(was, now told) []string {
	if was.plain.Field == "" || was.place != now.place || now.plain.Field == was.plain.Field || now.plain.Came == nil {
		return nil
	}
	line := now.plain.Came(was.plain.Field, was.plain.Text)
	if line == "" || slices.Contains(was.plain.Here, line) {
		return nil
	}
	return []string{line}
}

// here are the lines of what the keys act on that were not there before; at another place all of them.
func (p *plainly) here(was, now told) (lines []string) {
	if now.place != was.place {
		return append([]string{p.titled()}, now.plain.Here...)
	}
	for _, line := range now.plain.Here {
		if line != "" && !slices.Contains(was.plain.Here, line) {
			lines = append(lines, line)
		}
	}
	return lines
}

// changed is how the job stands, and what is not kept safe, where that is another than before.
func changed(was, now told) (lines []string) {
	if now.heading != was.heading {
		lines = append(lines, now.heading)
	}
	if now.warning != was.warning && now.warning != "" {
		lines = append(lines, now.warning)
	}
	return lines
}

// again says where one is.
func (p *plainly) again() {
	now := p.now()
	p.voice.Say(append(append([]string{p.titled()}, now.plain.Here...), now.heading)...)
	if now.plain.Field != "" && !now.plain.Picked {
		p.voice.Type(now.plain.Text)
	}
}

// whole is all that the screen shows, or what lies over it.
func (p *plainly) whole() []string {
	if o := p.overlay(); o != nil {
		return o.plain(p.Root).All()
	}
	job := "Job " + p.ref()
	if p.desk.State.Dirty {
		job += ", " + notSaved
	}
	lines := append([]string{p.titled() + ". " + job, heading(p.desk.State), p.warning()}, p.screens[p.at].Plain(p.desk.State).All()...)
	return aloud.Rows(append(lines, words.Advice(p.desk.State))...)
}
