package source

var outlook = []Work{}
