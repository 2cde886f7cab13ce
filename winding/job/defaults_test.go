package job

import (
	"strings"
	"testing"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A field has a default or says in words what is used, never both; a default is a value
// that the field itself would take, and says where it is from.
func TestDefaultsAreValuesOfTheirFields(t *testing.T) {
	n := 0
	for i := range Fields {
		f := &Fields[i]
		if f.Default == nil {
			assert.Equal(t, f.Ghost, f.Empty(f.Dim[0]), f.Path())
			continue
		}
		n++
		assert.Empty(t, f.Ghost, "%s says it twice", f.Path())
		assert.NotEmpty(t, f.Default.Source, f.Path())
		if f.Kind == Word {
			assert.Contains(t, f.Words, f.Default.Word, f.Path())
			continue
		}
		assert.Empty(t, f.Default.Word, f.Path())
		_, bad := f.reading(f.Empty(f.Dim[0]), f.Dim[0])
		assert.Nil(t, bad, "%s would not take %q", f.Path(), f.Empty(f.Dim[0]))
	}
	assert.Equal(t, 71, n, "fields with a default")
}

// What is written for an empty field is the default in the unit that is shown: read back
// in that unit it is the default again, to the figures written.
func TestDefaultsInEveryUnit(t *testing.T) {
	for i := range Fields {
		f := &Fields[i]
		if f.Default == nil || f.Kind == Word {
			continue
		}
		for _, u := range f.Dim {
			r, bad := f.reading(f.Empty(u), u)
			require.Nil(t, bad, "%s in %s", f.Path(), u.Name)
			assert.InDelta(t, DefaultOf(f.Path()), r.Value, 1e-3*max(DefaultOf(f.Path()), 0.1), "%s in %s", f.Path(), u.Name)
		}
	}
	liner, _ := InputAt("slot.liner")
	assert.Equal(t, "0.25 mm", liner.Empty(quantity.Millimetres[0]))
	assert.Equal(t, "0.009843 in", liner.Empty(quantity.Millimetres[1]), "0.25/25.4")
	ambient, _ := InputAt("machine.ambient")
	assert.Equal(t, "77 °F", ambient.Empty(quantity.Celsius[1]), "25 °C by the two fixed points of the scale")
	span, _ := InputAt("machine.span")
	assert.Equal(t, "one pole pitch", span.Empty(quantity.None[0]), "worked out, so in words")
	bore, _ := InputAt("machine.bore")
	assert.Empty(t, bore.Empty(quantity.Millimetres[0]), "nothing stands in for a bore")
}

// What is typed always goes before the default, and only the default is marked as one.
func TestOrKeepsWhatWasTyped(t *testing.T) {
	typed := quantity.Reading{Value: 0.4, PlusMinus: 0.1, Origin: quantity.Measured}
	assert.Equal(t, typed, Or("slot.liner", typed))
	assert.Equal(t, quantity.Known(0), Or("slot.liner", quantity.Known(0)), "nought is a value too")
	assert.Equal(t, quantity.Reading{Value: 0.25, Origin: quantity.Default}, Or("slot.liner", quantity.Reading{}))
	assert.Equal(t, "fan", OrWord("machine.cooling", "fan"))
	assert.Equal(t, "open", OrWord("machine.cooling", ""))
	assert.Equal(t, 1.0, DefaultOf("trial[2].circuits"), "of any trial")
	assert.Panics(t, func() { DefaultOf("slot.lining") })
	assert.Panics(t, func() { DefaultOf("machine.bore") }, "there is none")
	assert.Panics(t, func() { DefaultOf("machine.cooling") }, "it is a word")
	assert.Panics(t, func() { DefaultWord("slot.liner") }, "it is a number")
}

// An empty job's own words are the defaults: nothing else could stand in for them.
func TestEmptyJobMeansTheDefaults(t *testing.T) {
	assert.Equal(t, layout.Connection(0).String(), DefaultWord("trial.connection"))
	assert.Equal(t, layout.Connection(0).String(), DefaultWord("old.connection"))
	assert.Equal(t, layout.Kind(0).String(), DefaultWord("machine.kind"))
	for _, table := range []string{"old", "trial", "wound"} {
		assert.Equal(t, wiretable.Metal(0).String(), DefaultWord(table+".metal"))
		build, err := wiretable.ParseBuild(DefaultWord(table + ".build"))
		require.NoError(t, err)
		assert.Equal(t, wiretable.Build(0), build)
		gauge, err := wiretable.Parse("18 AWG")
		require.NoError(t, err)
		assert.Equal(t, DefaultOf(table+".strands"), float64(Wound{Gauge: gauge}.Bundle().Count()))
		assert.Equal(t, DefaultOf(table+".also_strands"), float64(Wound{Gauge: gauge, AlsoGauge: gauge}.Bundle().Count()-1))
	}
}

// A new file says for each field what it means to leave it out, and where that is from.
func TestTemplateNamesTheDefaults(t *testing.T) {
	plain := strings.Join(strings.Fields(strings.ReplaceAll(Template("a"), "\n#", " ")), " ")
	for _, s := range []string{"Empty: 0.25 mm, common practice, no source.", "Empty: 0.7, common practice, no source.",
		"Empty: 20 °C, the reference temperature of IEC 60028.", "Empty: one pole pitch.", "Empty: flooded, common practice, no source."} {
		assert.Contains(t, plain, s)
	}
}
