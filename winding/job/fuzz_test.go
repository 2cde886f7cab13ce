package job

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"slotwright/winding/quantity"
	words "slotwright/winding/text"
)

// editSoundly makes an edit and fails the test unless it was taken, with everything else as
// it was, or refused with a reason and nothing changed.
func editSoundly(t *testing.T, d Document, path, typed string, choice quantity.Choice) Document {
	t.Helper()
	n := d.Set(path, typed, choice)
	if why := n.Refused(); why != "" {
		if n.Text() != d.Text() {
			t.Fatalf("set %s to %q: refused (%s), and changed\n%q\ninto\n%q", path, typed, why, d.Text(), n.Text())
		}
		return d
	}
	unbroken(t, d, n, path, typed)
	if _, _, ok := n.Typed(path); !ok && strings.TrimSpace(typed) != "" {
		t.Fatalf("set %s to %q: neither taken nor refused:\n%q\n---\n%q", path, typed, d.Text(), n.Text())
	}
	return n
}

// placed fails the test when a problem has a place outside its text, or would steer a terminal.
func placed(t *testing.T, d Document) {
	t.Helper()
	lines := strings.Split(strings.TrimPrefix(d.Text(), byteOrderMark), "\n")
	for _, p := range d.Problems() {
		if p.Line < 1 || p.Line > len(lines) || p.Column < 1 || p.Column > utf8.RuneCountInString(lines[p.Line-1])+1 {
			t.Fatalf("a problem outside its line: %+v in\n%q", p, d.Text())
		}
		if strings.ContainsFunc(p.Error(), words.Steers) {
			t.Fatalf("%q steers", p.Error())
		}
	}
}

// FuzzEdit: any text, in which any field is given anything and is then cleared.
func FuzzEdit(f *testing.F) {
	for i, text := range jobTexts(f) {
		f.Add(text, uint8(7*i), uint8(i%3), "12.5", i%2 == 0)
	}
	f.Add("machine = { slots = 36 }\n", uint8(9), uint8(0), "\"\"\"", false)
	f.Add("[[trial]]\nname = '''\n\n[[trial]]\n", uint8(200), uint8(1), "x\ny", true)
	f.Fuzz(func(t *testing.T, text string, which, entry uint8, typed string, inch bool) {
		if CheckText(text) != nil || !utf8.ValidString(typed) || len(text) > 1<<14 || len(typed) > 1<<10 {
			return
		}
		d := Parse(text)
		placed(t, d)
		in := &Fields[int(which)%len(Fields)]
		path := in.PathAt(int(entry))
		n := editSoundly(t, d, path, typed, quantity.Choice{Inch: inch})
		placed(t, n)
		editSoundly(t, n, path, "", quantity.Choice{})
	})
}

// FuzzMutations: the stored jobs with accidents that happen to such a text, edited at
// random. The seed leads to the accidents.
func FuzzMutations(f *testing.F) {
	texts := jobTexts(f)
	f.Add(uint64(1), uint8(0), uint8(1), uint8(3))
	f.Add(uint64(2), uint8(4), uint8(5), uint8(1))
	f.Fuzz(func(t *testing.T, seed uint64, which, accidents, edits uint8) {
		r := rand.New(rand.NewPCG(seed, 11))
		text := texts[int(which)%len(texts)]
		for range accidents % 8 {
			text = mutated(r, text)
		}
		d := Parse(text)
		placed(t, d)
		for range edits % 8 {
			path := somePath(r, d)
			in, _ := InputAt(path)
			d = editSoundly(t, d, path, someValue(r, in), quantity.Choice{Inch: r.IntN(2) == 0})
		}
		placed(t, d)
		grownAndShrunk(t, d, r)
	})
}

// grownAndShrunk gives a table one entry more and takes it away again: what else there is stays.
func grownAndShrunk(t *testing.T, d Document, r *rand.Rand) {
	t.Helper()
	table := []string{"trial", "spin"}[r.IntN(2)]
	most := d.Count(table)
	n := d.Add(table, r.IntN(most+1)-1)
	if n.Refused() != "" || most >= mustTable(table).Most {
		if n.Text() != d.Text() {
			t.Fatalf("refused, and changed:\n%q\n%q", d.Text(), n.Text())
		}
		return
	}
	for name, doc := range map[string]Document{"added": n, "taken away": n.Remove(table, most)} {
		for p, e := range d.entries {
			if got, _, ok := doc.Typed(p); !ok || got != e.typed {
				t.Fatalf("%s %s %d: %s was %q, is %q (%v):\n%q\n---\n%q", table, name, most, p, e.typed, got, ok, d.Text(), doc.Text())
			}
		}
	}
}

func mustTable(name string) *Table {
	t, _ := TableOf(name)
	return t
}
