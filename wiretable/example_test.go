package wiretable_test

import (
	"fmt"

	"slotwright/wiretable"
)

func Example() {
	gauge, err := wiretable.Parse("#18")
	if err != nil {
		fmt.Println(err)
		return
	}
	area := gauge.AreaMM2(wiretable.Heavy)
	over := gauge.OverallMM(wiretable.Heavy)
	fmt.Printf("%s: %.4f mm², %.3f mm over, %.2f Ω/km at 20 °C\n",
		gauge, area, over.NominalMM, 1000*wiretable.OhmsPerMetre(area, wiretable.Copper, 20))
	// Output: 18 AWG: 0.8229 mm², 1.095 mm over, 20.95 Ω/km at 20 °C
}

func ExampleSubstitutes() {
	gauge, _ := wiretable.Parse("18")
	found := wiretable.Substitutes(wiretable.Of(1, gauge), wiretable.SubstituteOptions{MaxStrands: 3})
	for _, s := range found[:1] {
		fmt.Printf("%s %+.1f %%\n", s.Bundle, 100*s.ErrorFraction)
	}
	// Output: 2 × 21 AWG +0.0 %
}
