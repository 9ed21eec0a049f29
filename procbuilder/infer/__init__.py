"""Trade knowledge as small named rules: ledger, dangers, lists, torques, times."""
