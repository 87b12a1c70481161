package tui

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// die lets a window go away without a word.
func (b *bench) die() {
	_ = b.Root.journal.lock.Unlock()
	b.Root.journal = nil
}

// overtaken is a job whose window died with notes "e" unsaved, and which somebody else then saved with notes "theirs".
func overtaken(t *testing.T) Options {
	o := died(t)
	document, err := vehicles.Load(o.Path)
	require.NoError(t, err)
	theirs := document.Job
	theirs.Notes = "theirs"
	_, _, err = document.Save(theirs)
	require.NoError(t, err)
	return o
}

func TestUnsavedWorkDoesNotOverwriteWhatWasSavedSince(t *testing.T) {
	o := overtaken(t)
	b := started(t, o)
	assert.True(t, b.shows("The file was saved today"))
	assert.True(t, b.shows(`job: notes: file "theirs", unsaved "e"`), "both are shown")
	b.press("1")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	b.press("ctrl+s")
	assert.True(t, strings.Contains(flat(b), "was changed by somebody else"), "saving asks")
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path), "and nothing is written before the answer")
	b.press("3")
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path+".before"), "what it held is kept")
	assert.Empty(t, journals(t, o))
	b.press("m", "ctrl+s")
	assert.Equal(t, "em", notesOnDisk(t, o.Path), "from here on it is saved as ever")
}

// What is taken up and lost again is still known to be older than the file.
func TestUnsavedWorkStaysOlderThroughASecondDeath(t *testing.T) {
	o := overtaken(t)
	b := started(t, o)
	b.press("1", "m")
	b.die()
	b = started(t, o)
	assert.True(t, b.shows(`file "theirs", unsaved "em"`))
	b.press("1", "ctrl+s")
	assert.True(t, strings.Contains(flat(b), "was changed by somebody else"))
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path))
}

func TestWhatTheFileHoldsCanBeKeptInstead(t *testing.T) {
	o := overtaken(t)
	b := started(t, o)
	b.press("2")
	assert.Equal(t, "theirs", b.desk.State.Job.Notes)
	assert.Empty(t, journals(t, o))
	b.press("m", "ctrl+s")
	assert.Equal(t, "theirsm", notesOnDisk(t, o.Path))
}

// Two windows died: the work of the first is taken up and saved, and that of the second does not overwrite it.
func TestTheWorkOfTwoLostWindowsIsNotOneOverTheOther(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	other := started(t, o)
	other.press("m", "m")
	b.die()
	other.die()
	require.Len(t, journals(t, o), 2)

	b = started(t, o)
	assert.True(t, b.shows("Another window left work behind too"))
	b.press("1", "ctrl+s")
	first := notesOnDisk(t, o.Path)
	require.Contains(t, []string{"e", "mm"}, first)
	b.Root.journal.close()
	b.Root.journal = nil

	b = started(t, o)
	assert.True(t, b.shows("and they differ"))
	b.press("1", "ctrl+s")
	assert.True(t, strings.Contains(flat(b), "was changed by somebody else"))
	assert.Equal(t, first, notesOnDisk(t, o.Path))
}

// Two windows died, and what the later one had done is in the file by now: the work of the other is asked about at once.
func TestWorkBehindWhatIsSavedIsOffered(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	other := started(t, o)
	other.press("m", "m")
	b.die()
	other.die()
	paths := journals(t, o)
	require.Len(t, paths, 2)
	later, err := vehicles.Load(o.Path)
	require.NoError(t, err)
	text, err := os.ReadFile(paths[1])
	require.NoError(t, err)
	later.Job, err = vehicles.ParseJob(text, paths[1])
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(o.Path, later.Job.Format(), 0o644))
	require.NoError(t, os.Chtimes(paths[0], time.Now(), time.Now().Add(-time.Hour)))
	b = started(t, o)
	assert.True(t, b.shows("and they differ"), strings.Join(b.rows(), "\n"))
	b.press("1")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	assert.Len(t, journals(t, o), 1, "what is in the file has gone")
}

// A journal that does not say what it was begun from is taken for older than any file.
func TestAJournalWithoutItsBeginningAsks(t *testing.T) {
	o := died(t)
	path := journals(t, o)[0]
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Contains(t, string(data), begunLine)
	kept := strings.Replace(string(data), begunLine, "# ", 1)
	require.NoError(t, os.WriteFile(path, []byte(kept), 0o600))
	b := started(t, o)
	b.press("1", "ctrl+s")
	assert.True(t, strings.Contains(flat(b), "was changed by somebody else"))
	assert.Empty(t, notesOnDisk(t, o.Path))
}

