package plan

// Season is income that stops while she is away: visitors, hire, events.
type Season struct {
	Name     string   `key:"name" label:"season"`
	Begins   *int     `key:"begins" label:"first month" min:"1" max:"12"`
	Ends     *int     `key:"ends" label:"last month" min:"1" max:"12"`
	Income   *float64 `key:"income" unit:"money" label:"income of the season" min:"0"`
	Net      *float64 `key:"net" unit:"-" label:"share left after costs that stop too" min:"0" max:"1"`
	Visitors *int     `key:"visitors" label:"visitors" min:"0"`
	Keeps    *float64 `key:"keeps" unit:"-" label:"share kept while she is in dock" help:"dock tours" min:"0" max:"1"`
	Notes    string   `key:"notes" label:"notes" optional:"yes"`
}
