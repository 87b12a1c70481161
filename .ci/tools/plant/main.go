// Command plant plants faults in packages, one at a time, runs their tests and lists the faults that no test catches.
//
//	.ci/plant [-n 60] [-seed 1] [-jobs 2] [-since COMMIT] [-tests ./rules] [-slow 'Found|Layout'] geometry geometry/survey
//
// It changes no file of the tree: the go command reads the faulty one through its overlay. A survivor is a test that is
// missing, code that nobody needs, or a fault that changes nothing; the last kind goes into explained.txt, with why.
// What becomes of each fault, and by which test, is printed at once: a run may take an hour, and one that is ended early has said what it found.
package main

import (
	_ "embed"
	"flag"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"
)

//go:embed explained.txt
var explained string

var (
	count = flag.Int("n", 0, "how many faults to plant in each package, picked by the seed; 0 for all")
	seed  = flag.Uint64("seed", 1, "of the choice")
	jobs  = flag.Int("jobs", 2, "how many test runs at a time")
	tests = flag.String("tests", "", "packages whose tests are to catch the faults, besides the package's own")
	slow  = flag.String("slow", "", "tests that are run only for faults which the others let through: those that match this expression")
	root  = flag.String("root", "../..", "of the module, from where this runs")
	since = flag.String("since", "", "plant only in files that were changed since this commit")
	only  = flag.String("only", "", "plant only faults whose line in the list matches this expression")
	plan  = flag.Bool("list", false, "list the faults and plant none")
)

func main() {
	log.SetFlags(0)
	flag.Parse()
	known := explainedFaults()
	top, err := filepath.Abs(*root)
	must(err)
	for _, dir := range flag.Args() {
		p := planter{root: top, dir: dir, known: known}
		all, err := faultsOf(filepath.Join(top, dir), dir)
		must(err)
		p.current(all)
		wanted, changed := regexp.MustCompile(*only), changedSince(top, dir)
		all = slices.DeleteFunc(all, func(f fault) bool {
			return changed != nil && !slices.Contains(changed, f.name) || !wanted.MatchString(f.where()+" "+f.key())
		})
		if !*plan {
			check, err := newChecker(top, dir)
			must(err)
			all = pick(all, check.builds)
		}
		p.plant(all)
	}
}

// explainedFaults are those that explained.txt tells of, by their keys.
func explainedFaults() map[string]bool {
	known := map[string]bool{}
	for line := range strings.Lines(explained) {
		if key, _, ok := strings.Cut(line, " | "); ok && !strings.HasPrefix(line, "#") {
			known[strings.TrimSpace(key)] = true
		}
	}
	return known
}

// pick takes as many faults that build as are asked for, by the seed.
func pick(all []fault, builds func(fault) bool) (picked []fault) {
	if *count > 0 {
		r := rand.New(rand.NewPCG(*seed, *seed))
		r.Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	}
	for _, f := range all {
		if builds(f) {
			if picked = append(picked, f); len(picked) == *count {
				break
			}
		}
	}
	return picked
}

// changedSince are the files of a package that were changed since the commit that is asked for; nil where none is.
func changedSince(top, dir string) []string {
	if *since == "" {
		return nil
	}
	cmd := exec.Command("git", "diff", "--name-only", "--relative", *since, "--", dir)
	cmd.Dir = top
	out, err := cmd.Output()
	must(err)
	return append(strings.Fields(string(out)), "") // never nil
}

// planter tries the faults of one package.
type planter struct {
	root, dir string
	known     map[string]bool
}

// outcome is what became of a fault.
type outcome int

const (
	caught outcome = iota
	survived
	explainedAway
	unbuilt
	outcomes
)

func (o outcome) String() string {
	return [...]string{"caught", "survived", "survived, as is explained", "not built"}[o]
}

// current holds what is explained of the package to the faults there are: what was changed since must be looked at anew.
func (p *planter) current(all []fault) {
	if stale := p.stale(all); len(stale) > 0 {
		log.Fatalf("explained.txt: no such fault any more, mend or delete it:\n%s", strings.Join(stale, "\n"))
	}
}

// stale are the keys of what is explained of the package and is none of its faults.
func (p *planter) stale(all []fault) (stale []string) {
	there := map[string]bool{}
	for _, f := range all {
		there[f.key()] = true
	}
	for key := range p.known {
		if file, _, _ := strings.Cut(key, " "); path.Dir(file) == p.dir && !there[key] {
			stale = append(stale, key)
		}
	}
	slices.Sort(stale)
	return stale
}

func (p *planter) plant(all []fault) {
	slices.SortFunc(all, func(f, g fault) int { return strings.Compare(f.where(), g.where()) })
	if *plan {
		for _, f := range all {
			fmt.Println(f.where(), f.key())
		}
		return
	}
	made := filepath.Join(p.root, p.dir, "testdata", "rapid") // random tests leave their failures there
	if _, err := os.Stat(made); err != nil {
		defer os.RemoveAll(made)
	}
	began := time.Now()
	fmt.Printf("%s: %d faults to plant; its tests without one first\n", p.dir, len(all))
	rounds := p.rounds()
	for i := range rounds { // each by itself: those that the first leaves out are the slow ones
		rounds[i].limit = 10 * time.Minute
		out, err := p.test("", rounds[i])
		if err != nil {
			log.Fatalf("%s: the tests fail without a fault:\n%s", p.dir, out)
		}
		rounds[i].limit = limitOf(out)
	}
	fmt.Printf("%s: they take %s\n", p.dir, time.Since(began).Round(time.Second))
	results := make([]outcome, len(all))
	next := make(chan int)
	var running sync.WaitGroup
	for range *jobs {
		running.Go(func() {
			for i := range next {
				var by string
				results[i], by = p.try(all[i], rounds)
				fmt.Printf("%s%s: %s %s\n", results[i], by, all[i].where(), all[i].key())
			}
		})
	}
	for i := range all {
		next <- i
	}
	close(next)
	running.Wait()
	var n [outcomes]int
	for _, r := range results {
		n[r]++
	}
	fmt.Printf("%s, seed %d: %d faults caught, %d survived, %d of the explained ones survived, %d did not build; %s\n",
		p.dir, *seed, n[caught], n[survived], n[explainedAway], n[unbuilt], time.Since(began).Round(time.Second))
}

func must(err error) {
	if err != nil {
		log.Fatal(err)
	}
}
