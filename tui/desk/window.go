package desk

// InSight is the first of n rows seen in h, where the rows from one to another, both counted, are those picked: it stays what it was while
// they are seen, so that no row goes from under a finger. A step beyond the edge takes the list as far; what is farther off comes to its middle.
func InSight(first, from, to, n, h int) int {
	first = max(0, min(first, n-(h+1)/2)) // a list that grew shows more of its end; less than half is left free
	from = max(from, to-h+1)
	switch {
	case from >= first && to < first+h:
		return first
	case from < first && from >= first-step:
		return from
	case to >= first+h && to < first+h+step:
		return to - h + 1
	}
	return Filled(to-h/2, n, h)
}

// step is how many rows a key goes on at most from one to the next: a heading may stand between.
const step = 2

// Filled is the first of n rows seen in h with no row left free that one could stand in.
func Filled(first, n, h int) int { return max(0, min(first, n-h)) }
