"""A narration heard sentence by sentence: what was done to which thing, and a draft of the steps."""
