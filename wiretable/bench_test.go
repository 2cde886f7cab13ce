package wiretable

import "testing"

var sink float64

func BenchmarkLookup(b *testing.B) {
	for _, name := range []string{"18 AWG", "18.5 AWG", "19 SWG", "IEC 0.71", "0.72 mm", "0.75 mm over"} {
		g, err := Parse(name)
		if err != nil {
			b.Fatal(err)
		}
		b.Run("BareMM/"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink += g.BareMM(Heavy)
			}
		})
		b.Run("OverallMM/"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink += g.OverallMM(Heavy).MaxMM
			}
		})
	}
}

func BenchmarkBundle(b *testing.B) {
	thick, _ := Parse("18")
	thin, _ := Parse("20")
	bundle := OfTwo(2, thick, 1, thin)
	b.ReportAllocs()
	for b.Loop() {
		sink += bundle.AreaMM2(Heavy) + bundle.SquareMM2(Heavy)
	}
}

func BenchmarkSubstitutes(b *testing.B) {
	for _, s := range []System{AWG, IEC} {
		b.Run(s.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink += float64(len(SubstitutesForArea(1.3, SubstituteOptions{System: s})))
			}
		})
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		g, _ := Parse("0.75 mm over")
		sink += g.BareMM(Heavy)
	}
}
