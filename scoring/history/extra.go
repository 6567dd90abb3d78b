package history

// Helps are the helps for the ear that were used in a round. They are recorded
// and never held against the player.
type Helps struct {
	Balance int  // how far towards the bass drum, −100 to 100; below 0 the lead drum
	Bass    int  // how often the bass drum was heard alone for one eight
	Hands   bool // whether the drummer's hands were shown

	rest []member
}

// extras are the members that are there only where they have something to tell.
func (r *Round) extras() []field {
	return []field{
		{"early", &r.Early, 0, 1, maxCount},
		{"riffVersion", &r.RiffVersion, 0, 1, maxCount},
		{"hideAsked", &r.HideAsked, 0, 1, 100},
		{"hide", &r.Hide, 3, 0, 1},
		{"helps", &r.Helps, 0, 0, 0},
		{"player", &r.Player, 0, 0, 0},
	}
}

func (h *Helps) extras() []field {
	return []field{
		{"balance", &h.Balance, 0, -100, 100},
		{"bass", &h.Bass, 0, 1, maxCount},
		{"hands", &h.Hands, 0, 0, 0},
	}
}

func (t *Tap) extras() []field     { return nil }
func (r *Reading) extras() []field { return nil }
func (h *Helps) fields() []field   { return nil }
func (h *Helps) others() *[]member { return &h.rest }

// told returns those of an object's fields that are written: all, but for extras
// that have nothing to tell.
func told(o object) []field {
	all := o.fields()
	for _, f := range o.extras() {
		if !f.empty() {
			all = append(all, f)
		}
	}
	return all
}

// nothing reports whether an object has nothing to write.
func nothing(o object) bool { return len(told(o)) == 0 && len(*o.others()) == 0 }
