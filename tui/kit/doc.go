// Package kit is the screen's toolbox: roles and themes, rectangles, boxes, tables, bars, scrolling,
// key bindings, questions. It turns strings into lines of an exact width and lines into a frame of an
// exact size. It knows nothing of windings, holds no state of its own and has no tea.Model.
//
// Every drawing function takes a [Theme], which says whether colour and characters beyond ASCII may be
// used. What matters is always shown by a character or a word first, and by colour second.
//
//	t := kit.Theme{Colour: true}
//	s := kit.NewScreen(t, w, h)
//	top, rest := s.Rect().SplitTop(1)
//	body, foot := rest.SplitBottom(1)
//	s.Put(kit.Bare(t, top, []string{kit.Bar(t, w, "job", "saved")}))
//	left, right := body.SplitLeft(40)
//	s.Put(kit.Box(t, left, "Stator", lines))
//	s.Put(kit.Panel{Title: "Trials", Focused: true}.Draw(t, right, table.Lines(t, kit.Inner(right).W)))
//	s.Put(kit.Bare(t, foot, []string{kit.StatusLine(t, w, "", bindings)}))
//	return s.String()
//
// Text that comes from a person or a file goes through [Clean] once, where it enters; the drawing
// functions remove what could still break a frame.
package kit
