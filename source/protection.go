package source

var protection = []Work{
	{Key: "nippon-foundation-1996", Author: "The Nippon Foundation library", Title: "Course text on protecting ships against corrosion, chapter 8 on cathodic protection (in Japanese)", Where: "nippon.zaidan.info, seikabutsu 1996/00625"},
	{Key: "dnv-rp-b401", Author: "Det Norske Veritas", Title: "Recommended practice B401, Cathodic protection design", Memory: true},
	{Key: "faraday", Title: "Faraday's laws of electrolysis", Where: "any text on electrochemistry; F = 96485.33212 C/mol, exact by the SI of 2019"},
	{Key: "peabody", Author: "A. W. Peabody", Title: "Control of pipeline corrosion", Where: "2nd edition, NACE 2001, table of reference electrodes"},
	{Key: "googan-800", Author: "C. Googan", Title: "The protection potential of carbon steel", Where: "Marine corrosion and cathodic protection, CRC Press 2022"},
	{Key: "ufc-3-570-02n", Author: "US Department of Defense", Title: "Electrical engineering: cathodic protection (formerly MIL-HDBK-1004/10)", Where: "UFC 3-570-02N, 16 January 2004"},
	{Key: "sunde", Author: "E. D. Sunde", Title: "Earth conduction effects in transmission systems", Where: "Van Nostrand 1949"},
	{Key: "sen-1968", Author: "P. K. Sen", Title: "Estimates of the regression coefficient based on Kendall's tau", Where: "Journal of the American Statistical Association 63 (1968) 1379-1389"},
	{Key: "mann-1945", Author: "H. B. Mann", Title: "Nonparametric tests against trend", Where: "Econometrica 13 (1945) 245-259"},
}
