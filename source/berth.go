package source

var berth = []Work{}
