package assess

import (
	"cmp"
	"math"
	"regexp"
	"slices"

	"oakum/calc"
	"oakum/dossier"
	"oakum/field"
	"oakum/formula/estimate"
	"oakum/formula/money"
	"oakum/plan"
	"oakum/quantity"
)

// EnoughRow is the chance that what can be signed for pays for a scope.
type EnoughRow struct {
	Scope   string `json:"scope"`
	Chance  Figure `json:"chance"`
	Needed  Figure `json:"needed"`
	Lacking Figure `json:"lacking"`
}

// sign says what can be signed for today, how likely that is enough, and when the plan in force can be signed.
func (c *inquiry) sign(p *MoneyPage) {
	if !p.held {
		return
	}
	in := c.signIn(p)
	p.call = in
	sheet, out, err := work(c.book, money.Sign, "today", "what can be signed for on "+c.day.Words(), in, signGiven())
	if err != nil {
		p.Missing = append(p.Missing, Notice{What: "What can be signed can't be worked out: " + refusalWords(err) + ".", Do: "Correct that entry.", Kind: "pot", Page: "money", Worry: 1})
		return
	}
	p.signable = new(out.Free)
	for _, l := range [][2]string{{"free_to_sign", "can be signed for today"}, {"own", "own money free for it"}, {"matched", "grants that it earns"}, {"promise_limit", "limit by all that will be there"}, {"cash_limit", "limit by the cash while the bills come"}} {
		p.Sign = append(p.Sign, result(sheet, l[0], l[1]))
	}
	cell := func(key, label string, x float64, unit string) Figure {
		f := known(key, label, x, unit, field.Computed, "")
		f.Sheet = sheet.ID
		return f
	}
	for _, e := range out.Enough {
		p.Enough = append(p.Enough, EnoughRow{Scope: e.Scope, Chance: cell("chance", "chance that it is enough", e.Chance, "%"), Needed: cell("needed", "sum to sign it with", e.Needed, "money"), Lacking: cell("lacking", "still lacking", e.Lacking, "money")})
	}
	if p.Signing = c.signingDate(sheet, out); p.Signing != nil {
		p.SignBands = append(p.SignBands, c.signBand(p.Signing, out.Signing))
	}
	c.signIf(p, in)
	for _, w := range out.Warnings {
		p.Missing = append(p.Missing, Notice{What: sentence(leadingSum.ReplaceAllString(w, "$0 "+c.currency())), Kind: "pot", Page: "money"})
	}
}

// leadingSum is a sum at the head of a warning: a formula knows no currency.
var leadingSum = regexp.MustCompile(`^[0-9][0-9\pZ]*[0-9]`)

// signIn is the call: what is in hand, less what a restricted pot can't spend on the plan.
func (c *inquiry) signIn(p *MoneyPage) money.SignIn {
	in := money.Sign.New()
	l := p.ledger
	in.InHand, in.Committed, in.Reserve, in.Pledges, in.AsOf = max(l.InHand-c.unusable(p), 0), max(l.Committed, 0), l.Reserve, l.PledgesCounted, c.day
	in.Late = min(c.latePledges(l), in.Pledges)
	for _, e := range dossier.All[plan.Grant](c.d) {
		if b := e.Body; b.State == "awarded" && b.Cap != nil {
			in.Grants = append(in.Grants, openGrant(b))
		}
	}
	if p.priced {
		in.Scopes = append(in.Scopes, scopePrice("the plan in force", p.total))
	}
	if out, ok := c.mustEstimate(); ok {
		p.must = &out
		in.Scopes = append(in.Scopes, scopePrice("the works that must be done", out))
	}
	in.Receipts = c.givingSoFar()
	return in
}

// scopePrice puts an estimate as a triangle with its mean and deviation, so that both sheets say the same.
func scopePrice(name string, e estimate.EstimateOut) money.ScopePrice {
	half := e.SD * math.Sqrt(6) // a symmetric triangle of this half width has that deviation
	return money.ScopePrice{Name: name, Low: max(e.Mean-half, 0), Likely: e.Mean, High: e.Mean + half, Kind: "triangular"}
}

