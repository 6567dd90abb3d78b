package screenproof_test

import (
	"fmt"
	"os"

	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func ExampleDump() {
	s := view.Screen{ID: "dums", Title: "This round does not count", Lang: "en", Dir: "ltr", Items: []view.Item{
		view.Heading("heading", "This round does not count"),
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
			{ID: "once", Role: view.RoleButton, Name: "Once more", Action: view.ActOnce, Look: view.LookPrimary},
		}},
	}}
	if err := screenproof.Dump(os.Stdout, s); err != nil {
		fmt.Println(err)
	}
	// Output:
	// screen dums "This round does not count" lang=en dir=ltr focus=heading
	//   heading #heading h1 "This round does not count"
	//   group #next look=row
	//     button #once "Once more" do=once look=primary
}
