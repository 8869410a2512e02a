package source

var choice = []Work{}