// mustEstimate is the estimate of the works that must be done, with what they need.
func (c *inquiry) mustEstimate() (out estimate.EstimateOut, ok bool) {
	take := map[string]bool{}
	var add func(id string)
	add = func(id string) {
		w, found := dossier.Find[plan.Work](c.d, id)
		if !found || take[id] || w.Body.State == "dropped" || w.Body.State == "done" {
			return
		}
		take[id] = true
		for _, need := range w.Body.Needs {
			add(need)
		}
	}
	for _, w := range dossier.All[plan.Work](c.d) {
		if yes(w.Body.Must) && c.inPlan(w) {
			add(w.ID)
		}
	}
	in := estimate.Estimate.New()
	for _, id := range slices.Sorted(mapKeys(take)) {
		w, _ := dossier.Find[plan.Work](c.d, id)
		if l, priced := c.workLine(w); priced {
			in.Lines = append(in.Lines, l)
		}
	}
	if len(in.Lines) == 0 {
		return out, false
	}
	_, out, err := c.price("musts", "the works that must be done, with what they need", in, map[string]field.Given{"lines": how(field.Assumed, count(len(in.Lines), "work", "works")), "correlation": how(field.Assumed, "a default, from memory")})
	return out, err == nil
}

// unusable is what lies in restricted pots beyond the mean cost of the works of the plan that they may pay for.
func (c *inquiry) unusable(p *MoneyPage) (sum float64) {
	for _, row := range p.Pots {
		e, ok := dossier.Find[plan.Pot](c.d, row.ID)
		switch {
		case row.Name == unsorted:
			sum += max(or0(row.Free.Value), 0)
			continue
		case !ok || !yes(e.Body.Restricted) || yes(e.Body.Reserve):
			continue
		}
		use := 0.0
		for _, w := range dossier.All[plan.Work](c.d) {
			if l, priced := c.workLine(w); priced && c.inPlan(w) && potPays(e.Body, w) {
				use += meanOfLine(l)
			}
		}
		sum += max(or0(row.Free.Value)-use, 0)
	}
	return sum
}

func meanOfLine(l estimate.Line) float64 {
	return estimate.Spread{Low: or0(l.Low), Likely: or0(l.Likely), High: or0(l.High), Kind: estimate.Kind(l.Kind)}.Mean()
}

// latePledges is what of the pledges counted falls due after the last day in dock.
func (c *inquiry) latePledges(l money.LedgerOut) (late float64) {
	last := c.stay().to
	if last.IsZero() {
		return 0
	}
	for _, e := range dossier.All[plan.Pledge](c.d) {
		name := pledgeName(e)
		for _, s := range l.Pledges {
			if s.Name == name && last.Before(e.Body.Due) {
				late += s.Counted
			}
		}
	}
	return late
}

func pledgeName(e dossier.Entry[plan.Pledge]) string {
	return cmp.Or(e.Body.Giver, "pledge") + " (" + e.ID + ")"
}

// givingSoFar is what people gave: no grants, loans, transfers, interest or sales, which follow laws of their own.
func (c *inquiry) givingSoFar() []money.Gift {
	var list []money.Gift
	for _, e := range dossier.All[plan.Receipt](c.d) {
		b := e.Body
		switch b.Kind {
		case "grant", "loan", "transfer", "interest", "sale", "tickets":
			continue
		}
		if b.Amount != nil && *b.Amount > 0 && !b.Date.IsZero() && b.Date.Compare(c.day) <= 0 {
			list = append(list, money.Gift{Date: b.Date, Amount: *b.Amount})
		}
	}
	return list
}

// signIf is the date if everything hoped for comes: grants applied for are awarded, a loan bridges the bills until they pay, and the conditions of
// pledges are met. It is shown beside the date without them, never instead.
func (c *inquiry) signIf(p *MoneyPage, in money.SignIn) {
	if p.Signing == nil {
		return
	}
	in, hoped := c.hopedIn(p, in)
	if hoped <= 0 {
		return
	}
	if sheet, out, err := work(c.book, money.Sign, "if-granted", "what could be signed for if everything hoped for comes", in, hopedGiven()); err == nil {
		if p.SigningIf = c.signingDate(sheet, out); p.SigningIf != nil {
			p.SigningIf.Key, p.SigningIf.Label = "signing_if", "if what is applied for is granted, every condition met, and a loan bridges the bills until the grant pays"
			p.SignBands = append(p.SignBands, c.signBand(p.SigningIf, out.Signing))
		}
	}
}

