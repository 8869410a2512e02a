package source

var money = []Work{}
