package ship

import "oakum/quantity"

// Document is a plan, report, letter or photograph album, held, known of, or missing.
type Document struct {
	Title   string        `key:"title" label:"title"`
	Type    string        `key:"type" label:"type" enum:"plan|shell expansion|docking plan|offsets|capacity plan|stability|survey report|specification|contract|certificate|consent|letter|log|photograph|drawing|other" optional:"yes"`
	Number  string        `key:"number" label:"number" optional:"yes"`
	Author  string        `key:"author" label:"author" optional:"yes"`
	Dated   quantity.Date `key:"dated" label:"dated" optional:"yes"`
	State   string        `key:"state" label:"state" enum:"held|copy held|elsewhere|missing|unknown" optional:"yes"`
	Kept    string        `key:"kept" label:"kept at" optional:"yes"`
	File    string        `key:"file" label:"file" optional:"yes"`
	SHA256  string        `key:"sha256" label:"SHA-256 of the file" optional:"yes"`
	Expires quantity.Date `key:"expires" label:"valid until" help:"for certificates, consents and insurance" optional:"yes"`
	Rights  string        `key:"rights" label:"rights" optional:"yes"`
	Notes   string        `key:"notes" label:"notes" optional:"yes"`
}
