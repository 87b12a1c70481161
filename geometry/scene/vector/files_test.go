package vector_test

import (
	"bytes"
	"compress/zlib"
	"encoding/xml"
	"errors"
	"fmt"
	"image/color"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/scene/vector"
)

// svgElement is one element of an SVG file, as an XML reader has it.
type svgElement struct {
	name  string
	attrs map[string]string
	text  string
}

func svgElements(t require.TestingT, file []byte) (all []svgElement) {
	for d := xml.NewDecoder(bytes.NewReader(file)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			e := svgElement{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
			}
			all = append(all, e)
		case xml.CharData:
			if len(all) > 0 {
				all[len(all)-1].text += strings.TrimRight(string(token), "\n")
			}
		}
	}
}

var svgPoint = regexp.MustCompile(`[ML](\S+?) ([^MLz]+)`)

// svgPath reads a path of straight lines.
func svgPath(t require.TestingT, d string) (points []geometry.Point, closed bool) {
	for _, m := range svgPoint.FindAllStringSubmatch(d, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		y, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		points = append(points, geometry.Point{X: x, Y: y})
	}
	return points, strings.HasSuffix(d, "z")
}

func drawLine(t *rapid.T, least int) []geometry.Point {
	line := make([]geometry.Point, rapid.IntRange(least, 7).Draw(t, "points"))
	for i := range line {
		line[i] = geometry.Point{X: rapid.Float64Range(-20, 300).Draw(t, "x"), Y: rapid.Float64Range(-20, 220).Draw(t, "y")}
	}
	return line
}

// nearly tells whether two lines go through the same places, to half a thousandth of a mm along either axis.
func nearly(t require.TestingT, want, got []geometry.Point, off float64) {
	require.Len(t, got, len(want))
	for i := range want {
		require.InDelta(t, want[i].X, got[i].X, off)
		require.InDelta(t, want[i].Y, got[i].Y, off)
	}
}

// What stands in an SVG file, read by an XML reader, is what was drawn: places, widths, dashes and colours.
func TestAnSVGFileHoldsWhatWasDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ink := color.NRGBA{uint8(rapid.IntRange(0, 255).Draw(t, "red")), 7, 200, uint8(rapid.IntRange(1, 255).Draw(t, "alpha"))}
		face, line := drawLine(t, 3), drawLine(t, 2)
		closes := len(line) > 2 && rapid.Bool().Draw(t, "closed")
		drawn := line
		if closes {
			drawn = append(line[:len(line):len(line)], line[0])
		}
		stroke := vector.Stroke{Width: rapid.Float64Range(0.1, 3).Draw(t, "width"), Dashes: []float64{3, 0.75}, Colour: ink}
		b := vector.NewSVG(297, 210)
		b.Face(face, ink)
		b.Line(drawn, stroke)
		all := svgElements(t, b.Bytes())
		require.Len(t, all, 3)
		assert.Equal(t, "0 0 297 210", all[0].attrs["viewBox"])

		points, closed := svgPath(t, all[1].attrs["d"])
		assert.True(t, closed)
		nearly(t, face, points, 0.0005001)
		assert.Equal(t, fmt.Sprintf("#%02x07c8", ink.R), all[1].attrs["fill"])
		alpha := 1.0
		if text, ok := all[1].attrs["fill-opacity"]; ok {
			var err error
			alpha, err = strconv.ParseFloat(text, 64)
			require.NoError(t, err)
		}
		assert.InDelta(t, float64(ink.A)/255, alpha, 0.0005001)

		points, closed = svgPath(t, all[2].attrs["d"])
		assert.Equal(t, closes, closed)
		nearly(t, line, points, 0.0005001)
		assert.Equal(t, "none", all[2].attrs["fill"])
		assert.Equal(t, "3 0.75", all[2].attrs["stroke-dasharray"])
		width, err := strconv.ParseFloat(all[2].attrs["stroke-width"], 64)
		require.NoError(t, err)
		assert.InDelta(t, stroke.Width, width, 0.0005001)
	})
}

