"""What leaves the program in another form: a value in, bytes out."""
