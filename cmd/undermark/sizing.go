package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

func sizingCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var table bool
	c := &cobra.Command{
		Use:   "sizing [SUBJECT] JOB...",
		Short: "Reckon the sizes behind a job: floor, fuel, electrics, heat, duct, saw",
		Long: "How thick the floor is for collar, screws and sealant; how long the tank lasts and how the line is primed; cable, fuse and\n" +
			"battery; the heat the body loses; what the duct takes from the fan; how fast the saw turns. What nobody has said is\n" +
			"named, and so is what was taken in its place. Nothing of it is a verdict. SUBJECT is " + subjectWords() + "; without one, all.",
		Example: "  undermark sizing van.toml            all of it\n" +
			"  undermark sizing electrics van.toml  cable, fuse and battery alone",
		Args: func(_ *cobra.Command, args []string) error {
			_, files := subjectIn(args)
			return someSizing(files, args)
		},
		ValidArgsFunction: subjectThenJobs,
		RunE: func(_ *cobra.Command, args []string) error {
			if f.json && table {
				return errTwoForms
			}
			topic, files := subjectIn(args)
			head := true
			_, err := answerJobs(files, shared, &f, s, func(r rules.Result) (string, error) {
				if !table {
					return tellSizes(&r, topic, s, &f)
				}
				var text strings.Builder
				err := sizing.CSV(&text, r.Job.Ref, sizesOf(&r, topic), head)
				head = false
				return text.String(), err
			})
			return err
		},
	}
	f.add(c)
	forSpreadsheet(c, &table, "a result")
	return c
}

// sizesOf is what is reckoned of a judged job, of one subject where one is named.
func sizesOf(r *rules.Result, topic sizing.Topic) []sizing.Subject {
	all := sizing.Of(r)
	if one, ok := sizing.About(all, topic); ok {
		return []sizing.Subject{one}
	}
	return all
}

// subjects are the subjects that may be named.
func subjects() (all []string) {
	for _, t := range sizing.Topics() {
		all = append(all, string(t))
	}
	return all
}

// subjectWords are the subjects in a sentence: "electrics, fuel or saw".
func subjectWords() string {
	all := subjects()
	last := len(all) - 1
	return strings.Join(all[:last], ", ") + " or " + all[last]
}

// subjectIn parts the subject, "" for all, from the files.
func subjectIn(args []string) (topic sizing.Topic, files []string) {
	if len(args) > 0 && slices.Contains(sizing.Topics(), sizing.Topic(args[0])) {
		return sizing.Topic(args[0]), args[1:]
	}
	return "", args
}

func someSizing(files, args []string) error {
	switch {
	case len(args) == 0:
		return noFile("sizing")
	case len(files) == 0:
		return fileBehind("sizing", args[0])
	case len(files) > 1 && len(files) == len(args) && files[0] != "-" && !isFile(files[0]):
		if near := vehicles.Nearest(files[0], subjects()); near != "" {
			return fmt.Errorf("%q is no subject: did you mean %s?", files[0], near)
		}
		return fmt.Errorf("%q is no subject: say %s, or a job file", files[0], subjectWords())
	}
	return nil
}

func subjectThenJobs(c *cobra.Command, args []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return subjects(), cobra.ShellCompDirectiveDefault
	}
	return jobFiles(c, args, toComplete)
}

// tellSizes says what is reckoned of a judged job.
func tellSizes(r *rules.Result, topic sizing.Topic, s streams, f *answerFlags) (string, error) {
	all := sizesOf(r, topic)
	if f.json {
		data, err := sizing.JSON(all)
		return string(data) + "\n", err
	}
	p := f.paperFor(s)
	p.line("%s: sizes. No verdict rests on them.", r.Job.Ref)
	brief := p.width > 0 && topic == ""
	for _, subject := range all {
		if p.width == 0 {
			p.sizesInRows(subject)
			continue
		}
		p.blank()
		p.line("%s", subject.Title)
		p.sizes(subject, brief)
	}
	if brief {
		p.blank()
		p.line("How each is reckoned, and who says so: undermark sizing SUBJECT, one of %s.", subjectWords())
	}
	return p.String(), nil
}

// sizesInRows writes a subject into a pipe: a line each result, with its subject, what it comes to, and all that is said of it.
func (p *paper) sizesInRows(subject sizing.Subject) {
	g := grid{first: 2, last: 3}
	for _, row := range subject.Rows {
		g.rows = append(g.rows, []string{string(subject.Topic), row.Label, words.Sized(row, desk.Millimetres), strings.Join(words.SizedNotes(row), " ")})
	}
	p.grid(g)
}

// sizes writes a subject for a terminal: in brief only what is missing or to be put right, and below what was taken.
func (p *paper) sizes(subject sizing.Subject, brief bool) {
	g := grid{first: 1, last: 2}
	var taken []string
	for _, row := range subject.Rows {
		cells := []string{row.Label, words.Sized(row, desk.Millimetres)}
		notes := words.SizedNotes(row)
		if brief {
			notes = words.SizedTrouble(row)
		}
		if len(notes) > 0 {
			cells = append(cells, strings.Join(notes, " "))
		}
		g.rows = append(g.rows, cells)
		for _, what := range row.Taken {
			if !slices.Contains(taken, what) {
				taken = append(taken, what)
			}
		}
	}
	p.grid(g)
	if brief && len(taken) > 0 {
		p.item(words.TakenAsNobodySaid + strings.Join(taken, "; ") + ".")
	}
}
