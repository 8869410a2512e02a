package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"oakum/assess"
)

// DockTrialQuery is a docking tried otherwise than as she lies.
type DockTrialQuery struct {
	AsOf
	Dock    string   `query:"dock" required:"true" doc:"ID of the dock" example:"dock-skellby"`
	Stern   bool     `query:"stern" doc:"stern first"`
	Ballast bool     `query:"ballast" doc:"with the ballast moved as suggested for the dock"`
	Trim    string   `query:"trim" doc:"trim by the stern, m; as the marks say when left out"`
	KG      string   `query:"kg" doc:"height of her centre of gravity, m; as entered when left out"`
	Slope   string   `query:"slope" doc:"how much deeper the blocks lie aft than forward over her length, m; by the dock's record when left out"`
	Changes []string `query:"changes" doc:"IDs of courses and works whose weights are moved in dock"`
	Step    float64  `query:"step" minimum:"0" maximum:"5" doc:"step of the water level, m; 0.1 when left out"`
}

func (q DockTrialQuery) trial() (t assess.DockTrial, err error) {
	t = assess.DockTrial{Dock: q.Dock, Stern: q.Stern, Ballast: q.Ballast, Changes: q.Changes, Step: q.Step}
	for _, f := range []struct {
		name, text string
		to         **float64
		least      float64
		most       float64
	}{{"trim", q.Trim, &t.Trim, -5, 5}, {"kg", q.KG, &t.KG, 0, 80}, {"slope", q.Slope, &t.Slope, -5, 5}} {
		if *f.to, err = metres(f.name, f.text, f.least, f.most); err != nil {
			return t, err
		}
	}
	return t, nil
}

func (s *Server) dockingRoutes(api huma.API) {
	tags := []string{"docking"}
	huma.Register(api, huma.Operation{OperationID: "dock-sequence", Method: http.MethodGet, Path: "/docking/sequence", Summary: "A docking in water-level steps, and back out", Tags: tags},
		func(_ context.Context, q *DockTrialQuery) (*body[assess.DockSequence], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			t, err := q.trial()
			if err != nil {
				return nil, problem(err)
			}
			out, err := b.Sequence(t)
			return answer(out), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "dock-blocks", Method: http.MethodGet, Path: "/docking/blocks", Summary: "What the keel blocks carry, with some left out", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Dock    string `query:"dock" required:"true" doc:"ID of the dock" example:"dock-skellby"`
			Without []int  `query:"without" doc:"numbers of the blocks left out, counted from 1 aft"`
			Ballast bool   `query:"ballast" doc:"with the ballast moved as suggested for the dock"`
		}) (*body[assess.DockBlocks], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			out, err := b.Blocks(q.Dock, q.Without, q.Ballast)
			return answer(out), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "hull-shape", Method: http.MethodGet, Path: "/docking/shape", Summary: "Her hull as triangles", Tags: tags},
		func(_ context.Context, q *AsOf) (*body[assess.Shape], error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			out, err := b.Shape()
			return answer(out), problem(err)
		})
	s.floodingRoutes(api)
	s.contractRoutes(api)
}

func (s *Server) floodingRoutes(api huma.API) {
	tags := []string{"docking"}
	huma.Register(api, huma.Operation{OperationID: "flood", Method: http.MethodPost, Path: "/docking/flooding", Summary: "Holes, pumps and water through time", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Body assess.FloodTrial
		}) (*body[assess.FloodCase], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			out, err := b.Flood(q.Body)
			return answer(out), problem(err)
		})
	huma.Register(api, huma.Operation{OperationID: "flood-table", Method: http.MethodGet, Path: "/docking/flooding/table", Summary: "Every space, and every pair, open to the sea", Tags: tags},
		func(_ context.Context, q *AsOf) (*body[[]assess.FloodRow], error) {
			b, err := s.briefAsOf(*q)
			if err != nil {
				return nil, err
			}
			return answer(b.FloodTable()), nil
		})
	huma.Register(api, huma.Operation{OperationID: "try-weights", Method: http.MethodPost, Path: "/docking/weights", Summary: "How she floats with weights moved", Tags: tags},
		func(_ context.Context, q *struct {
			AsOf
			Body []assess.WeightMove `minItems:"1" maxItems:"200"`
		}) (*body[assess.WeightTrial], error) {
			b, err := s.briefAsOf(q.AsOf)
			if err != nil {
				return nil, err
			}
			out, err := b.TryWeights(q.Body)
			return answer(out), problem(err)
		})
}
