package plan

import (
	"unicode/utf8"

	"bench.example/undermark/geometry/scene"
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

// asked are the signs that whoever sees a plan first asks about: the ring, which may be larger than the cut is, and the points that both
// sides have.
func asked(s desk.State, enlarged bool) (entries []entry) {
	if cut := s.Job.Cut; cut != nil {
		means := scene.Cut.Pen().Means
		if enlarged {
			means = "cut, drawn larger"
		}
		entries = append(entries, entry{role: scene.Cut, code: canvas.Sign(scene.Cut), means: means})
	}
	if len(s.Job.Ties) > 0 {
		entries = append(entries, entry{role: scene.Tie, code: canvas.Sign(scene.Tie), means: scene.Tie.Pen().Means})
	}
	return entries
}

// patterns are what the pens' fills, lines and signs mean, the signs last; without those that are asked for first.
func patterns() (entries []entry) {
	var signs []entry
	for i := range scene.Roles {
		role := scene.Role(i)
		switch pen := role.Pen(); {
		case pen.Means == "", role == scene.Cut, role == scene.Tie:
		case pen.Told == scene.BySign:
			signs = append(signs, entry{role: role, code: canvas.Sign(role), means: pen.Means})
		default:
			entries = append(entries, entry{role: role, patch: true, means: pen.Means})
		}
	}
	return append(entries, signs...)
}

var verdicts = []entry{
	{code: "!", means: "foul", role: scene.Cut},
	{code: "?", means: "doubtful, not measured", role: scene.Cut},
}

func (e entry) put(c *canvas.Canvas, col, row int) {
	const patch = 3
	if e.patch {
		c.Patch(col+1, row, patch, e.role)
	} else {
		c.Put(col+1+patch-utf8.RuneCountInString(e.code), row, e.code, canvas.Ink{Role: e.role, Tone: canvas.Bold})
	}
	c.Put(col+2+patch, row, e.means, canvas.Ink{Role: scene.Floor})
}

// patch is how many columns a pattern takes in the row below the picture.
const patch = 2

// explainedIn is the row below the picture in which is explained what it has.
func explainedIn(c *canvas.Canvas) int { return c.Top + c.Rows + 2 }

// roomIn is how many columns of a row are free for that.
func roomIn(c *canvas.Canvas, row int) int {
	room := c.Width
	for room > 0 && c.At(room-1, row).Rune != ' ' || room > 1 && c.At(room-2, row).Rune != ' ' {
		room-- // a note stands there
	}
	return room
}

// roles explains the faces that a plan has in a row of its own below the picture, as far as there is room in it, and returns where the
// next words may stand.
func roles(c *canvas.Canvas, plan scene.Scene) (col int) {
	row := explainedIn(c)
	if row >= c.Height {
		return 0
	}
	room := roomIn(c, row)
	there := map[scene.Role]bool{}
	for i := range plan.Items {
		there[plan.Items[i].Role] = true
	}
	for _, role := range []scene.Role{scene.Rail, scene.Steel, scene.Lines, scene.Hot, scene.Movable, scene.Exhaust} {
		means := role.Pen().Means
		if wide := patch + 1 + utf8.RuneCountInString(means); there[role] && col+wide <= room {
			c.PatchAsDrawn(col, row, patch, role)
			c.Put(col+patch+1, row, means, canvas.Ink{Role: scene.Floor})
			col += wide + 2
		}
	}
	return col
}

// signs explains behind that what else of the picture has no name: the signs of holes, and the fuel line's dots, in as many words as
// there is room for.
func signs(c *canvas.Canvas, col int) {
	row := explainedIn(c)
	if row >= c.Height {
		return
	}
	room := roomIn(c, row)
	for _, role := range [2]scene.Role{scene.Hole, scene.Fuel} {
		if !c.Draws(role) {
			continue
		}
		sign, means := canvas.DottedLine, []string{scene.Fuel.Pen().Means, "fuel line", "fuel"}
		if role == scene.Hole {
			sign, means = canvas.Sign(role), []string{scene.Hole.Pen().Means, "hole"}
		}
		wide := utf8.RuneCountInString(sign)
		for _, words := range means {
			end := col + wide + 1 + utf8.RuneCountInString(words)
			if end > room {
				continue
			}
			c.Put(col, row, sign, canvas.Ink{Role: role})
			c.Put(col+wide+1, row, words, canvas.Ink{Role: scene.Floor})
			col = end + 2
			break
		}
	}
}
