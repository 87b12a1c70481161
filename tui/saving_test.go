package tui

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func notesOnDisk(t *testing.T, path string) string {
	document, err := vehicles.Load(path)
	require.NoError(t, err)
	return document.Job.Notes
}

func journals(t *testing.T, o Options) []string {
	files, err := filepath.Glob(filepath.Join(o.StateDir, "journal", "*.toml"))
	require.NoError(t, err)
	return files
}

func TestSaveWritesTheFileAndClearsTheJournal(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	assert.Len(t, journals(t, o), 1)
	b.press("ctrl+s")
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	assert.Empty(t, journals(t, o))
	assert.False(t, b.desk.State.Dirty)
	assert.True(t, b.shows("Saved in van.toml"))
	b.press("ctrl+z")
	assert.True(t, b.desk.State.Dirty, "the file now holds what was undone")
	assert.Len(t, journals(t, o), 1)
}

func TestCommentsOfTheFileAreKeptBesideIt(t *testing.T) {
	b, o := opened(t)
	text, err := os.ReadFile(o.Path)
	require.NoError(t, err)
	text = append([]byte("# told by hand\n"), text...)
	require.NoError(t, os.WriteFile(o.Path, text, 0o644))
	b.Root.journal.close()
	b = started(t, o)
	b.press("e", "ctrl+s")
	assert.True(t, b.shows("is in van.toml.before"))
	kept, err := os.ReadFile(o.Path + ".before")
	require.NoError(t, err)
	assert.Equal(t, string(text), string(kept))
}

func TestAnEditDuringASaveStaysUnsaved(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	_, cmd := b.Update(tea.KeyMsg{Type: tea.KeyCtrlS})
	b.press("e")
	b.do(cmd)
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	assert.True(t, b.desk.State.Dirty)
	assert.Len(t, journals(t, o), 1)
}

func TestSaveAndQuitWaitsForASaveOnItsWay(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	_, first := b.Update(tea.KeyMsg{Type: tea.KeyCtrlS})
	b.press("e", "ctrl+c", "1")
	assert.False(t, b.quit)
	b.do(first)
	assert.True(t, b.quit)
	assert.Equal(t, "ee", notesOnDisk(t, o.Path))
}

func TestQuitAsksOnlyWhenSomethingIsUnsaved(t *testing.T) {
	b, _ := opened(t)
	b.press("ctrl+c")
	assert.True(t, b.quit)

	b, o := opened(t)
	b.press("e", "ctrl+c")
	assert.False(t, b.quit)
	assert.True(t, b.shows("There is work that is not saved."))
	b.press("ctrl+c", "esc")
	assert.False(t, b.shows("There is work that is not saved."), "it is asked once")
	b.press("ctrl+c")
	b.tapOn("Save and quit")
	assert.True(t, b.quit)
	assert.Equal(t, "e", notesOnDisk(t, o.Path))

	b, o = opened(t)
	b.press("e", "ctrl+c", "down", "enter")
	assert.True(t, b.quit)
	assert.Empty(t, notesOnDisk(t, o.Path))
	assert.Empty(t, journals(t, o), "given up")
}

func TestAJobWithoutAFileAsksForItsName(t *testing.T) {
	o := options(t)
	o.Path = ""
	b := started(t, o)
	assert.True(t, b.shows("sample"))
	assert.False(t, b.desk.State.Dirty)
	b.press("e", "ctrl+c", "1")
	assert.True(t, b.shows("Save the job in which file?"))
	b.press("esc")
	assert.False(t, b.quit)
	path := filepath.Join(t.TempDir(), "own.toml")
	b.press("ctrl+s", "ctrl+u", path, "enter")
	assert.Equal(t, vehicles.Demo().Notes+"e", notesOnDisk(t, path))
	assert.False(t, b.quit, "leaving was called off")
	assert.False(t, b.desk.State.Dirty)
	assert.Equal(t, path, b.desk.State.Path)
	assert.False(t, b.shows("(sample)"))
	b.press("e")
	assert.Contains(t, journals(t, o)[0], journalName(path), "the journal is the new file's")
}

func TestANameMayStartAtHome(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	assert.Equal(t, filepath.Join(home, "vans", "a.toml"), fromHome("~/vans/a.toml"))
	assert.Equal(t, "~a.toml", fromHome("~a.toml"))
	assert.Equal(t, "vans/~/a.toml", fromHome("vans/~/a.toml"))
}

