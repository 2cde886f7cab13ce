package kit

// Either is the one or the other.
func Either[T any](first bool, one, other T) T {
	if first {
		return one
	}
	return other
}
