package main

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"slotwright/winding"
	"slotwright/winding/job"
)

// BenchmarkPrintJSON is the answer of report for a job in wind, once it is worked out.
func BenchmarkPrintJSON(b *testing.B) {
	d, _, err := job.Load("../../testdata/jobs/wind-good.toml")
	require.NoError(b, err)
	o := winding.Evaluate(d.Job())
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, printJSON(io.Discard, asReported(&o)))
	}
}
