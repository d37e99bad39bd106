"""What is true: muscles, the words that facts may use, and the reasoning over them."""
