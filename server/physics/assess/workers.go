package assess

// each calls do for every number below count, on as many workers at once, and tells goesOn after each how many are done. It returns false, once all calls
// that were begun have ended, when goesOn said no. What do writes must lie apart for each number; then the outcome does not depend on the workers.
func each(count, workers int, goesOn func(done int) bool, do func(i int)) bool {
	if workers <= 1 || count <= 1 {
		for i := range count {
			do(i)
			if !goesOn(i + 1) {
				return false
			}
		}
		return true
	}
	jobs, ended := make(chan int), make(chan struct{})
	defer close(jobs)
	for range min(workers, count) {
		go func() {
			for i := range jobs {
				do(i)
				ended <- struct{}{}
			}
		}()
	}
	return hand(count, jobs, ended, goesOn)
}

// hand gives out the numbers and gathers the ends.
func hand(count int, jobs chan<- int, ended <-chan struct{}, goesOn func(done int) bool) bool {
	begun, done, going := 0, 0, true
	for done < begun || going && begun < count {
		open := jobs
		if !going || begun == count {
			open = nil
		}
		select {
		case open <- begun:
			begun++
		case <-ended:
			done++
			going = going && goesOn(done)
		}
	}
	return going
}
