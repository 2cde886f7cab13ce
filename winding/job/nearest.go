package job

// nearest finds the word that is the fewest typing errors away, if it is near enough to be meant. What
// is far longer than any word matches none.
func nearest(read string, words []string) (string, bool) {
	if len(read) > 60 {
		return "", false
	}
	best, least := "", len(read)/2+1
	for _, w := range words {
		if d := slips(read, w); d < least {
			best, least = w, d
		}
	}
	return best, best != ""
}

// slips is the edit distance with neighbours swapped counting one: the least number of letters to
// insert, delete, change or swap. Source: Damerau, CACM 7 (1964), in its restricted form, from memory.
func slips(a, b string) int {
	s, t := []rune(a), []rune(b)
	before, last, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for k := range last {
		last[k] = k
	}
	for i := 1; i <= len(s); i++ {
		row[0] = i
		for k := 1; k <= len(t); k++ {
			change := last[k-1]
			if s[i-1] != t[k-1] {
				change++
			}
			row[k] = min(change, last[k]+1, row[k-1]+1)
			if i > 1 && k > 1 && s[i-1] == t[k-2] && s[i-2] == t[k-1] {
				row[k] = min(row[k], before[k-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(t)]
}
