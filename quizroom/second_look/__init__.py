"""What was missed comes back: how well it is remembered, and when it is asked again."""
