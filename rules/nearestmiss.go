package rules

import "runtime"

// missDemands are what is asked where nothing keeps those: of one distances and a fall, of the other distances alone.
var missDemands = [...]demand{{aims: ToMissLeast, uncut: true}, {aims: ToMissLeast, uncut: true, rising: true}}

// mostMisses is the same of one for the nearest miss.
const mostMisses = 2

// nearestMiss is the run that falls short by least, where none keeps every rule: of one that was tried, of ways that keep their distances
// but no other limit, or else of such that keep as much of their distances as can be kept. What is near the run's ends is spared: those
// stay where they are.
func (s *seeker) nearestMiss(best *attempt) *attempt {
	var found [len(missDemands)]*attempt
	share(len(missDemands), runtime.GOMAXPROCS(0), func(i int) { found[i] = s.among(missDemands[i]) })
	for _, a := range found {
		if a.better(best) {
			best = a
		}
	}
	if best != nil || s.ctx.Err() != nil {
		return best
	}
	low, high := 0.0, mostSqueezed
	for less := high; high-low > squeezedWithin && s.ctx.Err() == nil; less = (low + high) / 2 {
		a := s.among(demand{aims: ToMissLeast, less: less, uncut: true, rising: true})
		switch {
		case a != nil:
			high = less
		case less == high: // not even so
			return best
		default:
			low = less
		}
		if a.better(best) {
			best = a
		}
	}
	return best
}

// How much less is asked of distances at the most, mm, and how closely that is sought.
const (
	mostSqueezed   = 400.0
	squeezedWithin = 5.0
)

// roughMiss is a run that falls short little, where its stub is blocked: the first that is come by in the order of nearestMiss.
func (s *seeker) roughMiss() *attempt {
	for _, d := range missDemands {
		if a := s.among(d); a != nil || s.ctx.Err() != nil {
			return a
		}
	}
	return s.nearestMiss(nil)
}
