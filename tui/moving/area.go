package moving

import tea "github.com/charmbracelet/bubbletea"

// Panel is where the list stands: the screen's body, and how many rows of the panel are above the list.
type Panel struct {
	Body
	Above func(w, h int) int
}

// area is the list's corner in the body, and its columns and rows.
func (p Panel) area() (x, y, w, h int) {
	x, y, w, h = p.PanelIn()
	above := p.Above(w, h)
	return x, y + above, w, h - above
}

// At is a place of the body as the panel beside or under the plan counts it, and how large that is; on is false where it does not lie on
// the panel.
func (p Panel) At(x, y int) (px, py, w, h int, on bool) {
	fromX, fromY, w, h := p.PanelIn()
	return x - fromX, y - fromY, w, h, p.OnPanel(x, y)
}

// Scrolls tells whether a message is the list's: a tap on one of its rows, or the wheel beside the plan.
func (p Panel) Scrolls(msg tea.MouseMsg) bool {
	_, y, _, _ := p.area()
	wheel := msg.Button == tea.MouseButtonWheelUp || msg.Button == tea.MouseButtonWheelDown
	return p.OnPanel(msg.X, msg.Y) && (wheel || msg.Y >= y)
}
