package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// ISO 2533:1975 (pressures from memory, to the figures given).
func TestStandardAtmosphere(t *testing.T) {
	assert.InEpsilon(t, 101325, Pascal(0), 1e-12)
	assert.InEpsilon(t, 89874.6, Pascal(1000), 1e-5)
	assert.InEpsilon(t, 54019.9, Pascal(5000), 1e-5)
	assert.InEpsilon(t, 22632, Pascal(11000), 1e-4)
	assert.InEpsilon(t, 1.225, AirDensity(0, 15), 1e-5)
	assert.InEpsilon(t, 5.25588, exponent, 1e-6)
	assert.Less(t, AirDensity(0, 30), AirDensity(0, 0), "warm air is thinner")
}

func TestCheckAir(t *testing.T) {
	assert.NoError(t, CheckAir(500, 20))
	assert.ErrorContains(t, CheckAir(20000, 20), "20000 m")
	assert.ErrorContains(t, CheckAir(0, 273), "273 °C")
	assert.ErrorIs(t, CheckAir(math.NaN(), 0), ErrAir)
	assert.ErrorIs(t, CheckAir(0, math.NaN()), ErrAir)
	assert.True(t, finite(Pascal(1e9), Pascal(-1e9)), "held at the ends")
}
