package source

var protection = []Work{}
