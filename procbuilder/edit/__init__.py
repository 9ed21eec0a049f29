"""What is served to a browser on this machine."""
