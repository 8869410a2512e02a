package api

import (
	"net/http"
	"strings"
	"testing"
)

// The stream of the contract refuses a sum that is none as the plain answer does, and ends with the plain answer.
func TestContractIsStreamed(t *testing.T) {
	s, _ := served(t)
	base := s.URL + "/api/v1/money/contract"
	plain, bad := ask(t, "GET", base, ""), ask(t, "GET", base+"/run?money=much", "")
	if !strings.Contains(bad.text, "event: refused") || !strings.Contains(bad.text, "money: \\\"much\\\" is no sum of money") {
		t.Errorf("refused: %s", bad.text)
	}
	if bad := ask(t, "GET", base+"?money=much", ""); bad.status != http.StatusUnprocessableEntity {
		t.Errorf("plain: %d %s", bad.status, bad.text)
	}
	run := ask(t, "GET", base+"/run", "")
	if says := plain.body["says"].([]any)[0].(string); !strings.Contains(run.text, "event: done") || !strings.Contains(run.text, says) {
		t.Errorf("%q is not in %s", says, run.text)
	}
}