func TestATakenNameIsAskedAbout(t *testing.T) {
	o := options(t)
	other := filepath.Join(t.TempDir(), "other.toml")
	require.NoError(t, os.WriteFile(other, []byte("precious"), 0o644))
	o.Path = ""
	b := started(t, o)
	b.press("ctrl+s", "ctrl+u", other, "enter")
	assert.True(t, b.shows("is there already"))
	b.press("esc")
	data, err := os.ReadFile(other)
	require.NoError(t, err)
	assert.Equal(t, "precious", string(data))
	b.press("ctrl+s", "ctrl+u", other, "enter", "2")
	assert.Equal(t, b.desk.State.Job.Ref, func() string { d, err := vehicles.Load(other); require.NoError(t, err); return d.Job.Ref }())
}

// changedOnDisk is a job with an edit here, and another edit in the file.
func changedOnDisk(t *testing.T) (*bench, Options) {
	b, o := opened(t)
	b.press("e")
	theirs := vehicles.NewJob("TL-07")
	theirs.Notes = "theirs"
	require.NoError(t, os.WriteFile(o.Path, theirs.Format(), 0o644))
	b.press("ctrl+s")
	require.True(t, b.shows("was changed by somebody else"))
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path), "nothing is written before the answer")
	return b, o
}

func TestAFileChangedOnDiskCanBeTakenUp(t *testing.T) {
	b, o := changedOnDisk(t)
	b.press("2")
	assert.Equal(t, "theirs", b.desk.State.Job.Notes)
	assert.False(t, b.desk.State.Dirty)
	b.press("ctrl+z")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	b.press("ctrl+s")
	assert.Equal(t, "e", notesOnDisk(t, o.Path), "the file was read afresh, so it may be written")
}

func TestAFileChangedOnDiskCanBeWrittenOver(t *testing.T) {
	b, o := changedOnDisk(t)
	b.press("3")
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	assert.False(t, b.desk.State.Dirty)
}

func TestAFileChangedOnDiskCanBeLeftAlone(t *testing.T) {
	b, o := changedOnDisk(t)
	mine := filepath.Join(t.TempDir(), "mine.toml")
	b.press("1", "ctrl+u", mine, "enter")
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path))
	assert.Equal(t, "e", notesOnDisk(t, mine))

	b, o = changedOnDisk(t)
	b.press("esc")
	assert.True(t, b.desk.State.Dirty)
	assert.Equal(t, "theirs", notesOnDisk(t, o.Path))
}

func TestASaveThatFailsSaysSoAndKeepsTheWork(t *testing.T) {
	b, o := opened(t)
	b.press("e", "ctrl+c")
	require.NoError(t, os.Remove(o.Path))
	require.NoError(t, os.Mkdir(o.Path, 0o755))
	b.press("1")
	assert.False(t, b.quit)
	assert.True(t, b.desk.State.Dirty)
	assert.Len(t, journals(t, o), 1)
	require.NotNil(t, b.overlay(), "it is told")
}

func TestAMissingFileStartsANewJob(t *testing.T) {
	o := options(t)
	b := started(t, o)
	assert.True(t, b.shows("There is no file"))
	b.press("enter")
	assert.Equal(t, "van", b.desk.State.Job.Ref)
	_, err := os.Stat(o.Path)
	assert.ErrorIs(t, err, os.ErrNotExist)
	b.press("ctrl+s")
	assert.Empty(t, notesOnDisk(t, o.Path))

	o = options(t)
	b = started(t, o)
	b.press("esc")
	assert.True(t, b.quit, "the last answer")
}

func TestANewJobStartsFromAVanOfTheLibrary(t *testing.T) {
	for i, van := range vehicles.Library() {
		b := started(t, options(t))
		assert.True(t, b.shows("Like a "+van.Title))
		b.press(strconv.Itoa(i + 2))
		assert.Equal(t, "van", b.desk.State.Job.Ref, "the file's name")
		assert.Equal(t, van.Title, b.desk.State.Job.Vehicle)
		assert.NotEmpty(t, b.desk.State.Job.Obstructions)
		assert.True(t, b.desk.State.Dirty)
		b.press("ctrl+z")
		assert.NotEmpty(t, b.desk.State.Job.Obstructions, "undo ends here")
		b.press("ctrl+s")
		assert.False(t, b.desk.State.Dirty)
	}
	b := started(t, options(t))
	b.press(strconv.Itoa(len(vehicles.Library()) + 2))
	assert.Equal(t, vehicles.Demo().Cut, b.desk.State.Job.Cut, "the sample")
	b = started(t, options(t))
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	assert.True(t, b.shows("Quit"), "all answers are seen in the smallest window")
}

