package vector

import (
	"bytes"
	"image/color"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// letters is the name of the program's font in a PDF.
const letters = "letters"

// PDF is a board of pages.
type PDF struct {
	pdf *fpdf.Fpdf
	// TrueSize has whoever prints the file asked to do so unscaled.
	TrueSize bool
}

// NewPDF returns a file without a page. It says nothing of when it was made: the same pages are the same bytes.
func NewPDF(title string) *PDF {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"}) // each page has a size of its own
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(time.Unix(0, 0).UTC())
	pdf.SetModificationDate(time.Unix(0, 0).UTC())
	pdf.SetTitle(title, true)
	pdf.AddUTF8FontFromBytes(letters, "", goregular.TTF)
	pdf.AddUTF8FontFromBytes(letters, "B", gobold.TTF)
	pdf.SetLineJoinStyle("round")
	return &PDF{pdf: pdf}
}

// Page begins a page of a size, mm.
func (p *PDF) Page(width, height float64) {
	way := "P"
	if width > height {
		way = "L"
	}
	p.pdf.AddPageFormat(way, fpdf.SizeType{Wd: min(width, height), Ht: max(width, height)})
	const points = 8 // any: a page has a font from its beginning
	p.pdf.SetFont(letters, "", points)
}

// Bytes returns the file, sealed.
func (p *PDF) Bytes() ([]byte, error) {
	var out bytes.Buffer
	if err := p.pdf.Output(&out); err != nil {
		return nil, err
	}
	file := out.Bytes()
	if p.TrueSize {
		var err error
		if file, err = asTrueSize(file); err != nil {
			return nil, err
		}
	}
	return sealed(file), nil
}

// Face fills an outline.
func (p *PDF) Face(outline []geometry.Point, fill color.NRGBA) {
	p.pdf.SetAlpha(float64(fill.A)/255, "Normal")
	p.pdf.SetFillColor(int(fill.R), int(fill.G), int(fill.B))
	p.path(outline, true)
	p.pdf.DrawPath("F")
}

// Line draws a line.
func (p *PDF) Line(points []geometry.Point, s Stroke) {
	p.pdf.SetAlpha(float64(s.Colour.A)/255, "Normal")
	p.pdf.SetDrawColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
	p.pdf.SetLineWidth(s.Width)
	p.pdf.SetDashPattern(s.Dashes, 0)
	last := len(points) - 1
	if closed := last > 1 && points[0] == points[last]; closed {
		p.path(points[:last], true)
	} else {
		p.path(points, false)
	}
	p.pdf.DrawPath("D")
}

func (p *PDF) path(points []geometry.Point, closed bool) {
	p.pdf.MoveTo(points[0].X, points[0].Y)
	for _, q := range points[1:] {
		p.pdf.LineTo(q.X, q.Y)
	}
	if closed {
		p.pdf.ClosePath()
	}
}

// Write writes a text, with boxes for letters that the font lacks.
func (p *PDF) Write(at geometry.Point, t Text) {
	const pointsPerMM = 72 / survey.Inch
	style := ""
	if t.Bold {
		style = "B"
	}
	p.pdf.SetFont(letters, style, t.Size*pointsPerMM)
	if t.Turned {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(90, at.X, at.Y)
		defer p.pdf.TransformEnd()
	}
	t.Words = Legible(t.Words)
	x := BoxOf(at.X, at.Y, t).Left
	p.pdf.SetAlpha(1, "Normal")
	if t.Rim.A > 0 {
		p.pdf.SetDrawColor(int(t.Rim.R), int(t.Rim.G), int(t.Rim.B))
		p.pdf.SetLineWidth(2 * rimOf(t.Size))
		p.pdf.SetDashPattern(nil, 0)
		p.pdf.SetTextRenderingMode(1)
		p.pdf.Text(x, at.Y, t.Words)
		p.pdf.SetTextRenderingMode(0)
	}
	p.pdf.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
	p.pdf.Text(x, at.Y, t.Words)
}

// Windowed cuts off at a box. Behind it the file goes back to the fill and the font before it, and the library does not know that: it
// would leave out what it takes to be set, and write white letters.
func (p *PDF) Windowed(b Box, draw func()) {
	red, green, blue := p.pdf.GetFillColor()
	style := p.pdf.GetFontStyle()
	points, _ := p.pdf.GetFontSize()
	p.pdf.ClipRect(b.Left, b.Top, b.Width, b.Height, false)
	draw()
	p.pdf.SetFillColor(red, green, blue)
	p.pdf.SetFont(letters, style, points)
	p.pdf.ClipEnd()
}
