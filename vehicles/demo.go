package vehicles

import (
	_ "embed" // the sample job
	"sync"
)

//go:embed library/demo.toml
var demoFile []byte

var demo = sync.OnceValue(func() Job {
	job, err := ParseJob(demoFile, "library/demo.toml")
	if err != nil {
		panic(err) // the file is part of the program, and a test reads it
	}
	return job
})

// Demo returns a sample job, the long van of a travelling tool library. All its values are invented.
func Demo() Job { return demo() }
