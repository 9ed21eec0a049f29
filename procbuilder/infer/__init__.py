"""Trade knowledge as small named rules: ledger, dangers, lists, torques, times; ``hearing`` hears what was said."""
