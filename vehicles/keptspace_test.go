package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is kept free at an end, for every class, with and without a duct there, said and not said: what the job says holds; else a duct
// needs no more than 60 mm, and an end without one what the class asks for. The sides never change.
func TestWhatIsKeptFreeAtAnEnd(t *testing.T) {
	for _, class := range HeaterClasses() {
		plain, _ := HeaterClass(class)
		for n := range 16 {
			h := plain
			h.Duct = Ends{Front: n&1 != 0, Rear: n&2 != 0}
			want := plain.Space
			if h.Duct.Front {
				want.Front = min(want.Front, 60)
			}
			if h.Duct.Rear {
				want.Rear = min(want.Rear, 60)
			}
			if n&4 != 0 {
				h.Space.Front, h.Given, want.Front = 333, h.Given|HasFrontSpace, 333
			}
			if n&8 != 0 {
				h.Space.Rear, h.Given, want.Rear = 7, h.Given|HasRearSpace, 7
			}
			assert.Equal(t, want, h.Kept(), "%s, ducts %v, %b", class, h.Duct, n)
		}
	}
}
