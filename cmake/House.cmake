# One line a room, floor by floor; USES is the whole of what it may include.
room(base USES LIBS fmt::fmt)
room(model USES base)
