"""The only room that opens a recording: probe, decode, measure, stills, clips."""
