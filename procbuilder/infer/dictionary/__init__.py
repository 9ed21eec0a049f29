"""The words of a language: what a word may be, which thing a phrase names, which number is said."""
