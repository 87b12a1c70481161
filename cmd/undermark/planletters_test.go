package main

import (
	"encoding/xml"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wordOnPage is a word with the box that it fills, in points from the page's top left, as pdftotext has it.
type wordOnPage struct {
	XMin  float64 `xml:"xMin,attr"`
	YMin  float64 `xml:"yMin,attr"`
	XMax  float64 `xml:"xMax,attr"`
	YMax  float64 `xml:"yMax,attr"`
	Words string  `xml:",chardata"`
}

// rasterOf is a picture in a file.
func rasterOf(t *testing.T, file string) image.Image {
	f, err := os.Open(file)
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	picture, _, err := image.Decode(f)
	require.NoError(t, err)
	return picture
}

// dark tells whether a place of a picture has ink, or one no farther off than so many pixels.
func dark(picture image.Image, x, y, off int) bool {
	for dy := -off; dy <= off; dy++ {
		for dx := -off; dx <= off; dx++ {
			if r, g, b, a := picture.At(x+dx, y+dy).RGBA(); a > 0x8000 && r+g+b < 3*0x8000 {
				return true
			}
		}
	}
	return false
}

// inkBeyond is how much of the ink that one picture has in a part another has not, nor next to it: 0 to 1.
func inkBeyond(one, other image.Image, part image.Rectangle) float64 {
	ink, lone := 0.0, 0.0
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for x := part.Min.X; x < part.Max.X; x++ {
			if dark(one, x, y, 0) {
				ink++
				if !dark(other, x, y, 1) {
					lone++
				}
			}
		}
	}
	return lone / max(ink, 1)
}

// The letters of a plan are the same ink in the same places whether librsvg paints the SVG or poppler the PDF: no name is wider in one of them
// than it was reckoned, so none runs into another or loses its ends.
func TestNamesOnAPlanFillTheSameBoxesInEachReader(t *testing.T) {
	notRaced(t)
	needs(t, "rsvg-convert", "pdftoppm", "pdftotext")
	const dpi = "200"
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	for _, view := range []string{"below", "above"} {
		for _, kind := range []string{".svg", ".pdf"} {
			code, _, complaint := call("", "plan", demoFile(t), "--from", view, "-o", in(view+kind))
			require.Zero(t, code, complaint)
		}
		for _, command := range [][]string{
			{"rsvg-convert", "-d", dpi, "-p", dpi, "-b", "white", "-o", in("svg.png"), in(view + ".svg")}, {"pdftoppm", "-r", dpi, "-png", "-singlefile", in(view + ".pdf"), in("pdf")},
			{"pdftotext", "-bbox", in(view + ".pdf"), in("words.html")},
		} {
			told, err := exec.Command(command[0], command[1:]...).CombinedOutput()
			require.NoError(t, err, string(told))
		}
		svg, pdf := rasterOf(t, in("svg.png")), rasterOf(t, in("pdf.png"))
		text, err := os.ReadFile(in("words.html"))
		require.NoError(t, err)
		var page struct {
			Words []wordOnPage `xml:"body>doc>page>word"`
		}
		require.NoError(t, xml.Unmarshal(text, &page))
		require.Greater(t, len(page.Words), 30)
		for _, w := range page.Words {
			const pixels, most = 200 / 72.0, 0.08
			box := image.Rect(int(w.XMin*pixels), int(w.YMin*pixels), int(w.XMax*pixels)+1, int(w.YMax*pixels)+1)
			assert.Less(t, inkBeyond(svg, pdf, box), most, "%s: %q as librsvg paints it", view, w.Words)
			assert.Less(t, inkBeyond(pdf, svg, box), most, "%s: %q as poppler paints it", view, w.Words)
		}
	}
}
