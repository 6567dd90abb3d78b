package stat

// correlation returns the autocorrelation at lag 1 of deviations. at are their
// places, ascending whole numbers, nil for 0, 1, 2, …: only those at places
// that follow one another are neighbours. Where some are missing it is the
// mean product of the neighbours over the mean square of all (Parzen, On
// spectral analysis with missing observations and amplitude modulation,
// Sankhyā A 25, 383–392, 1963). There is none without neighbours, and none
// where all deviations are 0.
func correlation(d []float64, at []int) (r float64, ok bool) {
	var products, squares float64
	neighbours := 0
	for i, v := range d {
		squares += v * v
		if i > 0 && (at == nil || at[i] == at[i-1]+1) {
			products += v * d[i-1]
			neighbours++
		}
	}
	if neighbours == 0 || squares == 0 {
		return 0, false
	}
	return products / squares * float64(len(d)-1) / float64(neighbours), true
}

// stretch returns by how much the variance of a mean grows because residuals are
// like their neighbours: (1+h)/(1−h), as [mean] says; 1 where there are none.
func stretch(residuals []float64, at []int) float64 {
	r, ok := correlation(residuals, at)
	if !ok {
		return 1
	}
	n := float64(len(residuals))
	h := min(max((n*r+1)/(n-4), 0), .9)
	return (1 + h) / (1 - h)
}
