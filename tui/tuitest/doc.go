// Package tuitest is for tests only: it runs a tea.Model on a terminal inside the process,
// types keys and waits for text to appear, and compares frames with golden files.
// Nothing outside of _test.go files may import it.
//
//	s := stage.Start(t, model, 80, 24)
//	s.WaitFor("Slots")
//	s.Key("down")
//	s.Type("0.71 mm")
//	s.WaitFor("0.71")
//	s.Resize(120, 40)
//	final := s.Quit()
//
//	stage.CheckFrame(t, model.View(), 80, 24)
//	stage.Golden(t, "trials-80x24", model.View())
package tuitest
