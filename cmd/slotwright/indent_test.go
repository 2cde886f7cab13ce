package main

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/text"
)

// JSON is laid out as the library does where no number has more digits than are written.
func TestIndentedAsTheLibraryDoes(t *testing.T) {
	for _, plain := range []string{
		`{}`, `{"a":{}}`, `{"a":[]}`, `[]`, `[[],[{}],[1]]`, `{"a":1,"b":[1,-2,3.5],"c":{"d":null,"e":true}}`,
		`{"a \"q\" {[,:]}":"b\\","c":"\\\"","d":"{\"1\":[2,3]}","é – 30 °C":"–"}`, `[0.25,100000,"1e5 0.1234567890"]`,
	} {
		var want bytes.Buffer
		require.NoError(t, json.Indent(&want, []byte(plain), "", "  "))
		assert.Equal(t, want.String(), string(indented([]byte(plain), text.Steers)))
	}
}

func TestIndentedRoundsAndEscapes(t *testing.T) {
	assert.Equal(t, "[\n  1.23457,\n  -1.5e-7,\n  0,\n  \"1.23456789\"\n]", string(indented([]byte(`[1.23456789,-1.5e-7,-1e-20,"1.23456789"]`), text.Steers)))
	assert.Equal(t, `"a\u007f\u202eb–"`, string(indented([]byte("\"a\x7f\u202eb–\""), text.Steers)))
	assert.Equal(t, `"\u2013 \ud83d\ude00 ~"`, string(indented([]byte("\"– 😀 ~\""), beyondASCII)))
}

// A number is written as the library writes its rounded value.
func TestNumbersAsTheLibraryWritesThem(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 11))
	list := []float64{1, 10, 100000, 1e6, 123456, 1234567, 0.1, 1e-6, 9.9999999e-7, 1e-7, 99999.95, 999999.5, 1e20, 1e21, 1.5e22, -0.5, -1234.5678}
	for range 20000 {
		list = append(list, (r.Float64()+0.01)*math.Pow(10, 34*r.Float64()-9))
	}
	for _, v := range list {
		rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', jsonDigits-1, 64), 64)
		require.NoError(t, err)
		want, err := json.Marshal(rounded)
		require.NoError(t, err)
		require.Equal(t, string(want), string(appendNumber(nil, strconv.AppendFloat(nil, v, 'g', -1, 64))), "%v", v)
	}
}
