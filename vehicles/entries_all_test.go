package vehicles

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// ofEachPoint is a list with an end of its own: it has one text for each point of its run.
const ofEachPoint = ".Taped"

// grown fills all of a value that has a place for it, each list with one entry, and calls back with each list by its path.
func grown(v reflect.Value, path string, each func(path string, list reflect.Value)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.CanSet() {
			return
		}
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		grown(v.Elem(), path, each)
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				grown(v.Field(i), path+"."+field.Name, each)
			}
		}
	case reflect.Slice:
		if !v.CanSet() {
			return
		}
		if v.Len() == 0 {
			v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		}
		grown(v.Index(0), path+"[]", each)
		each(path, v)
	}
}

// Whatever list a job has: one more of it is one more that counts. A list that comes new is met here.
func TestEachListOfAJobIsCounted(t *testing.T) {
	var job Job
	grown(reflect.ValueOf(&job).Elem(), "job", func(string, reflect.Value) {})
	lists := 0
	grown(reflect.ValueOf(&job).Elem(), "job", func(path string, list reflect.Value) {
		before, was := job.Entries(), reflect.ValueOf(list.Interface())
		list.Set(reflect.Append(list, list.Index(0)))
		more := job.Entries() - before
		list.Set(was)
		lists++
		if !strings.HasSuffix(path, ofEachPoint) {
			assert.Positive(t, more, "%s grows without an end", path)
		}
	})
	assert.Greater(t, lists, 40)
}
