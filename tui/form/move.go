package form

import "unicode/utf8"

// By is the form with the focus so many rows further down, or up, at most at its end.
func (f Form) By(rows int) Form { return f.focusOn(f.Focus + rows) }

// Home goes to the beginning of the text, and from there to the first row.
func (f Form) Home() Form {
	if !f.Typing() || f.Cursor <= 0 {
		return f.focusOn(0)
	}
	f.Cursor = 0
	return f
}

// End goes to the end of the text, and from there to the last row.
func (f Form) End() Form {
	end := utf8.RuneCountInString(f.Focused().Text)
	if !f.Typing() || f.Cursor >= end {
		return f.focusOn(len(f.Rows) - 1)
	}
	f.Cursor = end
	return f
}

// focusOn puts the focus on row i or the nearest there is, the cursor behind its text.
func (f Form) focusOn(i int) Form {
	if len(f.Rows) == 0 {
		return f
	}
	f.Focus = min(max(i, 0), len(f.Rows)-1)
	f.Cursor = utf8.RuneCountInString(f.Rows[f.Focus].Text)
	return f
}
