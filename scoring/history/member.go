package history

import "slices"

// fields are those of the round's kind, and then those of any that may be absent.
func (r *Round) fields() []field {
	what, figures := r.own()
	return slices.Concat(r.asked(), what, r.circumstances(), figures, r.extras())
}

// own are those that only some kinds have: before and after those of all.
func (r *Round) own() (what, figures []field) {
	if own := r.kind().own; own != nil {
		return own(r)
	}
	return nil, nil
}

// foreign are those that other kinds have and the round's has not.
func (r *Round) foreign() []field {
	what, figures := r.own()
	mine := slices.Concat(what, figures)
	if r.kind().Play == Tapped {
		mine = append(mine, r.closely()...)
	}
	if extras := r.kind().extras; extras != nil {
		mine = append(mine, extras(r)...)
	}
	var all []field
	for _, k := range Kinds {
		what, figures := k.own(r)
		all = append(append(all, what...), figures...)
	}
	return slices.DeleteFunc(append(all, r.someExtras()...), func(f field) bool {
		return slices.ContainsFunc(mine, func(m field) bool { return m.name == f.name })
	})
}

func (r *Round) asked() []field {
	return []field{
		plain("kind", &r.Kind),
		plain("rhythm", &r.Rhythm),
		numeric("bpm", &r.BPM, 0, 20, 300),
		plain("riff", &r.Riff),
		numeric("eights", &r.Eights, 0, 1, 512),
		numeric("seed", &r.Seed, 0, 0, maxSeed),
	}
}

func (r *Round) circumstances() []field {
	return []field{
		plain("id", &r.ID),
		plain("when", &r.When),
		plain("output", &r.Output),
		numeric("epoch", &r.Epoch, 0, 0, maxCount),
		numeric("rate", &r.Rate, 0, 3000, 768000), // the range of the Web Audio API
		plain("coarse", &r.Coarse),
	}
}

// extras are those that are there only where they have something to tell. Those of
// other kinds are read too, and then refused: no reader may take them for its own.
func (r *Round) extras() []field {
	return append(r.someExtras(), extra(
		numeric("riffVersion", &r.RiffVersion, 0, 1, maxCount),
		numeric("hideAsked", &r.HideAsked, 0, 1, 100),
		numeric("hide", &r.Hide, 3, 0, 1),
		plain("helps", &r.Helps),
		plain("player", &r.Player),
	)...)
}

// someExtras are those of some kinds only.
func (r *Round) someExtras() (all []field) {
	for _, k := range Kinds {
		if k.extras != nil {
			all = append(all, k.extras(r)...)
		}
	}
	return append(all, r.closely()...)
}

func (r *Round) others() *[]member { return &r.rest }