// hopedIn is the same call if everything hoped for comes, and how much that is.
func (c *inquiry) hopedIn(p *MoneyPage, in money.SignIn) (money.SignIn, float64) {
	hoped := p.ledger.PledgesWaiting
	in.Pledges += hoped
	in.Grants = slices.Clone(in.Grants)
	for _, e := range dossier.All[plan.Grant](c.d) {
		if b := e.Body; b.State == "applied" && b.Cap != nil {
			in.Grants = append(in.Grants, openGrant(b))
			hoped += *b.Cap
			in.Bridge += *b.Cap
		}
	}
	return in, hoped
}

func hopedGiven() map[string]field.Given {
	given := signGiven()
	given["grants"] = how(field.Assumed, "awarded and applied for")
	given["bridge"] = how(field.Assumed, "a loan as large as the grants applied for")
	given["pledges_counted"] = how(field.Assumed, "as counted, and those whose condition is not met")
	return given
}

func openGrant(b plan.Grant) money.OpenGrant {
	g := money.OpenGrant{Name: b.Name, Cap: max(*b.Cap-or0(b.Paid), 0), Match: 1, Arrears: b.Arrears == nil || *b.Arrears, Claims: 1}
	if b.Match != nil {
		g.Match = *b.Match
	}
	return g
}

// signingDate is the band of dates on which the plan can be signed; nil where the giving gives none.
func (c *inquiry) signingDate(sheet calc.Sheet, out money.SignOut) *Figure {
	s := out.Signing
	if s == nil {
		return nil
	}
	f := Figure{Key: "signing", Label: "the plan can be signed", Unit: "y", Basis: field.Computed, Sheet: sheet.ID, Text: "not within the years looked at"}
	ahead := func(d quantity.Date) *float64 {
		if years, ok := c.day.YearsUntil(d); ok {
			return new(round(max(years, 0)))
		}
		return nil
	}
	f.Value, f.P10, f.P50 = ahead(s.P50), ahead(s.P10), ahead(s.P50)
	late := s.P80.Words()
	if s.P80.IsZero() {
		late = "later than anyone can say"
	}
	switch {
	case s.P10.IsZero():
	case s.P10 == s.P80:
		f.Text = s.P10.Words()
	default:
		f.Text = s.P10.Words() + " to " + late
	}
	f.Note = "one in ten before the first, eight in ten before the last; from the giving so far"
	if !s.P50.IsZero() {
		f.Note = "one in ten before the first, even odds by " + s.P50.Words() + ", eight in ten before the last; from the giving so far"
	}
	return &f
}

// SignBand is when a plan can be signed, as years: with one chance in ten, even odds, and eight in ten. A year is absent where the giving never reaches it.
type SignBand struct {
	Label string   `json:"label"`
	P10   *float64 `json:"p10,omitempty"`
	P50   *float64 `json:"p50,omitempty"`
	P80   *float64 `json:"p80,omitempty"`
	Text  string   `json:"text"`
	Note  string   `json:"note"`
	Sheet string   `json:"sheet"`
}

func (c *inquiry) signBand(f *Figure, s *money.SigningAt) SignBand {
	at := func(d quantity.Date) *float64 {
		if d.IsZero() {
			return nil
		}
		return new(round(d.DecimalYear()))
	}
	return SignBand{f.Label, at(s.P10), at(s.P50), at(s.P80), f.Text, f.Note, f.Sheet}
}

func signGiven() map[string]field.Given {
	ledger := how(field.Computed, "money.ledger")
	return map[string]field.Given{
		"in_hand": how(field.Computed, "money.ledger, less what restricted pots can't spend on the plan"), "pledges_counted": ledger, "pledges_late": how(field.Computed, "pledges due after the last day in dock"),
		"committed": ledger, "reserve": ledger, "grants": how(field.Documented, "grants awarded; each by one claim at the end"), "scopes": how(field.Computed, "mean and deviation of money.estimate, as a triangle"),
		"receipts": how(field.Documented, "gifts and giving; no grants, loans, sales or tickets"), "sure": how(field.Assumed, "default"), "escalation": how(field.Assumed, "from memory"),
	}
}
