package kit

// Either is a if the condition holds, else b.
func Either[T any](first bool, one, other T) T {
	if first {
		return one
	}
	return other
}
