"""Writing one canal's order of work: phases to steps, what is withheld, where to start in mid-course."""
