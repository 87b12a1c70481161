// Package pixels shows pictures in terminals that can show them: it asks whether one can (Kitty's graphics protocol, with Unicode
// placeholders), paints what is wanted beside the program, and sends it between two frames of cells. A terminal that says nothing
// gets none.
package pixels

import (
	"bytes"
	"image"
	"os"
	"sync"
	"sync/atomic"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
)

// ID is the number of the picture: it is the colour of its placeholders, 24 bits.
const ID = 0x00756d

// What a cell is painted with, pixels: the terminal fits it to its own cells. A dot of the plan is 5 pixels wide and high.
const (
	CellWide = 10
	CellHigh = 20
)

// Most is how many columns or rows a picture may have: so many the protocol has marks for.
const Most = 297

// Query asks a terminal whether it shows pictures: one that does answers with the number, others keep silent.
var Query = ansi.KittyGraphics([]byte("AAAA"), "i=30061", "s=1", "v=1", "a=q", "t=d", "f=24")

// answer is how the answer to Query begins, when it is yes.
const answer = "\x1b_Gi=30061;OK"

// Placeholder returns the text of a cell that shows its part of the picture, from column and row 0. Its colour must be ID.
func Placeholder(col, row int) string {
	return string([]rune{kitty.Placeholder, kitty.Diacritic(row), kitty.Diacritic(col)})
}

// Terminal is the terminal that the program writes on. What the library writes and pictures never run into each other.
type Terminal struct {
	*os.File
	mu    sync.Mutex
	shows atomic.Bool
	want  chan picture // the newest that was not begun
	once  sync.Once
}

// picture is what is to be shown.
type picture struct {
	cols, rows int
	paint      func() *image.RGBA
}

// On returns a terminal that writes on a file.
func On(f *os.File) *Terminal { return &Terminal{File: f, want: make(chan picture, 1)} }

// Write writes what is no picture.
func (t *Terminal) Write(p []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.File.Write(p)
}

// Shows tells whether the terminal has said that it shows pictures.
func (t *Terminal) Shows() bool { return t != nil && t.shows.Load() }

// Show has a picture of so many cells painted and sent, beside whoever asks. One that was not begun when the next is asked for is
// left out.
func (t *Terminal) Show(cols, rows int, paint func() *image.RGBA) {
	t.once.Do(func() { go t.send() })
	next := picture{cols, rows, paint}
	for {
		select {
		case t.want <- next:
			return
		default:
		}
		select {
		case <-t.want:
		default:
		}
	}
}

// send paints and sends what is wanted, one after the other.
func (t *Terminal) send() {
	for p := range t.want {
		data := Encode(p.paint(), p.cols, p.rows)
		_, _ = t.Write(data) // a terminal that is gone is found out by whoever writes the cells
	}
}

// Encode returns what has a terminal keep a picture and show it wherever its placeholders stand.
func Encode(p *image.RGBA, cols, rows int) []byte {
	var out bytes.Buffer
	err := kitty.EncodeGraphics(&out, p, &kitty.Options{
		Action: kitty.TransmitAndPut, Quite: 2, ID: ID, Format: kitty.RGBA, Compression: kitty.Zlib, Transmission: kitty.Direct, Chunk: true,
		ImageWidth: p.Rect.Dx(), ImageHeight: p.Rect.Dy(), Columns: cols, Rows: rows, VirtualPlacement: true,
	})
	if err != nil {
		return nil // nothing that writes to memory fails
	}
	return out.Bytes()
}
