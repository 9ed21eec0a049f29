"""Text in: procedure file, step lists, subtitles; and line edits back into a file."""
