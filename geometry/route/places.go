package route

import "bench.example/undermark/geometry"

// inBox tells whether any of a disc is in the box.
func (s *search) inBox(at geometry.Point, radius float64) bool {
	return at.X+radius >= s.q.Min.X && at.X-radius <= s.q.Max.X && at.Y+radius >= s.q.Min.Y && at.Y-radius <= s.q.Max.Y
}

// How far from its ends a way that has bends may turn, in bend radii, and in how many directions.
var (
	placesAt = [...]float64{1, 2, 3.5}
	around   = 12
)

// places adds where a way may turn to leave its start or to come to its goal as it should.
func (s *search) places() {
	if s.q.Bend <= 0 {
		return
	}
	s.discs = append(s.discs, disc{at: s.q.From.Plan(), kind: belowStart})
	s.placesRound(disc{at: s.q.From.Plan(), kind: leaving}, placesAt[:])
	switch {
	case len(s.q.To) == 1:
		s.placesRound(disc{at: s.q.To[0].At, kind: coming}, placesAt[:])
	case s.q.TurnBefore:
		for i := range s.q.To {
			s.placesRound(disc{at: s.q.To[i].At, kind: coming, goal: i}, placesAt[:1])
		}
	}
}

// placesRound adds places of a kind round an end, so many bend radii from it: before a goal, those from which a leg may lead to it.
func (s *search) placesRound(end disc, far []float64) {
	middle := end.at
	for _, far := range far {
		for k := range around {
			out := geometry.Point{X: 1}.Turn(float64(k) * 360 / float64(around))
			end.at = middle.Add(out.Scale(far * s.q.Bend))
			if end.kind == coming && s.facesWrong(out.Scale(-1)) || !s.inBox(end.at, 0) {
				continue
			}
			if _, open := s.blocks(end.at, end.at, touching); open {
				s.discs = append(s.discs, end)
			}
		}
	}
}
