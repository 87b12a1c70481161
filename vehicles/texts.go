package vehicles

import "unicode/utf8"

// LongestText is how many characters any one text of a job may have: ten pages of notes, ten times what a field takes. With such texts a key is
// answered as ever (TestAKeyBesideTheLongestTexts).
const LongestText = 20000

// texts reports the texts below a key that are longer than they may be. What stands under [extra] is others' and is shown to nobody.
func (r *reader) texts(path string, value any) {
	switch v := value.(type) {
	case string:
		if n := utf8.RuneCountInString(v); n > LongestText {
			r.fault(path, " is a text of %d characters, at most %d are taken: shorten it", n, LongestText)
		}
	case map[string]any:
		for _, key := range sortedKeys(v) {
			if path != "" || key != "extra" {
				r.texts(joinKey(path, key), v[key])
			}
		}
	case []any:
		for i, one := range v {
			r.texts(joinIndex(path, i), one)
		}
	case []map[string]any:
		for i, one := range v {
			r.texts(joinIndex(path, i), one)
		}
	}
}
