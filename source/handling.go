package source

var handling = []Work{}
