"""One canal: where it ends, how wide it is before and after, how large it may be made, how it is filled."""
