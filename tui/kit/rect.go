package kit

// Rect is a piece of the screen in cells: X, Y its top left corner, W and H its
// size, never negative in what the methods return. Splitting is plain
// arithmetic: pieces never overlap, never leave the whole, and together cover
// it apart from the gaps asked for.
type Rect struct{ X, Y, W, H int }

// Empty reports whether the rectangle holds no cell.
func (r Rect) Empty() bool { return r.W <= 0 || r.H <= 0 }

// Contains reports whether the cell x, y lies inside.
func (r Rect) Contains(x, y int) bool {
	return x >= r.X && x < r.X+r.W && y >= r.Y && y < r.Y+r.H
}

// SplitTop cuts n rows (at most all) from the top.
func (r Rect) SplitTop(n int) (top, rest Rect) {
	n = clamp(n, 0, r.H)
	return Rect{r.X, r.Y, r.W, n}, Rect{r.X, r.Y + n, r.W, r.H - n}
}

// SplitBottom cuts n rows (at most all) from the bottom.
func (r Rect) SplitBottom(n int) (rest, bottom Rect) {
	return r.SplitTop(r.H - clamp(n, 0, r.H))
}

// SplitLeft cuts n columns (at most all) from the left.
func (r Rect) SplitLeft(n int) (left, rest Rect) {
	n = clamp(n, 0, r.W)
	return Rect{r.X, r.Y, n, r.H}, Rect{r.X + n, r.Y, r.W - n, r.H}
}

// SplitRight cuts n columns (at most all) from the right.
func (r Rect) SplitRight(n int) (rest, right Rect) {
	return r.SplitLeft(r.W - clamp(n, 0, r.W))
}

// Inset takes dx columns from the left and right, dy rows from top and bottom.
func (r Rect) Inset(dx, dy int) Rect {
	dx, dy = clamp(dx, 0, r.W/2), clamp(dy, 0, r.H/2)
	return Rect{r.X + dx, r.Y + dy, r.W - 2*dx, r.H - 2*dy}
}

// Columns shares the width among columns in proportion to their weights, with gap
// empty columns between neighbours. Weights below 1 count as 1. Cells that do
// not divide go to the first columns.
func (r Rect) Columns(gap int, weights ...int) []Rect {
	out := make([]Rect, len(weights))
	x := r.X
	for i, w := range share(r.W, gap, weights) {
		out[i] = Rect{min(x, r.X+r.W), r.Y, w, r.H}
		x += w + gap
	}
	return out
}

// Rows is [Rect.Columns] from top to bottom.
func (r Rect) Rows(gap int, weights ...int) []Rect {
	out := make([]Rect, len(weights))
	y := r.Y
	for i, h := range share(r.H, gap, weights) {
		out[i] = Rect{r.X, min(y, r.Y+r.H), r.W, h}
		y += h + gap
	}
	return out
}

// Centre returns a w x h rectangle (at most the whole) in the middle.
func (r Rect) Centre(w, h int) Rect {
	w, h = clamp(w, 0, r.W), clamp(h, 0, r.H)
	return Rect{r.X + (r.W-w)/2, r.Y + (r.H-h)/2, w, h}
}

func share(total, gap int, weights []int) []int {
	out := make([]int, len(weights))
	if len(weights) == 0 {
		return out
	}
	free := max(0, total-gap*(len(weights)-1))
	sum := 0
	for _, w := range weights {
		sum += max(1, w)
	}
	used := 0
	for i, w := range weights {
		out[i] = free * max(1, w) / sum
		used += out[i]
	}
	for i := 0; used < free; i++ {
		out[i%len(out)]++
		used++
	}
	return out
}

func clamp(v, lo, hi int) int { return max(lo, min(v, max(lo, hi))) }
