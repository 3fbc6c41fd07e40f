package page

import (
	"net/url"
	"strconv"
	"testing"

	"evenrow/wasm/grower/plan"
)

// A change of a plan: the answer, and everything that is explored after it. What
// is changed is the name, so that each example stays what it is an example of.
func BenchmarkEdit(b *testing.B) {
	for _, e := range plan.Examples() {
		b.Run(e.Key, func(b *testing.B) {
			var s Session
			data, _ := url.ParseQuery(plan.DraftOf(e.Plan).Encode())
			for n := range b.N {
				data.Set("name", "change "+strconv.Itoa(n))
				data.Del(StepName)
				for next := s.Answer(data.Encode()).More; next > 0; {
					data.Set(StepName, strconv.Itoa(next))
					next = s.Rest(data.Encode()).More
				}
			}
		})
	}
}
