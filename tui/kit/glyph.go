package kit

// Glyphs are the characters a theme draws with. Each is one cell wide, so a
// layout does not depend on the set in use.
type Glyphs struct {
	Horizontal, Vertical                       string
	TopLeft, TopRight, BottomLeft, BottomRight string

	FocusHorizontal, FocusVertical                                 string // border of the box that has the keys
	FocusTopLeft, FocusTopRight, FocusBottomLeft, FocusBottomRight string

	TeeDown, TeeLeft string // ticks of an axis

	Bullet   string // list item
	Better   string // better than the reference (not: larger)
	Worse    string // worse than the reference
	Broken   string // a broken limit
	Warning  string // doubtful
	Chosen   string // the chosen one of several
	Focus    string // in the margin of the line that has the keys
	Cursor   string // text cursor
	Measured string
	Derived  string
	Guessed  string
	Needed   string // an empty input that a figure waits for
	Ellipsis string // text was cut here

	MoreUp, MoreDown, MoreLeft, MoreRight string // there is more that way
	Track, Thumb                          string // scroll bar
	Point                                 string // marked point on a chart
}

var unicodeGlyphs = Glyphs{
	Horizontal: "─", Vertical: "│",
	TopLeft: "┌", TopRight: "┐", BottomLeft: "└", BottomRight: "┘",
	FocusHorizontal: "━", FocusVertical: "┃",
	FocusTopLeft: "┏", FocusTopRight: "┓", FocusBottomLeft: "┗", FocusBottomRight: "┛",
	TeeDown: "┬", TeeLeft: "┤",
	Bullet: "•", Better: "▲", Worse: "▽", Broken: "✗", Warning: "!",
	Chosen: "●", Focus: "▸", Cursor: "▏",
	Measured: "◆", Derived: "◇", Guessed: "~", Needed: "○", Ellipsis: "…",
	MoreUp: "▲", MoreDown: "▼", MoreLeft: "◂", MoreRight: "▸",
	Track: "│", Thumb: "┃", Point: "◆",
}

var asciiGlyphs = Glyphs{
	Horizontal: "-", Vertical: "|",
	TopLeft: "+", TopRight: "+", BottomLeft: "+", BottomRight: "+",
	FocusHorizontal: "=", FocusVertical: "|",
	FocusTopLeft: "#", FocusTopRight: "#", FocusBottomLeft: "#", FocusBottomRight: "#",
	TeeDown: "+", TeeLeft: "+",
	Bullet: "*", Better: "^", Worse: "v", Broken: "X", Warning: "!",
	Chosen: "*", Focus: ">", Cursor: "|",
	Measured: "m", Derived: "d", Guessed: "~", Needed: "o", Ellipsis: "_",
	MoreUp: "^", MoreDown: "v", MoreLeft: "<", MoreRight: ">",
	Track: "|", Thumb: "#", Point: "@",
}
