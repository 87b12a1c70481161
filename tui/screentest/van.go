package screentest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// van is the sample of the job file's description.
const van = `format = 1
[job]
ref = "TL-07"
vehicle = "long-wheelbase panel van, travelling tool library"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
[datum]
hook_below = 150
hook_above = 60
left = 890
right = 890
[[obstruction]]
name = "rear crossmember"
kind = "crossmember"
x = [652, "+84"]
y = [-850, 850]
drop = [0, 95]
taped_at = 95
[[obstruction]]
name = "brake pipe, right"
kind = "brake line"
path = [[300, "R 410"], [1500, "R 410"], [2400, "R 300"]]
across = 8
drop = [20, 30]
[[obstruction]]
name = "spare wheel"
kind = "spare wheel"
centre = [420, 0]
across = 690
drop = [100, 300]
measured = false
[[opening]]
name = "sliding door"
kind = "door"
path = [[1900, -890], [3000, -890]]
drop = [-1500, -22]
[[fitting]]
name = "battery box"
x = [1900, 2300]
y = [300, 840]
rise = [0, 400]
[heater]
class = "2 kW"
[cut]
at = [1210, 240]
across = 127
[looked]
"fuel line" = true
`

// Van is a van with three obstructions, an opening and a fitting.
func Van(t testing.TB) vehicles.Job {
	job, err := vehicles.ParseJob([]byte(van), "van.toml")
	require.NoError(t, err)
	return job
}
