package text

import "fmt"

// Count is a number of things in words: "1 layer", "2 layers", "1/2 slots". The number is as
// fmt.Sprint writes it, and only "1" takes the singular; thing makes its plural with an s.
func Count(n any, thing string) string {
	number := fmt.Sprint(n)
	if number == "1" {
		return "1 " + thing
	}
	return number + " " + thing + "s"
}
