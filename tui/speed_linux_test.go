package tui

import (
	"fmt"
	"os"
	"slices"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// cpu is the processor time of this program so far, all of its threads.
func cpu(t testing.TB) time.Duration {
	var use syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &use))
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}

// fourTrials is a job of testdata with four trials, "" the example.
func fourTrials(t testing.TB, name string) job.Document {
	doc := job.Example()
	if name != "" {
		text, err := os.ReadFile("../testdata/jobs/" + name)
		require.NoError(t, err)
		doc = job.Parse(string(text))
	}
	for n := len(doc.Job().Trials); n < 4; n++ {
		more := doc.Job().Trials[n-1].Turns.Whole() + 1
		doc = doc.Add("trial", n-1)
		doc = doc.Set(fmt.Sprintf("trial[%d].name", n), string(rune('A'+n)), quantity.Choice{})
		doc = doc.Set(fmt.Sprintf("trial[%d].turns", n), fmt.Sprint(more), quantity.Choice{})
	}
	require.Len(t, doc.Job().Trials, 4)
	return doc
}

// BenchmarkKeyToFrame adds or removes a turn of one of four trials, from the key to the finished frame
// at 120×40, on every screen, and types a digit of the stack, which all trials share: processor time of
// all threads. Between keys the collector runs as in the program; its time is reported separately.
func BenchmarkKeyToFrame(b *testing.B) {
	for _, name := range []string{"", "wind-good.toml"} {
		m := New(session.New(fourTrials(b, name), "", job.Mark{}), recovery.Store{})
		m.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
		for i, view := range m.views {
			b.Run(fmt.Sprintf("%s/%s", orExample(name), view.Name()), func(b *testing.B) {
				m.show(i)
				m.timeKeys(b, func(n int) { m.s.StepTurns(1 - 2*(n%2)) })
			})
		}
		b.Run(orExample(name)+"/shared", func(b *testing.B) {
			m.show(0)
			m.timeKeys(b, func(n int) { m.s.Edit(m.s.Document().Set("machine.stack", fmt.Sprint(30+n%2), m.s.Units)) })
		})
	}
}

// timeKeys reports the processor time of keys and their frames.
func (m *Model) timeKeys(b *testing.B, press func(n int)) {
	var took []time.Duration
	var tidied time.Duration
	var tidier session.Tidier
	for n := 0; b.Loop(); n++ {
		from := cpu(b)
		press(n)
		m.fit()
		_ = m.View()
		done := cpu(b)
		tidier.Tidy()
		took, tidied = append(took, done-from), tidied+cpu(b)-done
	}
	slices.Sort(took)
	ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
	b.ReportMetric(ms(took[len(took)/2]), "cpu-ms/key")
	b.ReportMetric(ms(took[len(took)*99/100]), "p99-cpu-ms")
	b.ReportMetric(ms(tidied/time.Duration(len(took))), "collector-cpu-ms/key")
}

func orExample(name string) string {
	if name == "" {
		return "example"
	}
	return name
}
