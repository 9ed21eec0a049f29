"""What must never be lost or torn: whole writes, lock, cache."""
