"""What the commands say, in the language of their reader."""
