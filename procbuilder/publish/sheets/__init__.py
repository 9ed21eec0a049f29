"""Sheets to print, made from the edition: content once, as blocks that page and PDF set alike."""
