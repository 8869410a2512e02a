package api

import (
	"context"
	"fmt"
	"net/http"
	"strings"
	"time"

	"github.com/danielgtaylor/huma/v2"
	"rsc.io/qr"
)

// PairingAnswer is what a phone scans from the laptop's screen.
type PairingAnswer struct {
	Address string    `json:"address" doc:"the address with the code in it"`
	Until   time.Time `json:"until" doc:"after this the code lets nobody in"`
	Phones  int       `json:"phones" doc:"phones that are in"`
	Size    int       `json:"size" doc:"squares on a side of the code"`
	Path    string    `json:"path" doc:"its dark squares as the path of a drawing, one unit a square"`
}

func (s *Server) pairingRoutes(api huma.API) {
	tags := []string{"dock"}
	huma.Register(api, huma.Operation{OperationID: "pairing", Method: http.MethodGet, Path: "/pairing", Summary: "The code that lets a phone of the yard in", Tags: tags},
		func(context.Context, *struct{}) (*body[PairingAnswer], error) { return s.pairing(false) })
	huma.Register(api, huma.Operation{OperationID: "pairAgain", Method: http.MethodPost, Path: "/pairing", Summary: "A new code; the old one lets nobody in any more", Tags: tags},
		func(context.Context, *struct{}) (*body[PairingAnswer], error) { return s.pairing(true) })
	huma.Register(api, huma.Operation{OperationID: "turnOut", Method: http.MethodDelete, Path: "/pairing", Summary: "Turn every phone out", Tags: tags},
		func(context.Context, *struct{}) (*struct{}, error) {
			if s.Yard == nil {
				return nil, noYard()
			}
			s.Yard.Forget()
			return nil, nil
		})
}

func noYard() error {
	return huma.Error404NotFound("this program listens to this machine only; start it with oakum serve --yard to let phones in")
}

func (s *Server) pairing(renew bool) (*body[PairingAnswer], error) {
	if s.Yard == nil {
		return nil, noYard()
	}
	code, until := s.Yard.Code(renew)
	out := PairingAnswer{Address: s.Yard.Address + "/dock?code=" + code, Until: until, Phones: s.Yard.Phones()}
	drawn, err := qr.Encode(out.Address, qr.M)
	if err != nil {
		return nil, fmt.Errorf("the code can't be drawn: %w", err)
	}
	out.Size, out.Path = drawn.Size, squares(drawn)
	return answer(out), nil
}

// squares draws the dark squares, those that touch in a row as one.
func squares(c *qr.Code) string {
	var p strings.Builder
	for y := range c.Size {
		for x := 0; x < c.Size; x++ {
			if !c.Black(x, y) {
				continue
			}
			from := x
			for x < c.Size && c.Black(x, y) {
				x++
			}
			fmt.Fprintf(&p, "M%d %dh%dv1h-%dz", from, y, x-from, x-from)
		}
	}
	return p.String()
}
