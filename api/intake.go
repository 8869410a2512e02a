package api

import "github.com/danielgtaylor/huma/v2"

// Intake is what the API needs of whoever reads spreadsheets.
type Intake interface{}

func (s *Server) intakeRoutes(huma.API) {}
