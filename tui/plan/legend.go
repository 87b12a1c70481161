package plan

import (
	"strings"
	"unicode/utf8"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
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

// roles explains the faces that a plan has in a row of its own below the picture, as far as there is room in it but for so many
// columns that are kept for signs, and returns where those may stand.
func roles(c *canvas.Canvas, plan scene.Scene, kept int) (col int) {
	row := explainedIn(c)
	if row >= c.Height {
		return 0
	}
	room := roomIn(c, row) - kept
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

// explained is a sign of a line or a hole, in what ink it stands, and what it means, in fewer and fewer words.
type explained struct {
	sign  string
	ink   canvas.Ink
	means []string
}

// unnamed are the signs of a picture that have no name in it: those of holes, of the heater's fuel line, and of the pipes that can kill, which are heavy.
func unnamed(c *canvas.Canvas, s desk.State) (all []explained) {
	if c.Draws(scene.Hole) {
		all = append(all, explained{canvas.Sign(scene.Hole), canvas.Ink{Role: scene.Hole}, []string{scene.Hole.Pen().Means, "hole", "hole"}})
	}
	if c.Draws(scene.Fuel) {
		all = append(all, explained{canvas.DottedLine, canvas.Ink{Role: scene.Fuel}, []string{scene.Fuel.Pen().Means, "fuel line", "fuel"}})
	}
	if what := deadlyPipes(s); len(what) > 0 && c.Draws(scene.Lines) {
		all = append(all, explained{canvas.HeavyLine, canvas.Ink{Role: scene.Lines}, what})
	}
	return all
}

// deadlyPipes says what the pipes and wires of a job are that can kill, in fewer and fewer words; nil for none.
func deadlyPipes(s desk.State) []string {
	one := ""
	for _, o := range s.Job.Obstructions {
		switch k := vehicles.KindOf(o.Kind); {
		case !k.DeadlyPipe(), k.Name == one:
		case one != "":
			return []string{"pipe or wire that can kill", "can kill", "kills"}
		default:
			one = k.Name
		}
	}
	if one == "" {
		return nil
	}
	return []string{one, one, strings.Fields(one)[0]}
}

// signs explains behind that what else of the picture has no name, in as many words as there is room for.
func signs(c *canvas.Canvas, col int, all []explained) {
	row := explainedIn(c)
	if row >= c.Height {
		return
	}
	room := roomIn(c, row)
	for words := range fewestWords {
		if last := words == fewestWords-1; col+wide(all, words)-between > room && !last {
			continue
		}
		for _, e := range all {
			if col+wide([]explained{e}, words)-between > room {
				continue
			}
			at := utf8.RuneCountInString(e.sign) + 1
			c.Put(col, row, e.sign, e.ink)
			c.Put(col+at, row, e.means[words], canvas.Ink{Role: scene.Floor})
			col += wide([]explained{e}, words)
		}
		return
	}
}

// In how many wordings a sign is explained, and how many columns are left between one and the next.
const (
	fewestWords = 3
	between     = 2
)

// wide is how many columns signs with what they mean take in one of the wordings, each with what is left behind it.
func wide(all []explained, words int) (columns int) {
	for _, e := range all {
		columns += utf8.RuneCountInString(e.sign) + 1 + utf8.RuneCountInString(e.means[words]) + between
	}
	return columns
}
