package canvas

import "slices"

// try is another order: some names before all others but so many, and of those seats on one side of what they are of.
type try struct {
	names []naming // the order that it begins with
	first []*part
	after int
	side  int // 1 for seats further down, -1 for seats further up, 0 for either
}

// mostAfter is how many names stay before one of a guide for which a place is sought, at the most: those of the ends, the cut's and what is worst in its way.
const mostAfter = 4

// tries appends to those that were tried what may go before other names.
func (o *order) tries(tried []try, names []naming) []try {
	put := func(t try) {
		t.names = names
		same := func(u try) bool { return u.after == t.after && u.side == t.side && slices.Equal(u.first, t.first) }
		if len(t.first) > 0 && !slices.ContainsFunc(tried, same) {
			tried = append(tried, t)
		}
	}
	put(try{first: o.lost})
	for after := range mostAfter + 1 {
		for _, side := range [2]int{1, -1} {
			for _, it := range o.placeless {
				put(try{first: []*part{it}, after: after, side: side})
			}
		}
	}
	for _, it := range o.far {
		put(try{first: []*part{it}})
	}
	return tried
}

// sooner are names with some of them before the others.
func (t *try) sooner() []naming {
	is := func(n naming) bool { return slices.Contains(t.first, n.it) }
	early := slices.DeleteFunc(slices.Clone(t.names), func(n naming) bool { return !is(n) })
	rest := slices.DeleteFunc(slices.Clone(t.names), is)
	after := min(t.after, len(rest))
	return slices.Concat(rest[:after], early, rest[after:])
}

// rulesOut tells whether a name so many rows further down than what it is of stands on the other side than is tried.
func (t *try) rulesOut(of *part, down int) bool {
	return t != nil && down*t.side < 0 && slices.Contains(t.first, of)
}
