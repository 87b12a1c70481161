package desk

import (
	"errors"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Swapped says whether a fault is that left and right of the matching points were swapped on one side.
func Swapped(f vehicles.Fault) bool { return errors.Is(f.Err, survey.ErrSwapped) }

// OnePlace says whether a fault is that the matching points in the fit are all at one place.
func OnePlace(f vehicles.Fault) bool { return errors.Is(f.Err, survey.ErrOnePlace) }

// Misfit says whether a fault is that the matching points do not fit each other. That is no reason to refuse a reading: the
// job can't be judged till it is put right, but it is what a fitter must see.
func Misfit(f vehicles.Fault) bool { return Swapped(f) || OnePlace(f) }
