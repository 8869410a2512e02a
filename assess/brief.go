package assess

import (
	"context"
	"sync"

	"oakum/calc"
	"oakum/dossier"
	"oakum/futures"
	"oakum/quantity"
)

// Brief is everything the program has to say about one ship on one day. Pages, papers, the command line and the public update are views of it.
type Brief struct {
	Day      quantity.Date `json:"day"`
	Snapshot string        `json:"snapshot"` // SHA-256 over the records read, the plan and the day
	Name     string        `json:"name"`
	Front    Front         `json:"front"`
	Ship     ShipPage      `json:"ship"`
	Standing StandingPage  `json:"standing"`
	Outlook  OutlookPage   `json:"outlook"`
	Choices  ChoicesPage   `json:"choices"`
	Money    MoneyPage     `json:"money"`
	Docking  DockingPage   `json:"docking"`
	Calendar CalendarPage  `json:"calendar"`
	InDock   InDockPage    `json:"indock"`
	Record   RecordPage    `json:"record"`

	book *Book
	from *dossier.Dossier
	draw func() (*Drawing, error)
	// ask works what the Docking page tries; one trial at a time, because an inquiry keeps what it has worked out.
	ask   *inquiry
	tries *sync.Mutex
	// studies are those of the futures already made, by how many; kept under tries.
	studies map[int]*FuturesStudy
	// shell maps the readings over the shell.
	shell func() (*ShellMap, error)
	// model is the ship and the plans as the futures see them.
	model func() (*futures.Model, []futures.Plan)
	// again runs the futures of the brief once more, with another number of them.
	story func(which, future int, plans []string) (Story, error)
	again func(ctx context.Context, n int, progress func(done, of int), plans []string) (*FuturesPart, error)
}

// Sheet returns the sheet that a figure of the brief names.
func (b *Brief) Sheet(id string) (calc.Sheet, bool) { return b.book.Sheet(id) }

// SheetIDs lists the sheets of the brief in the order they were made.
func (b *Brief) SheetIDs() []string { return b.book.IDs() }

// Dossier is the records that the brief was made from, for papers that print records as they stand.
func (b *Brief) Dossier() *dossier.Dossier { return b.from }

// Front is the first page: the three places that worry, the date band, the money line, the decision due, and what is overdue.
type Front struct {
	Empty    bool     `json:"empty"` // nothing is known yet: the page leads in
	Sentence string   `json:"sentence"`
	Worst    []Figure `json:"worst"`
	When     *Figure  `json:"when,omitempty"`
	Money    *Figure  `json:"money,omitempty"`
	Decision *Notice  `json:"decision,omitempty"`
	Overdue  []Notice `json:"overdue"`
	Missing  []Notice `json:"missing"` // what to enter next, most useful first
}

// Notice is one thing to know or to do, about a record.
type Notice struct {
	What  string `json:"what"`
	Do    string `json:"do,omitempty"`
	Due   string `json:"due,omitempty"` // ISO date
	Who   string `json:"who,omitempty"`
	Kind  string `json:"kind,omitempty"`
	ID    string `json:"id,omitempty"`
	Place string `json:"place,omitempty"`
	Page  string `json:"page,omitempty"`
	Worry int    `json:"worry"`
}

// Assess makes the brief. A page whose inputs are missing says what is missing and the others still work.
func Assess(d *dossier.Dossier, p Plan, day quantity.Date) *Brief { return new(Memo).Assess(d, p, day) }

func (c *inquiry) brief() *Brief {
	b := &Brief{Day: c.day, Name: c.name(), Snapshot: c.snapshot(), book: c.book, from: c.d}
	b.Ship = c.shipPage()
	b.Standing = c.standingPage()
	b.Outlook = c.outlookPage(b.Standing)
	b.Choices = c.choicesPage()
	b.Money = c.moneyPage(b)
	b.Docking = c.dockingPage()
	b.Calendar = c.calendarPage(b)
	b.InDock = c.inDockPage(b.Money)
	b.Record = c.recordPage(b)
	b.Front = c.front(b)
	b.story = func(which, future int, plans []string) (Story, error) {
		return c.story(b.Outlook.parts, which, future, plans)
	}
	b.again = func(ctx context.Context, n int, progress func(done, of int), plans []string) (*FuturesPart, error) {
		return c.futures(ctx, b.Outlook.parts, n, progress, plans)
	}
	b.model = func() (*futures.Model, []futures.Plan) {
		list, err := c.compared(b.Outlook.parts, nil)
		if err != nil {
			return nil, nil
		}
		plans := make([]futures.Plan, len(list))
		for i := range list {
			plans[i] = list[i].plan
		}
		return list[0].model, plans
	}
	b.shell = c.shellMap(&b.Standing)
	b.ask, b.tries = c, new(sync.Mutex)
	b.draw = sync.OnceValues(func() (*Drawing, error) { return c.drawing(b) })
	return b
}
