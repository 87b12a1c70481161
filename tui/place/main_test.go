package place

import (
	"os"
	"testing"

	"bench.example/undermark/tui/screentest"
)

func TestMain(m *testing.M) { os.Exit(screentest.Main(m)) }
