package source

var plating = []Work{}
