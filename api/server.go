package api

import (
	"net/http"
	"net/url"
	"reflect"
	"strings"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"

	"oakum/app"
)

// version of the description; it rises when a route or a type changes.
const version = "0.1.0"

// Server serves one ship.
type Server struct {
	app *app.App
	// By names whoever writes when a request does not say.
	By string
	// Papers makes the printed papers; nil serves none.
	Papers Papers
	// News tells people outside; nil tells nobody.
	News News
	// Intake reads spreadsheets; nil reads none.
	Intake Intake

	// Yard lets phones of the local network in; nil lets none.
	Yard *Yard

	tables openTables
}

// New returns a server for an open ship.
func New(a *app.App) *Server { return &Server{app: a, By: "keeper"} }

// Handler serves the API under /api/v1 and everything else from pages.
func (s *Server) Handler(pages http.Handler) http.Handler {
	mux := http.NewServeMux()
	s.register(mux)
	mux.Handle("/", pages)
	return guarded(mux)
}

// Description is the OpenAPI description as YAML.
func Description() ([]byte, error) {
	s := &Server{}
	return s.register(http.NewServeMux()).OpenAPI().YAML()
}

func (s *Server) register(mux *http.ServeMux) huma.API {
	huma.DefaultArrayNullable = false // an empty list is [], never null
	config := huma.DefaultConfig("Oakum", version)
	config.Info.Description = "One ship: what is known of her, the brief made from it, and the methods by hand."
	config.OpenAPIPath, config.DocsPath, config.SchemasPath = "/api/openapi", "", "/api/schemas"
	config.CreateHooks = nil // no $schema links in the answers
	config.Components.Schemas = huma.NewMapRegistry("#/components/schemas/", schemaName)
	api := humago.New(mux, config)
	v1 := huma.NewGroup(api, "/api/v1")
	s.shipRoutes(v1)
	s.briefRoutes(v1)
	s.methodRoutes(v1)
	s.futuresRoutes(v1)
	s.dockingRoutes(v1)
	s.kindRoutes(v1)
	s.recordRoutes(v1)
	s.decideRoutes(v1)
	s.journalRoutes(v1)
	s.fileRoutes(v1)
	s.paperRoutes(v1)
	s.intakeRoutes(v1)
	s.dockRoutes(v1)
	s.pairingRoutes(v1)
	return api
}

// schemaName names a type by its package and its name, since several packages have a Step.
func schemaName(t reflect.Type, hint string) string {
	name := huma.DefaultSchemaNamer(t, hint)
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	own, ok := strings.CutPrefix(t.PkgPath(), "oakum/")
	if !ok || own == "api" || t.Name() == "" {
		return name
	}
	own = own[strings.LastIndex(own, "/")+1:]
	return strings.ToUpper(own[:1]) + own[1:] + name
}

// guarded lets no other site write, and answers only to the name it was asked by on this machine: a page of another site can neither send here nor be
// pointed here by a name of its own.
func guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if origin := r.Header.Get("Origin"); origin != "" && !sameHost(origin, r.Host) {
			http.Error(w, "a page of another site may not do this", http.StatusForbidden)
			return
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead && crossSite(r.Header.Get("Sec-Fetch-Site")) {
			http.Error(w, "a page of another site may not do this", http.StatusForbidden)
			return
		}
		next.ServeHTTP(w, r)
	})
}

func sameHost(origin, host string) bool {
	u, err := url.Parse(origin)
	return err == nil && strings.EqualFold(u.Host, host)
}

func crossSite(site string) bool { return site == "cross-site" || site == "same-site" }