// Any words come back from the file as they are, without ink; what is seen are their letters' outlines, the rim first, whatever fonts a viewer has.
func TestWordsInAnSVGFile(t *testing.T) {
	b := vector.NewSVG(100, 100)
	words := `5 < 6 & "a" > 'b' ±3 é`
	b.Write(geometry.Point{X: 8, Y: 9.5}, vector.Text{Words: words, Size: 3, Bold: true, Align: vector.ByEnd, Colour: vector.Ink, Rim: vector.White})
	b.Write(geometry.Point{X: 8, Y: 9.5}, vector.Text{Words: words, Size: 3, Turned: true, Colour: vector.Ink})
	var all, seen []svgElement
	for _, e := range svgElements(t, b.Bytes())[1:] {
		if e.attrs["class"] == "letters" {
			seen = append(seen, e)
		} else {
			all = append(all, e)
		}
	}
	require.Len(t, all, 2)
	for i, e := range all {
		assert.Equal(t, words, e.text)
		assert.Equal(t, [2]string{"8", "9.5"}, [2]string{e.attrs["x"], e.attrs["y"]})
		assert.Equal(t, [...]string{"end", "start"}[i], e.attrs["text-anchor"])
		assert.Equal(t, i == 0, e.attrs["font-weight"] == "bold")
		assert.Equal(t, "none", e.attrs["fill"])
	}
	require.Len(t, seen, 3)
	assert.Equal(t, [2]string{"#ffffff", "none"}, [2]string{seen[0].attrs["stroke"], seen[0].attrs["fill"]})
	assert.Equal(t, seen[0].attrs["d"], seen[1].attrs["d"])
	assert.Equal(t, "#000000", seen[1].attrs["fill"])
	assert.Equal(t, "rotate(-90 8 9.5)", seen[2].attrs["transform"], "it reads upwards")
	assert.Equal(t, seen[2].attrs["transform"], all[1].attrs["transform"])
	assert.NotEqual(t, all[0].attrs["textLength"], all[1].attrs["textLength"], "bold is wider")
}

// What is cut off at one box is not cut off at another's.
func TestBoxesOfAnSVGFileAreTheirOwn(t *testing.T) {
	b := vector.NewSVG(100, 100)
	for i := range 2 {
		b.Windowed(vector.Box{Left: float64(i), Top: 2, Width: 30, Height: 40}, func() { b.Face(drawn3, vector.Ink) })
	}
	var rooms, groups []string
	lefts := map[string]string{}
	for _, e := range svgElements(t, b.Bytes()) {
		switch e.name {
		case "clipPath":
			rooms = append(rooms, "url(#"+e.attrs["id"]+")")
		case "rect":
			lefts[rooms[len(rooms)-1]] = e.attrs["x"]
			assert.Equal(t, [3]string{"2", "30", "40"}, [3]string{e.attrs["y"], e.attrs["width"], e.attrs["height"]})
		case "g":
			groups = append(groups, e.attrs["clip-path"])
		}
	}
	assert.Equal(t, rooms, groups)
	require.Len(t, lefts, 2)
	assert.Equal(t, [2]string{"0", "1"}, [2]string{lefts[groups[0]], lefts[groups[1]]})
}

var drawn3 = []geometry.Point{{X: 1, Y: 1}, {X: 21, Y: 1}, {X: 21, Y: 31}}

// pdfContent returns what a PDF file draws: its streams that can be read as text, unpacked.
func pdfContent(t require.TestingT, file []byte) (content string) {
	for _, part := range bytes.Split(file, []byte("stream\n"))[1:] {
		packed, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue
		}
		text, _ := io.ReadAll(packed)
		if bytes.Contains(text, []byte(" m\n")) {
			content += string(text)
		}
	}
	return content
}

var pdfPoint = regexp.MustCompile(`(?m)^(-?[\d.]+) (-?[\d.]+) ([ml])\s*$`)

