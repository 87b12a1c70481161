package survey

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// Longest is the longest length a job may hold, mm either way.
const Longest = 20000

// NoLonger says so.
var NoLonger = fmt.Sprintf("no length may be more than %d mm", Longest)

// The forms of a reading behind its start. A number is digits, with or without a point and digits behind it; so
// "303/4in" is 303 quarters of an inch and "30 3/4in" thirty and three quarters.
var (
	metricForm   = form(`^(-?)[ \t]*(\d+(?:\.\d+)?)[ \t]*(mm|cm|m|)$`)
	imperialForm = form(`^(?:(\d+)[ \t]*')?[ \t]*(?:(?:(\d+)[ \t]+)?(\d+)[ \t]*/[ \t]*(\d+)|(\d+(?:\.\d+)?))?[ \t]*(?:in|")$`)
	powerOfUnit  = map[string]string{"": "", "mm": "", "cm": "e1", "m": "e3"}
)

// form is a pattern, made when a reading is first held to it: a program that reads none starts sooner.
func form(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

// Parse reads what a job file's string says the tape said: "652", "65.2cm", "2'6 1/2\"", "L 240", "+84".
//
// L and R are accepted along Y only. Text is kept to the letter. The error quotes the text, says what is wrong
// with it and what would be accepted; it names no file.
func Parse(text string, axis Axis) (Reading, error) {
	r, fault := parse(text, axis)
	if fault != "" {
		return Reading{}, unreadable(text, fault, axis)
	}
	return r, nil
}

// FromNumber is the reading of a bare TOML number of mm. Text is what a file would hold: integers without a
// point, floats in their shortest form with at least one decimal. TOML knows nan and inf; Validate refuses them.
func FromNumber(mm float64, integer bool) Reading {
	mm += 0 // a negative zero becomes a plain one
	text := Exact(mm)
	switch {
	case math.IsNaN(mm) || math.IsInf(mm, 0):
		text = strings.ToLower(text)
	case !integer && !strings.Contains(text, "."):
		text += ".0"
	}
	return Reading{Text: text, Number: true, Start: Datum, Length: mm}
}

// Validate returns an error when the length is not a number or is more than Longest mm. What Parse and Typed return
// has been checked.
func (r Reading) Validate() error {
	if fault := r.fault(); fault != "" {
		return fmt.Errorf("%s: %s", r.Text, fault)
	}
	return nil
}

// String is the reading as it was written.
func (r Reading) String() string { return r.Text }

func (r Reading) fault() string {
	switch {
	case math.IsNaN(r.Length):
		return "not a length"
	case math.Abs(r.Length) > Longest:
		return NoLonger
	}
	return ""
}

// parse returns the reading, or what is wrong with the text.
func parse(text string, axis Axis) (r Reading, fault string) {
	r.Text = text
	body := strings.Trim(text, " \t")
	r.Start, body = cutStart(body)
	if axis == X && (r.Start == FromLeft || r.Start == FromRight) {
		return r, "L and R count across, from the side edges; this one counts along the van"
	}
	mm, err := length(body, r.Start)
	if err != nil {
		return r, whatIsWrong(strings.Trim(text, " \t"))
	}
	r.Length = mm
	return r, r.fault()
}

// cutStart splits off L, R or +, and the blanks behind it.
func cutStart(body string) (Start, string) {
	if body == "" {
		return Datum, body
	}
	rest := strings.TrimLeft(body[1:], " \t")
	switch body[0] {
	case 'L':
		return FromLeft, rest
	case 'R':
		return FromRight, rest
	case '+':
		return On, rest
	}
	return Datum, body
}

var errForm = errors.New("neither metric nor imperial")

// length returns the mm of a length without its start.
func length(body string, start Start) (float64, error) {
	if m := metricForm().FindStringSubmatch(body); m != nil {
		if m[1] != "" && start != Datum {
			return 0, errForm
		}
		// The power goes into the text, so that 1.005m is 1005 and not 1004.9999999999999.
		mm, err := strconv.ParseFloat(m[1]+m[2]+powerOfUnit[m[3]], 64)
		if errors.Is(err, strconv.ErrRange) {
			err = nil // infinite: too long, which is said better later
		}
		return mm + 0, err
	}
	if m := imperialForm().FindStringSubmatch(body); m != nil {
		return inches(m[1], m[2]+m[5], m[3], m[4])
	}
	return 0, errForm
}

// inches returns the mm of feet, inches and n/d of an inch, each "" when it is not there. Inch is
// 127/5, which keeps a division by d alone.
func inches(feet, whole, n, d string) (float64, error) {
	if feet+whole+n == "" {
		return 0, errForm
	}
	f, i, top, bottom := number(feet, 0), number(whole, 0), number(n, 0), number(d, 1)
	if bottom == 0 {
		return 0, errForm
	}
	return ((12*f+i)*bottom + top) * 127 / (5 * bottom), nil
}

// number returns the value of digits the form has let through, or missing for none.
func number(digits string, missing float64) float64 {
	if digits == "" {
		return missing
	}
	v, _ := strconv.ParseFloat(digits, 64) // out of range gives infinity, and that is too long a reading
	return v
}
