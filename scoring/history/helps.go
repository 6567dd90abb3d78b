package history

// Helps are the helps for the ear that were used in a round. They are recorded
// and never held against the player.
type Helps struct {
	Balance int  // how far towards the bass drum, −100 to 100; below 0 the lead drum
	Bass    int  // how often the bass drum was heard alone for one eight
	Hands   bool // whether the drummer's hands were shown

	rest []member
}

func (h *Helps) fields() []field {
	return extra(
		numeric("balance", &h.Balance, 0, -100, 100),
		numeric("bass", &h.Bass, 0, 1, maxCount),
		plain("hands", &h.Hands),
	)
}

func (h *Helps) others() *[]member { return &h.rest }
