package sparing

import "strings"

// dress is what a look comes to: its colours as parameters, and what else is on. Only one that is plainly so is changed by parts.
type dress struct {
	ink, ground string
	on          uint8 // of styles
	plainly     bool
}

// styles are what else a cell may wear, with what puts it on and takes it off. Source: ECMA-48, 8.3.117 (select graphic rendition).
var styles = [...]struct{ on, off string }{{"1", "22"}, {"2", "22"}, {"3", "23"}, {"4", "24"}, {"7", "27"}}

// dressOf is what a row of sequences comes to that begins from nothing.
func dressOf(sequences string) dress {
	d := dress{plainly: true}
	for sequence := range strings.SplitSeq(strings.TrimSuffix(sequences, "m"), "m") {
		d.put(strings.Split(strings.TrimPrefix(sequence, "\x1b["), ";"))
	}
	return d
}

// put puts parameters on.
func (d *dress) put(parameters []string) {
	for i := 0; i < len(parameters); i++ {
		p := parameters[i]
		switch {
		case p == "0" || p == "":
			*d = dress{plainly: d.plainly}
		case p == "38" || p == "48":
			long := 0
			if i+1 < len(parameters) {
				long = map[string]int{"5": 3, "2": 5}[parameters[i+1]]
			}
			if long == 0 || i+long > len(parameters) {
				d.plainly = false
				return
			}
			d.colour(p == "48", strings.Join(parameters[i:i+long], ";"))
			i += long - 1
		case len(p) == 2 && (p[0] == '3' || p[0] == '9') && p[1] <= '7':
			d.colour(false, p)
		case len(p) == 2 && p[0] == '4' && p[1] <= '7', len(p) == 3 && p[:2] == "10" && p[2] <= '7':
			d.colour(true, p)
		default:
			d.style(p)
		}
	}
}

func (d *dress) colour(ground bool, parameters string) {
	if ground {
		d.ground = parameters
	} else {
		d.ink = parameters
	}
}

func (d *dress) style(parameter string) {
	for i, s := range styles {
		if s.on == parameter {
			d.on |= 1 << i
			return
		}
	}
	d.plainly = false
}

// seenOnBlanks are the styles that a blank shows: underlined, and turned over.
const seenOnBlanks = 1<<3 | 1<<4

// ofBlank tells whether a blank shows no more of a dress than its ground.
func (d *dress) ofBlank() bool { return d.plainly && d.on&seenOnBlanks == 0 }

// onlyGround is the look that has a dress's ground, and nothing else.
func (d *dress) onlyGround() string {
	if d.ground == "" {
		return plain
	}
	return "\x1b[0;" + d.ground + "m"
}

// manyColours tells whether a dress has one of 256 colours or more: terminals that show it know how each part is taken off.
func (d *dress) manyColours() bool {
	return strings.HasPrefix(d.ink, "38;") || strings.HasPrefix(d.ground, "48;")
}

// wear appends what makes one dress of another, whose look is whole: by what differs where that is shorter.
func wear(out []byte, a, b *dress, whole string) []byte {
	if a.plainly && *a == *b {
		return out
	}
	if !a.plainly || !b.plainly || !(a.manyColours() || b.manyColours()) {
		return append(out, whole...)
	}
	at := len(out)
	if out = append(parts(append(out, "\x1b["...), a, b), 'm'); len(out)-at > len(whole) {
		return append(out[:at], whole...)
	}
	return out
}

// parts appends the parameters that make one dress of another.
func parts(out []byte, a, b *dress) []byte {
	from := len(out)
	put := func(parameter string) {
		if len(out) > from {
			out = append(out, ';')
		}
		out = append(out, parameter...)
	}
	on := a.on
	for i, s := range styles {
		if bit := uint8(1) << i; on&bit != 0 && b.on&bit == 0 {
			put(s.off)
			if on &^= bit; s.off == styles[0].off {
				on &^= 3 // which takes off both
			}
		}
	}
	for i, s := range styles {
		if bit := uint8(1) << i; on&bit == 0 && b.on&bit != 0 {
			put(s.on)
		}
	}
	colour := func(old, new, none string) {
		if new == "" {
			new = none
		}
		if old != new && !(old == "" && new == none) {
			put(new)
		}
	}
	colour(a.ink, b.ink, "39")
	colour(a.ground, b.ground, "49")
	return out
}
