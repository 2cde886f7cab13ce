// Package chart draws pictures and charts in terminal cells: braille dots, two across and
// four down in each cell, with text on top. As cells are about twice as high as wide,
// the dots are square. A theme without Unicode gets plain characters from the same
// dots. It knows nothing of what it draws.
//
//	c := canvas.New(t, 40, 20)
//	c.ViewSquare(-10, -10, 10, 10) // millimetres, say
//	c.Circle(canvas.XY{0, 0}, 9, kit.Border)
//	c.FillCircle(canvas.XY{2, 3}, 1.5, kit.PhaseU, canvas.Solid)
//	c.TextAt(canvas.XY{0, -9}, "bore", kit.Label, 0)
//	lines := c.Lines()
//
//	lines = canvas.Chart{
//		Width: 80, Height: 20,
//		X: canvas.Axis{Label: "speed", Unit: "rpm"},
//		Y: canvas.Axis{Label: "current", Unit: "A", Zero: true},
//		Series: []canvas.Series{{Letter: "A", Name: "48 turns", Points: points}},
//		VLines: []canvas.Limit{{At: 310, Label: "cut-in A"}},
//	}.Lines(t)
package chart
