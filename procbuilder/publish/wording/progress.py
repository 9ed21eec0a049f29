"""What a command is doing, for whoever waits for it."""

PROGRESS: dict[str, str] = {
    "starting": "starting",
    "copying": "copying {file}",
    "reading": "reading {file}",
    "looking-through": "looking through step {number}: {command}",
    "scanning": "scanning {recording}",
    "trimming": "looking for the ends of: {command}",
    "choosing": "choosing the pictures of: {command}",
    "cutting": "cutting the clip of: {command}",
    "filming": "film: {scene}",
    "writing": "writing page and PDF",
}
