module oakum

go 1.26
