package tui

// bring brings up a screen, as a key would.
func (m *Model) bring(i int) {
	m.show(i)
	m.fit()
}
