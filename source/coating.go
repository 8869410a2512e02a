package source

var coating = []Work{}
