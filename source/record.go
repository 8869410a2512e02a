package source

var record = []Work{}
