"""Practice on a canal with a hidden truth: a student predicts where instruments stop, works them, and sees it at last.

levels     what can be practised; the case as the student knows it
truth      the canal as it is: drawn from a seed
working    one instrument put in: where it stops, what the canal becomes
mistakes   what a mistake comes to, and why
exercise   all that was done so far, worked anew from seed and acts
score      one calm number and its parts
shown      what is known of an exercise, and what its end reveals
"""
