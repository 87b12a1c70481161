package pixels

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"fmt"
	"image"
	"math"
	"sync"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/ansi/kitty"
)

// ID is the number of the picture: it is the colour of its placeholders, 24 bits.
const ID = 0x00756d

// Most is how many columns or rows a picture may have: so many the protocol has marks for.
const Most = 297

// mostPixels is how many pixels a picture has at the most: as many as a page of 100 columns and 60 rows of 10 x 20. A larger one
// is painted smaller, and the terminal enlarges it.
const mostPixels = 1_200_000

// query asks a terminal how large its cells are (xterm's control sequences, CSI 16 t) and whether it shows pictures: one that does
// answers with the number.
var query = ansi.WindowOp(16) + ansi.KittyGraphics([]byte("AAAA"), fmt.Sprintf("i=%d", ID), "s=1", "v=1", "a=q", "t=d", "f=24")

// probe finds out whether a terminal that shows pictures knows placeholders: it places a dot, two cells wide, for placeholders
// only. Who does not know them shows it at once, and its cursor moves on by that; where it is then, is asked.
var probe = ansi.SaveCursor + ansi.CursorHomePosition +
	ansi.KittyGraphics([]byte("AAAA"), fmt.Sprintf("i=%d", ID), "s=1", "v=1", "a=T", "U=1", "c=2", "r=1", "q=2", "t=d", "f=24") +
	ansi.RequestCursorPositionReport + ansi.RestoreCursor + forget

// forget deletes the picture and all places that show it.
var forget = ansi.KittyGraphics(nil, "a=d", "d=I", fmt.Sprintf("i=%d", ID), "q=2")

// sizeOf is how many pixels a picture of so many cells has: those that the cells have, or fewer in the same proportions.
func sizeOf(cols, rows int, cell image.Point) image.Point {
	wide, high := float64(cols*cell.X), float64(rows*cell.Y)
	scale := min(1, math.Sqrt(mostPixels/(wide*high)))
	return image.Pt(max(int(math.Round(wide*scale)), 1), max(int(math.Round(high*scale)), 1))
}

// rgb are the pixels of a picture, three bytes each: it hides all that lies behind it.
func rgb(p *image.RGBA) []byte {
	out := make([]byte, 0, 3*p.Rect.Dx()*p.Rect.Dy())
	for y := range p.Rect.Dy() {
		row := p.Pix[y*p.Stride:][:4*p.Rect.Dx()]
		for ; len(row) > 0; row = row[4:] {
			out = append(out, row[0], row[1], row[2])
		}
	}
	return out
}

// longestPiece is how many bytes a piece may have.
const longestPiece = 4096

// packers compress: one takes a megabyte of memory, and as long to make as a picture to pack.
var packers = sync.Pool{New: func() any {
	w, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic("a level that the library has: " + err.Error())
	}
	return w
}}

// encoded is what has a terminal keep a picture of so many pixels, three bytes each, and show it in so many cells wherever its
// placeholders stand. It replaces the one before. All of it is shown at once (mode 2026), so that no half of it is seen.
func encoded(pixels []byte, size image.Point, cols, rows int) []byte {
	var packed bytes.Buffer
	w := packers.Get().(*zlib.Writer)
	w.Reset(&packed)
	_, _ = w.Write(pixels) // nothing that writes to memory fails
	_ = w.Close()
	packers.Put(w)
	text := base64.StdEncoding.AppendEncode(nil, packed.Bytes())

	out := bytes.NewBufferString(ansi.SetModeSynchronizedOutput)
	fmt.Fprintf(out, "\x1b_Ga=T,U=1,q=2,i=%d,f=24,o=z,t=d,s=%d,v=%d,c=%d,r=%d,", ID, size.X, size.Y, cols, rows)
	for {
		piece := text[:min(len(text), longestPiece)]
		text = text[len(piece):]
		more := 0
		if len(text) > 0 {
			more = 1
		}
		fmt.Fprintf(out, "m=%d;%s\x1b\\", more, piece)
		if more == 0 {
			break
		}
		out.WriteString("\x1b_Gq=2,")
	}
	out.WriteString(ansi.ResetModeSynchronizedOutput)
	return out.Bytes()
}

// First is the rune that placeholders begin with.
const First = kitty.Placeholder

// AppendPlaceholder appends the text of a cell that shows its part of the picture, from column and row 0. Its colour must be ID.
func AppendPlaceholder(out []byte, col, row int) []byte {
	out = utf8.AppendRune(out, First)
	out = utf8.AppendRune(out, kitty.Diacritic(row))
	return utf8.AppendRune(out, kitty.Diacritic(col))
}

// Placed tells which part of the picture the text shows that s begins with: its column and row, and how long that text is, bytes;
// 0 when it begins with anything else.
func Placed(s string) (col, row, n int) {
	const first = string(First)
	if len(s) < len(first) || s[:len(first)] != first {
		return 0, 0, 0
	}
	marks := [2]int{}
	n = len(first)
	for i := range marks {
		r, long := utf8.DecodeRuneInString(s[n:])
		numbers := marked()
		if int(r) >= len(numbers) || numbers[r] == 0 {
			return 0, 0, 0
		}
		marks[i] = int(numbers[r]) - 1
		n += long
	}
	return marks[1], marks[0], n
}

// marked is which number the mark with a rune stands for, and 1 more; 0 for none. Who shows pictures asks it thousands of times a key.
var marked = sync.OnceValue(func() []int16 {
	var of []int16
	for i := range Most {
		r := int(kitty.Diacritic(i))
		if r >= len(of) {
			of = append(of, make([]int16, r+1-len(of))...)
		}
		of[r] = int16(i) + 1
	}
	return of
})
