package cutlist

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"strconv"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles/harmless"
)

type listJSON struct {
	Pieces []pieceJSON `json:"pieces"`
	Stock  []stockJSON `json:"stock"`
	Parts  []partJSON  `json:"parts"`
	Absent []string    `json:"absent"`
	Source string      `json:"source"`
}

type pieceJSON struct {
	Run       string    `json:"run"`
	Of        string    `json:"of"`
	Across    float64   `json:"across"`
	From      string    `json:"from"`
	To        string    `json:"to"`
	Developed float64   `json:"developed"`
	Cut       float64   `json:"cut"`
	Bits      []bitJSON `json:"bits"`
	Note      string    `json:"note,omitempty"`
}

type bitJSON struct {
	Length float64 `json:"length"`
	Turn   float64 `json:"turn,omitempty"`
	Radius float64 `json:"radius,omitempty"`
}

type stockJSON struct {
	Of      string    `json:"of"`
	Length  float64   `json:"length"`
	Needed  int       `json:"needed"`
	Left    []float64 `json:"left"`
	TooLong []float64 `json:"too_long"`
	Kit     int       `json:"kit"`
	Lacks   int       `json:"lacks"`
}

type partJSON struct {
	Run   string  `json:"run"`
	Of    string  `json:"of"`
	Count int     `json:"count"`
	Kit   int     `json:"kit"`
	Lacks int     `json:"lacks"`
	Each  float64 `json:"each,omitempty"`
	Total float64 `json:"total,omitempty"`
}

// tenth is a figure to 0.1, in which pipe is not cut finer.
func tenth(v float64) float64 { return math.Round(v*10) / 10 }

func tenths(list []float64) []float64 {
	out := make([]float64, len(list))
	for i, v := range list {
		out[i] = tenth(v)
	}
	return out
}

// JSON writes the list as `cutlist --json` prints it: lengths to 0.1 mm, turns to 0.1 degrees.
func (l *List) JSON() ([]byte, error) {
	out := listJSON{[]pieceJSON{}, []stockJSON{}, []partJSON{}, append([]string{}, l.Absent...), l.Source}
	for _, p := range l.Pieces {
		piece := pieceJSON{p.Run.String(), string(p.Of), p.Across, p.From, p.To, tenth(p.Developed), tenth(p.Cut), []bitJSON{}, p.Remark()}
		for _, b := range p.Bits {
			piece.Bits = append(piece.Bits, bitJSON{tenth(b.Length), tenth(b.Turn), b.Radius})
		}
		out.Pieces = append(out.Pieces, piece)
	}
	for _, s := range l.Stock {
		out.Stock = append(out.Stock, stockJSON{string(s.Of), s.Length, s.Needed, tenths(s.Left), tenths(s.TooLong), s.Holds, s.Lacks()})
	}
	for _, p := range l.Parts {
		out.Parts = append(out.Parts, partJSON{p.Run.String(), string(p.Of), p.Count, p.Holds, p.Lacks(), tenth(p.Each), tenth(p.Total())})
	}
	return json.Marshal(out)
}

// Columns are the head of the list as comma-separated values: of a row what does not hold for its thing is empty. A piece of pipe has what
// it is cut to and is developed to; a stock its length; both and a part how many are wanted, what the usual kit holds, and what it lacks; a joint what
// its hose is cut to.
var Columns = []string{"job", "run", "what", "from", "to", "count", "cut", "developed", "kit", "lacks"}

// CSV writes the list's rows behind the name of its job (RFC 4180), without a head.
func (l *List) CSV(to io.Writer, job string) error {
	job = harmless.Cell(job)
	w := csv.NewWriter(to)
	var rows [][]string
	for _, p := range l.Pieces {
		rows = append(rows, []string{job, p.Run.String(), string(p.Of), p.From, p.To, "1", survey.Figure(p.Cut), survey.Figure(p.Developed), "", ""})
	}
	for _, s := range l.Stock {
		if s.Needed > 0 {
			rows = append(rows, []string{job, "", string(s.Of) + ", length of " + survey.Figure(s.Length), "", "", strconv.Itoa(s.Needed), "", "", strconv.Itoa(s.Holds), strconv.Itoa(s.LacksLengths())})
		}
		for _, cut := range s.TooLong {
			rows = append(rows, []string{job, "", string(s.Of) + ", longer than a length", "", "", "1", survey.Figure(cut), "", "0", "1"})
		}
	}
	for _, p := range l.Parts {
		cut := ""
		if p.Each > 0 {
			cut = survey.Figure(p.Each)
		}
		rows = append(rows, []string{job, p.Run.String(), string(p.Of), "", "", strconv.Itoa(p.Count), cut, "", strconv.Itoa(p.Holds), strconv.Itoa(p.Lacks())})
	}
	for _, text := range l.Absent {
		rows = append(rows, []string{job, "", "not counted: " + text, "", "", "0", "", "", "", ""})
	}
	return w.WriteAll(rows)
}
