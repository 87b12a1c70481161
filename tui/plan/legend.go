package plan

import (
	"unicode/utf8"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// entry is a row of the legend: a patch of a role's pattern, or letters, and what they mean.
type entry struct {
	role  scene.Role
	patch bool
	code  string
	means string
}

var patterns = []entry{
	{role: scene.Steel, patch: true, means: "steel that carries"},
	{role: scene.Lines, patch: true, means: "lines, wires, tanks"},
	{role: scene.Hot, patch: true, means: "hot: van's exhaust"},
	{role: scene.Movable, patch: true, means: "moves or comes off"},
	{role: scene.Exhaust, patch: true, means: "heater's exhaust"},
	{role: scene.Intake, patch: true, means: "heater's air in"},
	{role: scene.Fuel, patch: true, means: "heater's fuel line"},
	{code: "◎", means: "the cut", role: scene.Cut},
	{code: "●", means: "exhaust's end", role: scene.Outlet},
	{code: "○", means: "air's way in", role: scene.Mouth},
	{code: "◆", means: "matching point", role: scene.Tie},
}

var verdicts = []entry{
	{code: "!", means: "foul", role: scene.Cut},
	{code: "?", means: "doubtful, not measured", role: scene.Cut},
}

// column is how wide a column of the legend is, its blanks included.
const column = 27

// explain lays the legend over the right side of the picture, in as many columns as it needs and there is room for. What
// can be guessed comes last, as on a small screen it may be cut off.
func explain(c *canvas.Canvas, s desk.State) {
	entries := verdicts[:len(verdicts):len(verdicts)]
	for _, k := range drawing.Legend(s.Result.Job) {
		entries = append(entries, entry{role: k.Role, code: k.Code, means: k.Name})
	}
	entries = append(entries, patterns...)
	rows := max(c.Rows, 1)
	columns := min((len(entries)+rows-1)/rows, c.Cols/column)
	if columns < 1 {
		return
	}
	rows = min(rows, (len(entries)+columns-1)/columns)
	left := c.Left + c.Cols - columns*column
	c.Blank(left, c.Top, columns*column, rows)
	for i, e := range entries[:min(len(entries), rows*columns)] {
		e.put(c, left+i/rows*column, c.Top+i%rows)
	}
}

func (e entry) put(c *canvas.Canvas, col, row int) {
	const patch = 3
	c.Put(col, row, "│", canvas.Ink{Role: scene.Floor})
	if e.patch {
		c.Patch(col+1, row, patch, e.role)
	} else {
		c.Put(col+1+patch-utf8.RuneCountInString(e.code), row, e.code, canvas.Ink{Role: e.role, Tone: canvas.Bold})
	}
	c.Put(col+2+patch, row, e.means, canvas.Ink{Role: scene.Floor})
}
