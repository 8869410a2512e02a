package source

var calendar = []Work{}
