# Air and loads: conflicts named with who must waive, reservoirs asked for, and nonsense.
$ backmark new a.show --title "Tied" > /dev/null
$ backmark setting a.show opens 2027-06-26 > /dev/null && backmark setting a.show closes 2027-11-14 > /dev/null
$ printf '[columns]\nid = "number"\nmade = { character = "material", split = ";" }\nlender = "lender"\nmass = { measure = "mass", unit = "g" }\n' > map.toml
$ printf 'id,made,lender,mass\nES 1,silver,North,40\nES 2,leather,South,60\nES 3,celluloid,South,\n' > rows.csv
$ backmark import a.show rows.csv --map map.toml > /dev/null
$ backmark case a.show tower --width 600 --height 1500 --depth 600 --made-of "glass; wool felt" --shelf glass --shelf-thick 6 --shelf-span 560 --rh 48 > /dev/null
$ backmark put a.show "ES 1" "ES 2" "ES 3" --case tower --shelf 1 --x 300 --y 360
tower: 3 put.
# The leakage is asked for; without it nothing is said of how long the air keeps.
$ backmark climate a.show --celsius 20 --rh 60 | grep 'ask:'
  ask: the leakage of the case: have it measured with a tracer gas
$ backmark case a.show tower --leak 1 --buffer 4 > /dev/null
$ backmark climate a.show --celsius 20 --rh 60 | grep 'ask:'
  ask: the moisture reservoir of the buffer at the humidity that is held: its supplier's figure, g per kg and 1 %
$ backmark case a.show tower --reservoir 2 > /dev/null
$ backmark climate a.show --celsius 20 --rh 60 | grep -c 'ask:'
0
[1]
$ backmark climate a.show --celsius 20 --rh 60 | sed -n '3,10p'
tower: 3 pieces, 0.54 m3; 40 to 50 % RH, 16 to 20 degrees
  held at 48 %: within
  Silver wants it dry and 1 pieces do not: 45 to 50 %, and keep sulphur out; or part them.
  its air: 8.3 g of water in a cubic metre, dew point 8.6 degrees
  half of the difference to the room is gone in 17 hours empty, in 60 days with its buffer
  left to itself it stays within for 16 days
  buffer for 142 days with a drift of 2 %: 39.7 kg, or what is there changed every 14 days
  wool felt: avoid, gives off reduced sulphur gases; harms 1 pieces here; dark dyes may hold sulphur too
# Two who exclude each other.
$ backmark require a.show "ES 1" --rh 30-35 --waiver "the owner" > /dev/null
$ backmark climate a.show --celsius 20 --rh 60 | grep -A4 'No humidity'
  No humidity serves all: at least 40 and at most 35 % are asked.
    ES 1, the piece: 30 to 35 (to waive: the owner)
    ES 2, leather and hide (leather): 40 to 60 (to waive: the conservator)
  The fewest cases that serve all are 2:
    30 to 35 %, 2 pieces: ES 1, ES 3
$ backmark require a.show "ES 1" --drop > /dev/null
$ backmark loads a.show | grep -c 'sag 0.15 mm, later 0.15 mm'
1
$ backmark loads a.show | grep 'ask:'
  ask: the mass of ES 3
$ backmark climate a.show --celsius hot
backmark: --celsius: "hot" cannot be; write a number of at least -20 and at most 45 degrees
[2]
$ backmark case a.show tower --reservoir 0
backmark: --reservoir: "0" cannot be; write a number above 0 and at most 100 g/kg for 1 %
[2]
