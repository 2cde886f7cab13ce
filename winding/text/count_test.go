package text

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCount(t *testing.T) {
	assert.Equal(t, []string{"0 slots", "1 slot", "2 slots", "1/2 slots"}, []string{Count(0, "slot"), Count(1, "slot"), Count("2", "slot"), Count("1/2", "slot")})
}
