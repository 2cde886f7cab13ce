// Package form is text entry: a one-line [TextLine] and a [Form] of labelled rows. Both are plain
// values: the text is a string, a copy is independent, and the owner keeps what was typed. They know
// nothing of what a row means: the owner gets the row's ID and the new text of every edit, works out
// the effect, and puts errors back.
//
//	form := form.NewForm([]form.Row{
//		{ID: "slots", Group: "Stator", Label: "Slots", Text: "36"},
//		{ID: "bore", Group: "Stator", Label: "Bore", Unit: "mm", Text: "52.4", Help: "Across the teeth, with a caliper."},
//		{ID: "join", Group: "Winding", Label: "Joined in", Text: "star", Choices: []string{"star", "delta"}},
//	})
//	form, edit, used := form.Key(msg)
//	if edit.Changed {
//		state.Set(edit.ID, edit.Text)
//		form = form.WithRows(state.Rows()) // focus and cursor stay
//	}
//	lines := form.Lines(theme, w, h) // exactly h lines of w cells
package form
