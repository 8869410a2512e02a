package source

var general = []Work{
	{Key: "practice", Title: "Common practice of the trade, without a printed source"},
	{Key: "memory", Title: "Value written from memory", Memory: true},
	{Key: "model", Title: "A model of this program's own, marked as such; it orders cases and proves nothing"},
}