// died is a window that went away without a word, with an edit in its journal.
func died(t *testing.T) Options {
	b, o := opened(t)
	b.press("e")
	b.Root.journal.lock.Unlock()
	b.Root.journal = nil
	return o
}

func TestUnsavedWorkIsFoundAndTakenUp(t *testing.T) {
	o := died(t)
	b := started(t, o)
	assert.True(t, b.shows("Unsaved work from today"))
	assert.Empty(t, b.desk.State.Job.Notes)
	b.press("1")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
	assert.True(t, b.desk.State.Dirty)
	b.press("ctrl+s")
	assert.Equal(t, "e", notesOnDisk(t, o.Path))
	assert.Empty(t, journals(t, o))
}

func TestUnsavedWorkIsThrownAwayOnlyWhenAsked(t *testing.T) {
	o := died(t)
	b := started(t, o)
	b.press("2")
	assert.Empty(t, journals(t, o))
	assert.Empty(t, b.desk.State.Job.Notes)
}

func TestUnsavedWorkThatIsLeftIsAskedAboutAgain(t *testing.T) {
	o := died(t)
	b := started(t, o)
	b.press("3", "m", "ctrl+s")
	assert.Equal(t, "m", notesOnDisk(t, o.Path))
	assert.Len(t, journals(t, o), 1, "what was left is still there")
	b.Root.journal.close()
	b.Root.journal = nil
	b = started(t, o)
	b.press("1")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
}

func TestTwoWindowsDontShareAJournal(t *testing.T) {
	b, o := opened(t)
	b.press("e")
	other := started(t, o)
	assert.False(t, other.shows("Unsaved work"), "the other window is still at it")
	other.press("m", "m")
	assert.Len(t, journals(t, o), 2)
}

func TestAJournalThatCantBeReadStays(t *testing.T) {
	o := died(t)
	require.NoError(t, os.WriteFile(journals(t, o)[0], []byte("format = "), 0o644))
	b := started(t, o)
	assert.True(t, b.shows("can't be read"))
	b.press("enter", "e", "ctrl+s")
	data, err := os.ReadFile(journals(t, o)[0])
	require.NoError(t, err)
	assert.Equal(t, "format = ", string(data))
}

func TestRescueKeepsWhatTheJournalHasNotYet(t *testing.T) {
	b, o := opened(t)
	b.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("e")}) // its command never runs
	assert.Empty(t, journals(t, o))
	assert.Contains(t, b.rescue(), filepath.Join(o.StateDir, "journal"))
	require.NoError(t, b.Root.journal.lock.Unlock())
	b.Root.journal = nil
	again := started(t, o)
	again.press("1")
	assert.Equal(t, "e", again.desk.State.Job.Notes)
}

func TestWhenIsSaidForAPerson(t *testing.T) {
	now := time.Date(2026, 3, 5, 17, 0, 0, 0, time.Local)
	assert.Equal(t, "today 08:05", when(now.Add(-8*time.Hour-55*time.Minute), now))
	assert.Equal(t, "4 March 2026, 17:00", when(now.Add(-24*time.Hour), now))
}

// Why there is no file to lock is told as it is: only a file system without locks is said to have none.
func TestWhyAJournalCanNotBeLocked(t *testing.T) {
	_, err := taken(lockOf(filepath.Join(t.TempDir(), "gone", "a.toml")))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "a.toml.lock: not written: there is no such file or folder")
	assert.NotContains(t, err.Error(), "has no file locks")
}

// Where no journal could be had, that is said of unsaved work after a save as before it; a save tries again, and from then on there is one.
func TestWithoutAJournalThatIsSaidUntilASaveFindsOne(t *testing.T) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o600))
	inTheWay := filepath.Join(o.StateDir, "journal")
	require.NoError(t, os.WriteFile(inTheWay, nil, 0o600))
	b := started(t, o)
	require.NotNil(t, b.overlay())
	b.press("1")
	b.goTo(b.titled("Place"))
	for range 2 {
		b.press("left")
		assert.True(t, b.shows("Unsaved work is in this window only"), "%s", b.View())
		b.press("ctrl+s")
		require.False(t, b.desk.State.Dirty)
	}
	require.NoError(t, os.Remove(inTheWay))
	b.press("left", "ctrl+s", "left")
	assert.False(t, b.shows("in this window only"), "%s", b.View())
	require.Len(t, journals(t, o), 1)
}
