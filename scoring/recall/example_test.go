package recall_test

import (
	"fmt"

	"groundbeat/scoring/recall"
)

func Example() {
	model := recall.Default()
	m := model.After(recall.Memory{}, 0, recall.Right) // today
	m = model.After(m, 3, recall.Right)                // three days later
	fmt.Printf("in a week it is told with probability %.2f\n", model.Recall(m, 7))
	// Output:
	// in a week it is told with probability 0.94
}