// A new job's file that came into being meanwhile is somebody else's.
func TestAFileThatCameMeanwhileIsNotOverwritten(t *testing.T) {
	o := options(t)
	b := started(t, o)
	b.press("enter", "e")
	b.die()
	theirs := vehicles.NewJob("TL-07")
	theirs.Notes = "theirs"
	require.NoError(t, os.WriteFile(o.Path, theirs.Format(), 0o644))
	b = started(t, o)
	assert.True(t, b.shows("and they differ"))
	b.press("1", "ctrl+s")
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path))
}

func TestAFileThatHasGoneIsWrittenAnew(t *testing.T) {
	b, o := opened(t)
	require.NoError(t, os.Remove(o.Path))
	b.press("ctrl+s")
	assert.Empty(t, notesOnDisk(t, o.Path), "although nothing was unsaved")
	assert.True(t, b.shows("Saved in van.toml"))

	o = died(t)
	require.NoError(t, os.Remove(o.Path))
	b = started(t, o)
	b.press("1", "ctrl+s")
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
}

func TestAFileChangedOutsideIsToldWhereNothingIsUnsaved(t *testing.T) {
	b, o := opened(t)
	theirs := vehicles.NewJob("TL-07")
	theirs.Notes = "theirs"
	require.NoError(t, os.WriteFile(o.Path, theirs.Format(), 0o644))
	b.press("ctrl+s")
	assert.True(t, strings.Contains(flat(b), "was changed by somebody else"))
	assert.True(t, b.shows("Nothing is unsaved here"))
	b.press("2")
	assert.Equal(t, "theirs", b.desk.State.Job.Notes)
	b.press("ctrl+s")
	assert.True(t, strings.Contains(flat(b), "all is saved in"))
}

// noJournal takes the journal's folder away and puts a file in its place, as a full disk would have it: nothing can be
// written there.
func noJournal(t *testing.T, o Options) {
	require.NoError(t, os.RemoveAll(filepath.Join(o.StateDir, "journal")))
	require.NoError(t, os.WriteFile(filepath.Join(o.StateDir, "journal"), nil, 0o600))
}

// flat is the text of a screen in one line.
func flat(b *bench) string { return strings.Join(strings.Fields(strings.Join(b.rows(), " ")), " ") }

func TestUnsavedWorkThatIsNotKeptIsSaidWholeForAsLongAsItIsSo(t *testing.T) {
	b, o := opened(t)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	noJournal(t, o)
	b.press("e")
	said := strings.ReplaceAll(flat(b), " ", "")
	assert.Contains(t, said, "!Unsavedworkisinthiswindowonly:")
	assert.Contains(t, said, "notwritten:")
	assert.Contains(t, said, "Ctrl-Ssavesit,alsoelsewhere.")
	assert.Len(t, b.rows(), 20)
	b.press("m", "m", "m")
	assert.True(t, b.shows("in this window only"), "it stays")
	assert.True(t, b.shows("? help"))

	require.NoError(t, os.Remove(filepath.Join(o.StateDir, "journal")))
	require.NoError(t, os.MkdirAll(filepath.Join(o.StateDir, "journal"), 0o700))
	b.press("e")
	assert.False(t, b.shows("in this window only"), "and goes when it is so no more")
	assert.Len(t, journals(t, o), 1)
}

func TestAFailedSaveSaysWhetherTheWorkIsKept(t *testing.T) {
	for _, kept := range []bool{true, false} {
		b, o := opened(t)
		b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
		b.press("e")
		require.NoError(t, os.Remove(o.Path))
		require.NoError(t, os.Mkdir(o.Path, 0o755))
		if !kept {
			noJournal(t, o)
			b.press("m")
		}
		b.press("ctrl+s")
		assert.True(t, b.shows("The job was not saved."))
		assert.Equal(t, kept, strings.Contains(flat(b), "the work is kept safe until it is saved"))
		assert.Equal(t, !kept, strings.Contains(flat(b), "the work is in this window only"))
		assert.Equal(t, !kept, strings.Contains(flat(b), "Save it elsewhere before you close this window."))
	}
}

// A save that fails is the first to notice that the journal can't be written either.
func TestAFailedSaveLooksWhetherTheWorkIsKept(t *testing.T) {
	b, o := opened(t)
	b.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("e")}) // its command never runs
	require.NoError(t, os.Remove(o.Path))
	require.NoError(t, os.Mkdir(o.Path, 0o755))
	noJournal(t, o)
	b.press("ctrl+s")
	assert.True(t, b.shows("the work is in this window only"))
	assert.False(t, b.shows("kept safe until it is saved"))
}

