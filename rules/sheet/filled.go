package sheet

// Filled are parts below each other whose pictures are as high as the page leaves them: each makes itself with pictures no higher than so many
// mm. As many of them stand on a page as do with the least; where another page follows, they fill theirs.
type Filled []func(most float64) Part

// How high the pictures of a part that fills its page are at least and at most, mm.
const leastHigh, mostHigh = 30.0, 46.0

func (all Filled) lay(f *flow) {
	for len(all) > 0 {
		if first := f.measured(all[0](leastHigh), f.wide); first < f.full() {
			f.need(first)
		}
		n := all.onPage(f)
		high := leastHigh
		if n < len(all) && !f.endless {
			high = all[:n].highest(f)
		}
		all[:n].at(high).lay(f)
		if all = all[n:]; len(all) > 0 {
			f.y += gap
		}
	}
}

// at are the parts with pictures so high.
func (all Filled) at(most float64) (parts Parts) {
	for _, part := range all {
		parts = append(parts, part(most))
	}
	return parts
}

// onPage is how many of them this page holds, at least one.
func (all Filled) onPage(f *flow) int {
	n := 1
	for n < len(all) && f.holds(all[:n+1].at(leastHigh)) {
		n++
	}
	return n
}

// highest is how high their pictures may be on this page.
func (all Filled) highest(f *flow) float64 {
	high := leastHigh
	for try := leastHigh; try <= mostHigh; try++ {
		if f.holds(all.at(try)) {
			high = try
		}
	}
	return high
}

// holds tells whether the rest of this page holds a part.
func (f *flow) holds(p Part) bool { return f.y+f.measured(p, f.wide) <= f.end() }
