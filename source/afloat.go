package source

var afloat = []Work{}