func TestWithoutAFolderForItsJournalTheProgramSaysSo(t *testing.T) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	seen := filepath.Join(o.StateDir, "cautions-read")
	require.FileExists(t, seen)
	require.NoError(t, os.WriteFile(filepath.Join(o.StateDir, "journal"), nil, 0o600))
	b := started(t, o)
	assert.True(t, b.shows("Unsaved work can't be kept safe here"))
	b.press("enter")
	assert.False(t, b.shows("in this window only"), "nothing is unsaved yet")
	b.press("e")
	assert.True(t, b.shows("in this window only"))
	kept := b.rescue()
	assert.Contains(t, kept, "It is in "+o.Path+".unsaved-")
	found, err := filepath.Glob(o.Path + ".unsaved-*")
	require.NoError(t, err)
	require.Len(t, found, 1)
	assert.Equal(t, "e", notesOnDisk(t, found[0]))
	b.press("ctrl+s")
	assert.False(t, b.shows("in this window only"))
	assert.Empty(t, b.rescue())
}

func TestAJournalIsAsPrivateAsItsJob(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes are others there")
	}
	for _, mode := range []fs.FileMode{0o600, 0o640, 0o644, 0o400} {
		b, o := opened(t)
		require.NoError(t, os.Chmod(o.Path, mode))
		b.press("e")
		info, err := os.Stat(journals(t, o)[0])
		require.NoError(t, err)
		assert.Equal(t, mode|0o600, info.Mode().Perm())
		info, err = os.Stat(filepath.Join(o.StateDir, "journal"))
		require.NoError(t, err)
		assert.Equal(t, fs.FileMode(0o700), info.Mode().Perm())
	}
}

func TestALinkAmongTheJournalsIsNotFollowed(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links are others there")
	}
	_, o := opened(t)
	theirs := filepath.Join(t.TempDir(), "theirs")
	require.NoError(t, os.WriteFile(theirs, []byte("precious"), 0o600))
	made := filepath.Join(t.TempDir(), "made")
	name := filepath.Join(o.StateDir, "journal", journalName(o.Path))
	require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o700))
	require.NoError(t, os.Symlink(theirs, name+"-2.toml"))
	require.NoError(t, os.Symlink(made, name+"-3.toml.lock"))

	b := started(t, o) // the first window has journal 1
	assert.Contains(t, strings.ReplaceAll(flat(b), " ", ""), filepath.Base(name)+"-2.toml:notwritten:itisnoplainfile.", "it is named")
	b.press("enter", "e")
	assert.FileExists(t, name+"-4.toml")
	assert.Equal(t, "precious", func() string { data, _ := os.ReadFile(theirs); return string(data) }())
	assert.NoFileExists(t, made)

	require.NoError(t, os.Remove(name+"-4.toml"))
	require.NoError(t, os.Symlink(theirs, name+"-4.toml")) // put there later
	b.press("m")
	assert.True(t, b.shows("in this window only"))
	assert.Equal(t, "precious", func() string { data, _ := os.ReadFile(theirs); return string(data) }())
}

// backwards is a rectangle whose far edge is nearer than its near one: such a job can't be judged.
func backwards() vehicles.Obstruction {
	at := func(mm float64, text string) survey.Reading {
		return survey.Reading{Text: text, Length: mm, Number: true}
	}
	return vehicles.Obstruction{Name: "rib", Kind: "floor rib", Measured: true, Place: vehicles.Place{
		X: vehicles.Pair{at(500, "500"), at(400, "400")}, Y: vehicles.Pair{at(-100, "-100"), at(100, "100")},
	}}
}

func TestAChangeThatContradictsItselfIsNotTaken(t *testing.T) {
	b, _ := opened(t)
	before := b.desk.State.Job
	job := before
	job.Obstructions = job.Obstructions.Insert(0, backwards())
	b.do(b.apply(desk.Change{Job: &job, Say: "put in"}))
	assert.Equal(t, before, b.desk.State.Job)
	assert.True(t, b.shows("Not done: "), "what is said of a change that was not made is not said")
	assert.False(t, b.desk.State.Dirty)
}

