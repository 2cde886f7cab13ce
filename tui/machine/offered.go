package machine

import (
	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// offered checks whether this bench has something for the marked field, which is empty, and says so
// there: what, and from how many jobs. Only its key puts it in.
func (v *View) offered(s *session.Session, rows []form.Row) {
	id := v.form.Focused().ID
	v.offer, v.offers = s.Offer(id)
	if !v.offers {
		return
	}
	for i := range rows {
		if rows[i].ID == id {
			rows[i].Note, rows[i].NoteAs = "f9 takes "+v.offer.Typed, kit.Chosen
			rows[i].Help = session.OfferText(v.offer) + " " + rows[i].Help
		}
	}
}

// offerBindings is the key that takes what the bench has for the marked field.
func (v *View) offerBindings(s *session.Session) []kit.Binding {
	if !v.offers {
		return nil
	}
	return []kit.Binding{kit.Bind("Filling in", "f9", "take "+v.offer.Typed, "Put what this bench's records say into the marked field, which is empty, as a guess.", func() { s.TakeOffer(v.offer) })}
}
