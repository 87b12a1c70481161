package geometry_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// longText is from how many letters on a text has one home: it is a sentence or much of one, and one that was mended in one file
// alone would contradict the other.
const longText = 25

// twoHomes are the long texts that may stand in two files, with why.
var twoHomes = map[string]string{
	`json:"as_it_is,omitempty"`: "the key of a field in two answers: a tag can be no constant",
}

// textsOf are the texts of a file of Go of so many letters or more, without the paths that it imports.
func textsOf(path string, least int) (texts []string, err error) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if _, imports := n.(*ast.ImportSpec); imports {
			return false
		}
		if literal, is := n.(*ast.BasicLit); is {
			if text := textOf(literal); utf8.RuneCountInString(text) >= least {
				texts = append(texts, text)
			}
		}
		return true
	})
	return texts, nil
}

// textOf is what a literal of a text says; "" of any other expression.
func textOf(e ast.Expr) string {
	literal, is := e.(*ast.BasicLit)
	if !is || literal.Kind != token.STRING {
		return ""
	}
	text, _ := strconv.Unquote(literal.Value)
	return text
}

// eachSource goes through the files of Go of the whole program, tests apart.
func eachSource(t *testing.T, look func(path string) error) {
	for _, tier := range tiers {
		require.NoError(t, filepath.WalkDir(filepath.Join("..", tier), func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			return look(path)
		}))
	}
}

func TestALongTextStandsInOneFile(t *testing.T) {
	files := map[string][]string{}
	eachSource(t, func(path string) error {
		texts, err := textsOf(path, longText)
		for _, text := range texts {
			if !slices.Contains(files[text], path) {
				files[text] = append(files[text], path)
			}
		}
		return err
	})
	require.Greater(t, len(files), 1000, "the texts of the whole program")
	for text, in := range files {
		if twoHomes[text] == "" {
			assert.Len(t, in, 1, "%q has two homes", text)
		}
	}
	for text, why := range twoHomes {
		assert.Greater(t, len(files[text]), 1, "%q needs no leave any more: %s", text, why)
	}
}

// What makes two texts one sentence that was written twice, in letters in a row: so many anywhere in them, whatever stands before and
// behind, or, fewer, all of both.
const (
	stretch = 30
	whole   = 12
)

// stock are phrases of the trade or the language that stand in sentences which say different things, with why.
var stock = map[string]string{
	"where the heater's instructions allow it":             "an exception: from what, the sentence says",
	"of the sort that the heater's instructions":           "what is bought or used; what of it is told differs",
	"the heater's instructions, and enter it":              "where a figure is looked up; which one and where it goes differs",
	"the heater's own instructions and the":                "they and somebody else's",
	"there keeps every rule. The nearest miss":             "the command and the screen each tell it of what they sought",
	"abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz": "the alphabet",
}

// names are short texts, whole, that may stand in several files, with why.
var names = map[string]string{
	"not confirmed":         aState,
	"not looked for":        aState,
	"nobody has said":       aState,
	"the one before":        "a key's effect, on other things",
	"above the floor":       aPlace,
	"below the floor":       aPlace,
	"outlet up from level":  aPlace,
	"matching point":        aThing,
	"matching points":       aThing,
	"side edges below":      aThing,
	"customer's page":       aThing,
	"running current":       aThing,
	"strokes a second":      aThing,
	"all the cautions":      aThing,
	"made otherwise":        "the heading of a list, by the command and on the sheet",
	"can't be worked out":   asked,
	"nothing to undo":       asked,
	"nothing was changed":   "the end of a sentence on what failed",
	"is there already":      "the end of a sentence on a file",
	"leaves the field":      "a key's effect, on other forms",
	"to spare at the least": "behind a figure, by the command and on the screen",
	"stands for a new line": "a note on a text of several lines",
	"nothing behind it":     "a fault of the call, of two commands",
}

const (
	aState = "how a thing stands, in a heading, a list or a choice"
	aPlace = "where a thing is"
	aThing = "what a thing is called"
	asked  = "the kit of the tests waits for what the screen says"
)