// In a PDF file, whose unit is a 72nd of an inch and whose Y goes up from the foot of the page, a line goes through the same places,
// to a hundredth of that unit.
func TestAPDFFileHoldsWhatWasDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := drawLine(t, 2)
		b := vector.NewPDF("a page")
		b.Page(297, 210)
		b.Line(line, vector.Stroke{Width: 0.5, Dashes: []float64{6, 1.5}, Colour: vector.Ink})
		file, err := b.Bytes()
		require.NoError(t, err)
		content := pdfContent(t, file)
		var points []geometry.Point
		for i, m := range pdfPoint.FindAllStringSubmatch(content, -1) {
			x, _ := strconv.ParseFloat(m[1], 64)
			y, _ := strconv.ParseFloat(m[2], 64)
			points = append(points, geometry.Point{X: x, Y: y}.Scale(25.4/72))
			assert.Equal(t, i == 0, m[3] == "m", "one line, from its first point")
		}
		for i := range points {
			points[i].Y = 210 - points[i].Y
		}
		nearly(t, line, points, 0.005)
		assert.Contains(t, content, "1.42 w", "0.5 mm wide")
		assert.Contains(t, content, "[17.01 4.25] 0.00 d")
	})
}

// A page is as large as was asked for, lying or standing.
func TestPagesHaveTheirSizes(t *testing.T) {
	for _, size := range [][2]float64{{297, 210}, {210, 297}, {150, 150}} {
		b := vector.NewPDF("a page")
		b.Page(size[0], size[1])
		file, err := b.Bytes()
		require.NoError(t, err)
		m := regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`).FindSubmatch(file)
		require.NotNil(t, m)
		for i, text := range m[1:] {
			points, err := strconv.ParseFloat(string(text), 64)
			require.NoError(t, err)
			assert.InDelta(t, size[i], points*25.4/72, 0.01)
		}
	}
}

// A whole scene on a page: each face, line and text that a board is told to draw is one element of the file, in the same order and
// in the same place; a text with a rim is two.
func TestASceneOnAPageIsWhatABoardIsTold(t *testing.T) {
	beam := upright(scene.Steel, scene.Area, geometry.NewRectangle(geometry.Point{X: 652, Y: -850}, geometry.Point{X: 736, Y: 850}, 0))
	beam.Label, beam.State = "rear crossmember", scene.Foul
	pipe := upright(scene.Lines, scene.Area, geometry.NewLine([]geometry.Point{{X: 300, Y: -480}, {X: 1500, Y: -480}, {X: 2400, Y: -590}}, 4))
	pipe.Label, pipe.Unsure = "brake pipe, right", true
	bolt := scene.Item{Role: scene.Tie, Primitive: scene.Spot, At: geometry.Point3{X: 1500, Y: 200}, Label: "seat bolt"}
	items := []scene.Item{beam, pipe, bolt, line(scene.Dimension, geometry.Point3{X: 736, Y: 240}, geometry.Point3{X: 1146, Y: 240})}
	s := sceneOf(items...)
	b := vector.NewSVG(297, 210)
	vector.Draw(b, &s, vector.Fit(&s, page), look)
	var elements []svgElement
	for _, e := range svgElements(t, b.Bytes()) {
		if e.attrs["class"] != "letters" && (e.name == "path" || e.name == "text") {
			elements = append(elements, e)
		}
	}
	for _, a := range drawn(look, items...) {
		require.NotEmpty(t, elements, "%v is missing", a)
		e := elements[0]
		elements = elements[1:]
		if a.what == "text" {
			require.Equal(t, a.text.Words, e.text)
			continue
		}
		points, closed := svgPath(t, e.attrs["d"])
		require.Equal(t, a.what == "face", e.attrs["fill"] != "none")
		want := a.points
		if a.what == "line" && closed {
			want = want[:len(want)-1]
		}
		nearly(t, want, points, 0.0005001)
	}
	require.Empty(t, elements, "nothing else is drawn")
}
