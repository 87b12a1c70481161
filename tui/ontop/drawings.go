package ontop

// The drawings are at most 50 columns wide and 7 rows high, so that they stand under a form on a small screen and
// beside one on a larger. LEFT and RIGHT are words of eight columns.

const floorSide = `
BUMPER          |<------ length ----->|
  ┃ |<- from -->┌─────────────────────┐
  ┃             │▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒│ thickness
  ┃             └─────────────────────┘
  ┃                underside  ↕ to the ground
══╩══════════════════════════════════════════
`

const slopeBelow = `
floor  ┬ ▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒
       │ the hook's drop        │     │ ↕ drop
BUMPER │                 _..--''●─────┘   taped at
┌───┐  │         __..--''  tape |
│   ●__┴__..--'''               |
└───┘|<-------- in plan ------->|
`

const slopeAbove = `
                          ● the mark
BUMPER            _..--''┌┴─────────────────────
┌───┐     __..--''       │▒▒▒▒▒▒▒▒▒▒▒▒▒ finished
│   ●..--''  the tape    └───────────── floor
└───┘ ↕ its zero: how far below finished floor
`

const edges = `
seen from the front
▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒ floor
│ RIGHT        centreline      LEFT     │
│<----------------->┆<----------------->│
├── R 310 ──●       ┆         ●─ L 240 ─┤
`

const sideBelow = `
seen from the front
▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒ floor
level:      ●───────── L 240 ──────────┤ edge
sloping:    ●--..__                    │
                   ''--..__            │ ↕ drop
                           ''--..__    │
                                   ''--● sill
`

const sideAbove = `
seen from the front
▒▒▒▒▒▒▒▒▒▒▒▒●───── level: L 240 ───────┐ edge
finished    ┆--..__                    │
floor       ┆      ''--..__  sloping   │ ↕ below
                           ''--..__    │
                                   ''--● zero
`

const zeros = `
from the side
above:            ●──────────────────────●  one
                  ┆                      ┆ place
below:      ●─────┼──────────────────────●
            |<--->|
       zero lies forward
`

const bowed = `
from above    ┆ the datum line
LEFT      ┆  ╭── here: 14 forward
              ┆ ╭╯
centreline    ┆─┤    here: 0      nose ►
              ┆ ╰╮
RIGHT      ┆  ╰── here: 12 forward
`

const pins = `
from above       pin
BUMPER LINE ┃     ●--..__
            ┃     ↑ ± pins''--..__
            ┃     ┼ centreline    ''--✕ the mark
            ┃     ↓ ± pins    __..--''
            ┃     ●__....--'''
`

const frames = `
from above ┌─ ─ ─ ─ ─ ─ ─ ─ ─┐ as measured below
         ┌─┼───────────────┐   as measured above:
         │       ✕ +       │ │ a little apart, and
         │ │               │   a little turned
         └─┼───────────────┘ │
           └─ ─ ─ ─ ─ ─ ─ ─ ─┘
`
