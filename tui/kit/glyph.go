package kit

// Glyphs are the characters a theme draws with. Each is one cell wide, so a
// layout does not depend on the set in use.
type Glyphs struct {
	Horizontal, Vertical                       string
	TopLeft, TopRight, BottomLeft, BottomRight string

	FocusHorizontal, FocusVertical                                 string // border of the box that has the keys
	FocusTopLeft, FocusTopRight, FocusBottomLeft, FocusBottomRight string

	TeeDown, TeeRight, TeeLeft, TeeUp, Cross string

	Bullet   string // list item
	Better   string // better than the reference (not: larger)
	Worse    string // worse than the reference
	Equal    string // no difference that matters
	Broken   string // a broken limit
	Warning  string // doubtful
	Chosen   string // the chosen one of several
	Unchosen string // one of the others
	Focus    string // in the margin of the line that has the keys
	Cursor   string // text cursor
	Measured string
	Derived  string
	Guessed  string
	Ellipsis string // text was cut here

	MoreUp, MoreDown, MoreLeft, MoreRight string // there is more that way
	Track, Thumb                          string // scroll bar
	Full, Empty                           string // gauge
	Limit                                 string // limit mark on a gauge
	Point                                 string // marked point on a chart
}

var unicodeGlyphs = Glyphs{
	Horizontal: "─", Vertical: "│",
	TopLeft: "┌", TopRight: "┐", BottomLeft: "└", BottomRight: "┘",
	FocusHorizontal: "━", FocusVertical: "┃",
	FocusTopLeft: "┏", FocusTopRight: "┓", FocusBottomLeft: "┗", FocusBottomRight: "┛",
	TeeDown: "┬", TeeRight: "├", TeeLeft: "┤", TeeUp: "┴", Cross: "┼",
	Bullet: "•", Better: "▲", Worse: "▽", Equal: "=", Broken: "✗", Warning: "!",
	Chosen: "●", Unchosen: "○", Focus: "▸", Cursor: "▏",
	Measured: "◆", Derived: "◇", Guessed: "~", Ellipsis: "…",
	MoreUp: "▲", MoreDown: "▼", MoreLeft: "◂", MoreRight: "▸",
	Track: "│", Thumb: "┃", Full: "█", Empty: "░", Limit: "┃", Point: "◆",
}

var asciiGlyphs = Glyphs{
	Horizontal: "-", Vertical: "|",
	TopLeft: "+", TopRight: "+", BottomLeft: "+", BottomRight: "+",
	FocusHorizontal: "=", FocusVertical: "|",
	FocusTopLeft: "#", FocusTopRight: "#", FocusBottomLeft: "#", FocusBottomRight: "#",
	TeeDown: "+", TeeRight: "+", TeeLeft: "+", TeeUp: "+", Cross: "+",
	Bullet: "*", Better: "+", Worse: "-", Equal: "=", Broken: "X", Warning: "!",
	Chosen: "*", Unchosen: "o", Focus: ">", Cursor: "|",
	Measured: "m", Derived: "d", Guessed: "g", Ellipsis: "~",
	MoreUp: "^", MoreDown: "v", MoreLeft: "<", MoreRight: ">",
	Track: "|", Thumb: "#", Full: "#", Empty: ".", Limit: "|", Point: "@",
}
