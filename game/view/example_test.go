package view_test

import (
	"fmt"

	"groundbeat/assets"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// A page gets its bar by itself: the way home, and the filled button at its end.
func ExamplePage() {
	w, _ := say.Load(assets.Words)
	s := view.Page(w, view.ScreenListen, "Listen", []view.Item{
		view.Heading("heading", "Listen"),
		{ID: "play", Role: view.RoleButton, Name: "Play", Action: view.ActPlay, Look: view.LookPrimary},
		{ID: "how", Role: view.RoleText, Text: "One cycle after another."},
	})
	fmt.Println(s.Title)
	s.Each(func(it *view.Item) { fmt.Println(it.Role, it.ID) })
	// Output:
	// Listen – Groundbeat
	// heading heading
	// group bar
	// button home
	// button play
	// text how
}

func ExampleSayBalance() {
	w, _ := say.Load(assets.Words)
	for _, n := range []int{-100, 0, 100} {
		fmt.Println(view.SayBalance(w, n))
	}
	// Output:
	// lead drum alone
	// both drums alike
	// bass drum alone
}
