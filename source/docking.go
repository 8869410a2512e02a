package source

var docking = []Work{
	{Key: "derrett", Author: "D. R. Derrett, revised by C. B. Barrass", Title: "Ship Stability for Masters and Mates", Where: "5th edition, Butterworth-Heinemann, 1999"},
	{Key: "dubey-docking", Author: "C. L. Dubey", Title: "Nautical exercises on dry docking (8) and grounding (9), with worked solutions", Where: "solutions at marinegyaan.com"},
	{Key: "ufc-4-213-10", Title: "UFC 4-213-10, Design: Graving Drydocks", Where: "US Department of Defense, 15 August 2002"},
}
