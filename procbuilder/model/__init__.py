"""Frozen records that every other room shares, and the arithmetic that belongs to them."""
