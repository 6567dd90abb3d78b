package stat

// LeftOut returns which of several kinds of stroke is left out more than the others by
// more than chance, or −1: of kind k out[k] were left out of asked[k]. If each stroke is
// left out as easily as any other, the number of those of one kind among all that are
// left out is hypergeometric; the kind is returned for which
//
//	P(X ≥ outₖ) ≤ 5 %/K
//
// and is the least, K being the kinds that were asked for (Fisher, The design of
// experiments, 1935, §11 for the test, one-sided; Bonferroni's inequality for the kinds
// that are looked at). One kind alone has no others. It panics if the lists differ in
// length, or more are left out than were asked for.
func LeftOut(out, asked []int) int {
	if len(out) != len(asked) {
		panic("stat: as many left out as asked for are needed")
	}
	left, all, kinds := 0, 0, 0
	for k, n := range asked {
		if out[k] < 0 || out[k] > n {
			panic("stat: more strokes left out than asked for")
		}
		left, all = left+out[k], all+n
		if n > 0 {
			kinds++
		}
	}
	which, least := -1, 2*tail/float64(max(1, kinds))
	for k, n := range asked {
		if p := atLeast(out[k], n, left, all); kinds > 1 && out[k] > 0 && p <= least {
			which, least = k, p
		}
	}
	return which
}

// atLeast is the probability that of so many left out of all, k or more are among n
// that were chosen beforehand.
func atLeast(k, n, left, all int) float64 {
	p := 0.
	for i := k; i <= min(n, left); i++ {
		p += choose(n, i) * choose(all-n, left-i) / choose(all, left)
	}
	return p
}

// choose is in how many ways k of n can be chosen; 0 where that cannot be.
func choose(n, k int) float64 {
	if k < 0 || k > n {
		return 0
	}
	ways := 1.
	for i := range k {
		ways *= float64(n-i) / float64(i+1)
	}
	return ways
}
