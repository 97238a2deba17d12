"""The case: one assignment, its pieces, and the findings of the benches joined."""
