package template

import (
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles/harmless"
)

// PDF returns both faces of a judged job's template as a file; standing is how the job stands. The error is ErrNoCut.
func PDF(r *rules.Result, paper Paper, standing string) ([]byte, error) {
	both, err := Of(r)
	if err != nil {
		return nil, err
	}
	words := Words{Job: harmless.Text(r.Job.Ref), Van: harmless.Text(r.Job.Vehicle), Date: harmless.Text(r.Job.Date), Standing: harmless.Text(standing)}
	file := vector.NewPDF(words.Job)
	file.TrueSize = true
	for i := range both {
		for _, page := range both[i].Pages(paper) {
			file.Page(paper.Wide, paper.High)
			page.Draw(file, words)
		}
	}
	return file.Bytes()
}
