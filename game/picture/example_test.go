package picture_test

import (
	"fmt"
	"groundbeat/game/picture"
	"os"
)

func ExampleWriteSVG() {
	p := picture.Picture{Height: 0.5}
	p.Dot(picture.InkBass, 0.25, 0.25, 0.2)
	p.Text(picture.InkOnBass, 0.25, 0.25, 0.2, "D").Strong()
	if err := picture.WriteSVG(os.Stdout, &p, "A dum", "One dum."); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 500" role="img" font-family="sans-serif">
	// <title>A dum</title>
	// <desc>One dum.</desc>
	// <circle cx="250" cy="250" r="200" class="fill-bass" fill="#7a4a0a"/>
	// <text x="250" y="322" font-size="200" text-anchor="middle" font-weight="700" class="fill-on-bass" fill="#fffaf0">D</text>
	// </svg>
}
