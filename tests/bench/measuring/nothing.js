// A program that does nothing: what Node itself takes.
