package source

var calendar = []Work{
	{Key: "pert-text", Author: "Taylor, B. W.", Title: "Introduction to Management Science", Where: "Pearson, chapter 8, project management"},
	{Key: "demeulemeester-herroelen", Author: "Demeulemeester, E. and Herroelen, W.", Title: "A Branch-and-Bound Procedure for the Multiple Resource-Constrained Project Scheduling Problem", Where: "Management Science 38, 1992"},
	{Key: "psplib", Author: "Kolisch, R. and Sprecher, A.", Title: "PSPLIB: a project scheduling problem library", Where: "European Journal of Operational Research 96, 1997"},
	{Key: "navsea-009-01", Author: "US Naval Sea Systems Command", Title: "Standard Item 009-01, General Criteria", Where: "NAVSEA standard items", Memory: true},
}
