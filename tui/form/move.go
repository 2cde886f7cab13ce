package form

import "unicode/utf8"

// By is the form with the focus so many rows further down, or up, at most at its end. What was open is
// taken as it is.
func (f Form) By(rows int) Form { return f.focusOn(f.Focus + rows) }

// Section is the form with the focus at the beginning of the next section (by > 0), or at
// that of this one and from there of the one before.
func (f Form) Section(by int) Form {
	starts := f.groupStarts()
	if by > 0 {
		for _, s := range starts {
			if s > f.Focus {
				return f.focusOn(s)
			}
		}
		return f.focusOn(len(f.Rows) - 1)
	}
	for i := len(starts) - 1; i >= 0; i-- {
		if starts[i] < f.Focus {
			return f.focusOn(starts[i])
		}
	}
	return f.focusOn(0)
}

// focusOn puts the focus on row i or the nearest there is, closed.
func (f Form) focusOn(i int) Form {
	f = f.closed()
	if len(f.Rows) == 0 {
		return f
	}
	f.Focus = min(max(i, 0), len(f.Rows)-1)
	f.Cursor = utf8.RuneCountInString(f.Rows[f.Focus].Text)
	return f
}
