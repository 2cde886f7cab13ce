package trials

import (
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
)

// slotLine is slot area, room for wire and fill limit, the inputs of the whole job, and
// whether the slot is kept full.
func (v *View) slotLine(s *session.Session, w int) string {
	t, m := s.Theme, s.Outcome().Machine
	input := func(row string, fallback string) string {
		path := row
		if row == rowArea {
			path = areaPath(s)
		}
		text, u, ok := s.Document().Typed(path)
		if !ok {
			text = fallback
		}
		if v.editing && v.row == row {
			text = v.input.Draw(t, 9, true)
		} else {
			text = t.Paint(kit.Value, text)
		}
		if _, bad := s.Document().ProblemAt(path); bad {
			text += " " + t.PaintMark(kit.Broken)
		}
		mark := " "
		if v.row == row && !v.ladder.open {
			mark = t.PaintMark(kit.Focus)
		}
		if u.Name != "" {
			text += " " + t.Paint(kit.Unit, u.Name)
		}
		return mark + " " + t.Paint(kit.Label, inputLabel(s, row)) + " " + text
	}
	gross := s.Text(m.GrossMM2, areaDim(), 3)
	if flat(s) {
		gross = session.Dash
	}
	area, fill := input(rowArea, gross), input(rowFill, quantity.Screen.Number(s.FillLimit(), 2))
	line := area + "  " + t.Paint(kit.Dim, "room ") + t.Text(roomText(s, m.NetMM2)) + " " + fill
	if kit.Width(line)+roomForT > w {
		line = area + " " + fill
	}
	words := []string{"keeps it full", "full"}
	if s.Full {
		words = []string{t.Glyphs().Chosen + " kept full", t.Glyphs().Chosen + " full", t.Glyphs().Chosen}
	}
	for _, word := range words {
		role := kit.Dim
		if s.Full {
			role = kit.Chosen
		}
		if whole := line + "   " + t.Paint(kit.Key, "T") + " " + t.Paint(role, word); kit.Width(whole) <= w {
			line = whole
			break
		}
	}
	return t.Fit(line, w)
}

// roomText is the room for wire, in the unit that the size beside it was typed in: one line has one
// unit.
func roomText(s *session.Session, room quantity.Figure) string {
	u := s.Units.For(areaDim())
	switch _, typed, _ := s.Document().Typed(areaPath(s)); typed.Suffix {
	case "mm", "mm2", "cm":
		u = quantity.SquareMM[0]
	case "in", "in2", "mil":
		u = quantity.SquareMM[1]
	}
	if !room.Known() {
		return session.Dash
	}
	return quantity.Screen.Value(u.From(room.Value), u, 3) + " " + u.Name
}

// roomForT is the minimum width for the key that keeps the slot full: its effect is one line with the
// inputs it depends on.
const roomForT = 9
