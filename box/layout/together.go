package layout

import (
	"runtime"
	"sync"
)

// together runs f(0) to f(n-1), side by side as far as there are processors.
// What is computed must not depend on the order.
func together(n int, f func(int)) {
	if n == 1 {
		f(0)
		return
	}
	var wg sync.WaitGroup
	gate := make(chan struct{}, max(1, runtime.GOMAXPROCS(0)))
	for i := 0; i < n; i++ {
		wg.Add(1)
		gate <- struct{}{}
		go func() {
			defer wg.Done()
			f(i)
			<-gate
		}()
	}
	wg.Wait()
}
