package calc

// Caution names a danger that a sheet must open with.
type Caution string

// The dangers.
const (
	Docking   Caution = "docking"
	Stability Caution = "stability"
	Lifting   Caution = "lifting"
	Confined  Caution = "confined"
	HotWork   Caution = "hot-work"
	Asbestos  Caution = "asbestos"
	Lead      Caution = "lead"
	PCB       Caution = "pcb"
	Diving    Caution = "diving"
	Openings  Caution = "openings"
	Towing    Caution = "towing"
	Screening Caution = "screening"
)

var cautions = map[Caution]string{
	Docking:   "A docking is the dockmaster's and the naval architect's decision. This sheet is a starting calculation for them to check; it is no permission to dock or undock.",
	Stability: "Stability of a floating ship is judged by a qualified naval architect on her actual condition. This sheet is for that person to check; it does not clear her to move.",
	Lifting:   "Lifting plans are for a competent rigger; a certificate on the gear beats any formula, and local rules govern. This sheet is no lifting permit.",
	Confined:  "Tanks, voids and shaft alleys can kill without warning. Entry only under local rules by a competent person who has tested the air (29 CFR 1915 subpart B is one public example). This paper is no entry permit.",
	HotWork:   "Hot work only under a permit of whoever is in charge of the place, after a competent person has tested and cleared the space (29 CFR 1915 subpart B and P are public examples). This paper is no such permit.",
	Asbestos:  "Old packing, lagging and gaskets may hold asbestos. Do not disturb before a licensed person has sampled it (29 CFR 1915.1001 is one public example); local rules decide.",
	Lead:      "Old paint may hold lead. Test before grinding, blasting or burning (29 CFR 1915.1025 is one public example); local rules decide.",
	PCB:       "Old cables, paint, gaskets and capacitors may hold PCBs. Sampling and disposal are for licensed people under local rules.",
	Diving:    "Divers work near openings only when suctions are shut, tagged and locked, under local rules and the diving supervisor. This paper is no clearance to dive.",
	Openings:  "Never open, ease or remove the last barrier of an underwater opening while she floats, and never the last one first. Who may do it, and when, is for a competent person on the spot.",
	Towing:    "A tow is accepted by the tow master, the warranty surveyor and the harbour authority, on the day. This sheet is for them to check.",
	Screening: "A first screen, not a class or statutory check. A qualified person decides.",
}

// Text is the caution in words.
func (c Caution) Text() string { return cautions[c] }

// Cautions lists every caution.
func Cautions() map[Caution]string { return cautions }
