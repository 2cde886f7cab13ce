package quantity

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFigureInJSON(t *testing.T) {
	for _, c := range []struct {
		f    Figure
		want string
	}{
		{Missing("needs the turns"), `{"value":null,"why":"needs the turns"}`},
		{Of(math.NaN()), `{"value":null,"why":"the inputs are out of range"}`},
		{Figure{Value: math.Inf(1), Origin: Derived}, `{"value":null,"why":"the inputs are out of range"}`},
		{Of(0), `{"value":0,"from":"derived"}`},
		{Reading{Value: 38, PlusMinus: 0.5, Origin: Measured}.Figure(""), `{"value":38,"plus_minus":0.5,"from":"measured"}`},
		{Reading{Value: 38, Origin: Guessed}.Figure(""), `{"value":38,"from":"guessed"}`},
		{Reading{}.OrReading(7).Figure(""), `{"value":7,"from":"default"}`},
		{Reading{}.OrReading(7).Figure("").Times(2).Because("twice"), `{"value":14,"from":"guessed","why":"twice"}`},
		{Known(7).Figure("").Times(2), `{"value":14,"from":"derived"}`},
	} {
		b, err := json.Marshal(c.f)
		require.NoError(t, err)
		assert.JSONEq(t, c.want, string(b))
	}
}

// A guess and a default weigh alike in what follows from them; a measurement does not.
func TestWeak(t *testing.T) {
	for origin, weak := range map[Origin]bool{Absent: false, Measured: false, Derived: false, Guessed: true, Default: true} {
		assert.Equal(t, weak, origin.Weak(), origin.String())
		assert.Equal(t, weak, Of(1, Measured, origin).Origin == Guessed, origin.String())
	}
}
