"""A complete procedure of two steps, over a recording of 4 s, without any problem."""

WHOLE = """\
---
format: 1
number: P-1
revision: A
status: review
item: pillar drill
author: demo
recordings: {strip: recordings/strip.mp4}
---
# Drill belt cover – off and on

## Before you start

- Condition: plug pulled
- Tool: 4 mm hexagon key
- Wear: eye protection
- Supply: none
- Part: none

## Work

### 0:00.500-0:02 Lift off the belt cover {#cover-off}

- Off: belt cover | by: 2 x M5 bolt
- Key point: keep it level | the belt is caught otherwise

### 0:02-0:03.500 Put the belt cover on {#cover-on}

- On: belt cover | by: 2 x M5 bolt
- Torque: M5 bolt | look up | D1, page 2

### Check that the belt runs free {#test}

- Check: turn the spindle by hand | no noise
- Time: 1

## Who looked at it

- Dangers confirmed: demo | 2026-03-02
"""
