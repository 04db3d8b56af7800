module stillair

go 1.25.0

require gonum.org/v1/gonum v0.17.0
