package vehicles

import (
	"embed"
	"fmt"
	"path"
	"strings"
	"sync"
)

//go:embed library/*.toml
var libraryFiles embed.FS

// sampleFile is the one file of the library that is no body shape but the sample to try things on.
const sampleFile = "demo"

// Sample is a van of the library: a body shape of the program's own invention, not that of any van.
type Sample struct{ Name, Title string }

// library are the vans of the library by name, in the order of their names.
var library = sync.OnceValue(func() (all []Sample) {
	files, err := libraryFiles.ReadDir("library")
	if err != nil {
		panic(err) // the folder is part of the program, and a test reads it
	}
	for _, file := range files {
		if name := strings.TrimSuffix(file.Name(), ".toml"); name != sampleFile {
			all = append(all, Sample{Name: name, Title: mustReadLibrary(name).Vehicle})
		}
	}
	return all
})

// Library returns the vans that a job can start from, by name. Nothing of them was measured on any van.
func Library() []Sample { return library() }

// FromLibrary returns a new job from a van of the library, nothing of it confirmed; ok is false for an unknown name.
func FromLibrary(name string) (job Job, ok bool) {
	for _, s := range Library() {
		if s.Name == name {
			job = mustReadLibrary(name).WithFloorGuessed().withTapesAsked()
			job.RunChecks = InFull
			return job, true
		}
	}
	return Job{}, false
}

func mustReadLibrary(name string) Job {
	file := path.Join("library", name+".toml")
	data, err := libraryFiles.ReadFile(file)
	var job Job
	if err == nil {
		job, err = ParseJob(data, file)
	}
	if err != nil {
		panic(err) // as above
	}
	return job
}

// CarryOver returns a new job for a van that was surveyed before: its floor, where the tapes hook, the tape, the
// obstructions, openings and wheels as they were, none of them confirmed on this van. What was planned, put in, looked
// for or tied together belongs to the earlier van and stays behind, as do rules of that job's own heater.
func CarryOver(job Job, ref string) Job {
	fresh := NewJob(ref)
	fresh.Vehicle = job.Vehicle
	fresh.Notes = fmt.Sprintf("Carried over from %s: measure the floor and the hooks again, and confirm or correct each item.", job.Ref)
	fresh.Floor, fresh.Datum, fresh.Tape, fresh.Bow = job.Floor, job.Datum, job.Tape, job.Bow
	fresh.Wheels = job.Wheels
	for _, o := range job.Obstructions {
		o.Measured = false
		fresh.Obstructions = append(fresh.Obstructions, o)
	}
	for _, o := range job.Openings {
		o.Unconfirmed = true
		fresh.Openings = append(fresh.Openings, o)
	}
	return fresh
}
