package api

import (
	"net/http"
	"regexp"
	"slices"
	"testing"

	"github.com/danielgtaylor/huma/v2"
)

// A parameter of an address that no field of the request takes would be lost in silence: the handler would see an empty ID.
func TestEveryPartOfAnAddressIsTaken(t *testing.T) {
	part := regexp.MustCompile(`\{(\w+)\}`)
	s := &Server{}
	for path, item := range s.register(http.NewServeMux()).OpenAPI().Paths {
		for _, op := range []*huma.Operation{item.Get, item.Post, item.Put, item.Delete} {
			if op == nil {
				continue
			}
			for _, name := range part.FindAllStringSubmatch(path, -1) {
				if !slices.ContainsFunc(op.Parameters, func(p *huma.Param) bool { return p.In == "path" && p.Name == name[1] }) {
					t.Errorf("%s %s: nothing takes %s", op.Method, path, name[1])
				}
			}
		}
	}
}
