"""What reviews tell: who missed what, and how items did."""
