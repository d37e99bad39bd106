"""What reviews tell: who missed what, how items did, what a class has not got."""