// verb is what a format puts a value in for.
var verb = regexp.MustCompile(`%[-+# 0-9.*\[\]]*[a-zA-Z%]`)

// said are the letters of a text, small, and where among them its words begin: what it says whatever parts its words and whatever is
// put in.
func said(text string) (letters string, words []int) {
	var b strings.Builder
	within := false
	for _, r := range strings.ToLower(verb.ReplaceAllString(text, " ")) {
		if !unicode.IsLetter(r) {
			within = within && r == '\''
			continue
		}
		if !within {
			words = append(words, b.Len())
		}
		b.WriteRune(r)
		within = true
	}
	return b.String(), words
}

// stretches are all stretches of a text, each from the beginning of a word on, and the whole of a short one.
func stretches(text string) (list []string) {
	letters, words := said(text)
	if len(letters) >= whole && len(words) > 1 && strings.Contains(strings.TrimSpace(text), " ") { // a key has no blank
		list = append(list, " "+letters)
	}
	for _, at := range words {
		if at+stretch <= len(letters) {
			list = append(list, letters[at:at+stretch])
		}
	}
	return list
}

// stockOf is the phrase that a stretch is of, "" for none.
func stockOf(s string) string {
	for name := range names {
		if letters, _ := said(name); s == " "+letters {
			return name
		}
	}
	for phrase := range stock {
		if letters, _ := said(phrase); strings.Contains(letters, strings.TrimSpace(s)) {
			return phrase
		}
	}
	return ""
}

// sharedBy are the stretches that stand in two files or more, each with those texts of it that are the first of their files.
func sharedBy(files map[string][]string) map[string]map[string]string {
	homes := map[string]map[string]string{}
	for path, texts := range files {
		for _, text := range texts {
			for _, s := range stretches(text) {
				if homes[s] == nil {
					homes[s] = map[string]string{}
				}
				homes[s][path] = text
			}
		}
	}
	maps.DeleteFunc(homes, func(_ string, in map[string]string) bool { return len(in) < 2 })
	return homes
}

func TestASentenceStandsInOneFile(t *testing.T) {
	files := map[string][]string{}
	eachSource(t, func(path string) (err error) {
		files[path], err = textsOf(path, whole)
		return err
	})
	met := map[string]bool{}
	for s, in := range sharedBy(files) {
		phrase := stockOf(s)
		met[phrase] = true
		if phrase == "" {
			t.Errorf("%q stands in two files: give it one home\n%v", s, in)
		}
	}
	for _, leave := range []map[string]string{stock, names} {
		for phrase, why := range leave {
			assert.True(t, met[phrase], "%q needs no leave any more: %s", phrase, why)
		}
	}
}

func TestASentenceIsKnownInAnyDress(t *testing.T) {
	const sentence = "It would end %s along leg %d, which is %s long: start it"
	for _, again := range []string{
		"it would end along leg, which is long: start it", "the muffler: it would end along leg %d which is %.1f long, start it earlier", "It Would End: Along\nLeg which Is long! Start it",
	} {
		assert.NotEmpty(t, sharedBy(map[string][]string{"a": {sentence}, "b": {again}}), again)
	}
	for _, other := range []string{"it would end along the leg, which is long", "along leg %d, which is %s short", "a leg"} {
		assert.Empty(t, sharedBy(map[string][]string{"a": {sentence}, "b": {other}}), other)
	}
	assert.Empty(t, sharedBy(map[string][]string{"a": {sentence, sentence}}), "in one file it may stand twice")
	assert.NotEmpty(t, sharedBy(map[string][]string{"a": {"; not judged, not measured"}, "b": {"Not judged: not measured."}}), "a short one that says the same")
	assert.Empty(t, sharedBy(map[string][]string{"a": {"; not judged, not measured"}, "b": {"Not judged: not measured yet."}}))
	assert.NotEmpty(t, sharedBy(map[string][]string{"a": {"the tapes agree"}, "b": {" The tapes agree: %s"}}), "thirteen letters")
	assert.Empty(t, sharedBy(map[string][]string{"a": {"service-agreed"}, "b": {"service-agreed"}}), "a key")
}