func TestAJobThatWouldBeRefusedIsNotSavedAndNotLost(t *testing.T) {
	b, o := opened(t)
	job := b.desk.State.Job
	job.Obstructions = job.Obstructions.Insert(0, backwards())
	b.do(b.put(job))
	b.press("ctrl+s")
	assert.True(t, b.shows("it would be refused when it is read again"))
	document, err := vehicles.Load(o.Path)
	require.NoError(t, err, "the file is as it was")
	assert.Empty(t, document.Job.Obstructions)
	b.press("2", "ctrl+c")
	assert.True(t, b.shows("Quit; the work is kept safe and asked about next time"))
	b.press("2")
	assert.True(t, b.quit)
	assert.Contains(t, b.rescue(), "Unsaved work is kept in")
	b.die()
	b = started(t, o)
	b.press("1")
	assert.Len(t, b.desk.State.Job.Obstructions, 1)
	b.press("ctrl+s", "1")
	assert.Empty(t, b.desk.State.Job.Obstructions, "the last change was taken back")
}

// However much there is to know before, all answers are seen in the smallest window.
func TestEveryAnswerIsSeenInTheSmallestWindow(t *testing.T) {
	o := overtaken(t)
	document, err := vehicles.Load(o.Path)
	require.NoError(t, err)
	theirs := document.Job
	theirs.Vehicle, theirs.Fitter, theirs.Floor.Width = strings.Repeat("van ", 30), strings.Repeat("name ", 30), 1777
	_, _, err = document.Save(theirs)
	require.NoError(t, err)
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	assert.True(t, b.shows("The file was saved today"))
	assert.True(t, b.shows("  3  Leave it: ask again next time"), strings.Join(b.rows(), "\n"))
	assert.Len(t, b.rows(), 20)
	b.tapOn("Leave it")
	assert.Nil(t, b.overlay())
}

// Who quits right after a save does not wait for the journal's pause.
func TestQuittingRightAfterASaveTakesTheJournalAway(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	require.Len(t, journals(t, o), 1)
	b.Root.journal.unsaved.Store(nil) // the save is done, what it had written is still to be taken away
	b.desk.Saved(b.desk.Number())
	assert.Empty(t, b.rescue())
	assert.Empty(t, journals(t, o))
}

// What could not be read again is not called kept.
func TestAJobTooLargeToBeReadAgainIsSaidToBe(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	job := b.desk.State.Job
	job.Notes = strings.Repeat("word ", vehicles.LargestFile/5)
	b.do(b.apply(desk.Change{Job: &job}))
	assert.True(t, b.shows("could not be read again"))
	b.press("ctrl+s")
	assert.True(t, b.shows("The job was not saved."))
	assert.Empty(t, notesOnDisk(t, o.Path))
	b.press("esc", "ctrl+z")
	assert.False(t, b.shows("could not be read again"))
	assert.Equal(t, "e", func() string { f := b.Root.journal.look(nil); require.NoError(t, f.err); return f.job.Notes }())
}

// Under no name is a job written that would be refused.
func TestAJobThatWouldBeRefusedIsNotSavedUnderAnotherNameEither(t *testing.T) {
	b, _ := opened(t)
	job := b.desk.State.Job
	job.Rules = map[string]float64{"no.such.rule": 1}
	b.do(b.put(job))
	require.NotEmpty(t, b.desk.State.Faults)
	other := filepath.Join(t.TempDir(), "other.toml")
	b.do(b.ask(desk.SaveAs))
	b.press("ctrl+u", other, "enter")
	assert.True(t, b.shows("it would be refused when it is read again"))
	assert.NoFileExists(t, other)
}

// A name that was free when it was chosen may be somebody else's by the time the job is written.
func TestANameThatIsTakenMeanwhileIsAskedAbout(t *testing.T) {
	b, o := opened(t)
	other := filepath.Join(t.TempDir(), "other.toml")
	theirs := vehicles.NewJob("TL-08")
	theirs.Notes = "theirs"
	require.NoError(t, os.WriteFile(other, theirs.Format(), 0o600))
	b.press("e")
	b.send(nameChosen{other, false}) // as it was a moment ago
	assert.True(t, strings.Contains(flat(b), "is there already"), flat(b))
	assert.Equal(t, "theirs", notesOnDisk(t, other))
	b.press("2")
	assert.Equal(t, "e", notesOnDisk(t, other))
	assert.Equal(t, "theirs", notesOnDisk(t, other+".before"))
	assert.Empty(t, notesOnDisk(t, o.Path))
}

func TestWithoutAnyJournalTheWorkIsNotCalledKept(t *testing.T) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	o.StateDir = ""
	b := started(t, o)
	b.press("e")
	require.NoError(t, os.Remove(o.Path))
	require.NoError(t, os.Mkdir(o.Path, 0o755))
	b.press("ctrl+s")
	assert.True(t, b.shows("the work is in this window only"))
}
