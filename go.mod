module evenrow

go 1.26
