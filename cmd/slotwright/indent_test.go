package main

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/text"
)

// JSON is laid out as the library lays it out, where no number has more digits than are written.
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
