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
)

func sizingCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
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
			topic, files := subjectIn(args)
			_, err := answerJobs(files, shared, &f, s, func(r rules.Result) (string, error) { return tellSizes(&r, topic, s, &f) })
			return err
		},
	}
	f.add(c)
	return c
}

// subjectWords are the subjects that may be named: "electrics, fuel or saw".
func subjectWords() string {
	var all []string
	for _, t := range sizing.Topics() {
		all = append(all, string(t))
	}
	last := len(all) - 1
	if last == 0 {
		return all[0]
	}
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
		return fmt.Errorf("sizing needs a job file, or - for standard input")
	case len(files) == 0:
		return fmt.Errorf("sizing needs a job file behind %s, or - for standard input", args[0])
	case len(files) > 1 && len(files) == len(args) && !isFile(files[0]):
		return fmt.Errorf("%q is no subject: say %s, or a job file", files[0], subjectWords())
	}
	return nil
}

func subjectThenJobs(c *cobra.Command, args []string, toComplete string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		var all []string
		for _, t := range sizing.Topics() {
			all = append(all, string(t))
		}
		return all, cobra.ShellCompDirectiveDefault
	}
	return jobFiles(c, args, toComplete)
}

// tellSizes says what is reckoned of a judged job.
func tellSizes(r *rules.Result, topic sizing.Topic, s streams, f *answerFlags) (string, error) {
	all := sizing.Of(r)
	if topic != "" {
		one, _ := sizing.About(all, topic)
		all = []sizing.Subject{one}
	}
	if f.json {
		data, err := sizing.JSON(all)
		return string(data) + "\n", err
	}
	p := f.paperFor(s)
	p.line("%s: sizes. No verdict rests on them.", r.Job.Ref)
	for _, subject := range all {
		p.sizes(subject)
	}
	return p.String(), nil
}

// sizes writes a subject: what is reckoned, what it comes to, and what must be said of it. Into a pipe each row says its subject.
func (p *paper) sizes(subject sizing.Subject) {
	g := grid{first: 1, last: 2}
	if p.width > 0 {
		p.blank()
		p.line("%s", subject.Title)
	} else {
		g.first, g.last = 2, 3
	}
	for _, row := range subject.Rows {
		cells := []string{row.Label, words.Sized(row, desk.Millimetres), strings.Join(words.SizedNotes(row), " ")}
		if p.width == 0 {
			cells = append([]string{string(subject.Topic)}, cells...)
		}
		g.rows = append(g.rows, cells)
	}
	p.grid(g)
}
