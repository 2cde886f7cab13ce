package main

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"slotwright/winding"
	"slotwright/winding/job"
)

// BenchmarkPrintJSON prints the report of a job in wind, already computed.
func BenchmarkPrintJSON(b *testing.B) {
	d, _, err := job.Load("../../testdata/jobs/wind-good.toml")
	require.NoError(b, err)
	o := winding.Evaluate(d.Job())
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, printJSON(io.Discard, asReported(&o)))
	}
}
