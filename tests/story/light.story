# Light on the demo show and on one made by hand: doses against limits, one piece in full, and nonsense.
$ backmark new a.show --title "Tied" > /dev/null
$ backmark light a.show
backmark: the show has no opening and last day; give --days, or write "backmark setting SHOW opens 2027-06-26" and closes
[2]
$ printf '[columns]\nid = "number"\nmade = { character = "material" }\ncord = { character = "cord_type", part = "cord" }\ncolour = { character = "cord_colour", part = "cord" }\n' > map.toml
$ printf 'id,made,cord,colour\nES 1,silver,braided rayon,red\nES 2,silver,plaited leather,tan\nES 3,silver,braided rayon,\n' > rows.csv
$ backmark import a.show rows.csv --map map.toml > /dev/null
$ backmark case a.show wall --width 1800 --height 1100 --depth 220 --hours 8 > /dev/null
$ backmark put a.show "ES 1" "ES 2" "ES 3" --case wall
wall: 3 put.
# Nothing is measured: the level is asked for, no dose is made up.
$ backmark light a.show --days 100 --json | grep -c '"dose_lxh": null'
3
$ backmark reading a.show wall --lux 50 --uv 4 --day 2027-06-10 --by T.M.
50 lx in wall, 2027-06-10.
# 50 lx x 8 h x 100 days = 40 000 lx h. A bright dye is R3 and may have 15 000 in a year, an unknown one counts as such, tan leather is R1 and may have 600 000.
$ backmark light a.show --days 100 | grep 'ES '
  ES 1       R3   50 lx    267 % of 15 000         TOO MUCH
  ES 2       R1   50 lx      7 % of 600 000
  ES 3       R3?  50 lx    267 % of 15 000         TOO MUCH
  wall      place of ES 1: ES 1 from day 1 for 37 days; nobody for 63 days
  wall      place of ES 3: ES 3 from day 1 for 37 days; nobody for 63 days
# The merged rule that some print allows ten times as much; the report says which rule it used.
$ backmark light a.show --days 100 --rule merged --json | grep -c '"over_budget": true'
0
[1]
# A third of the light, to the whole percent below.
$ backmark light a.show --days 100 | grep -A1 '^Dimming'
Dimming wall: at 37 % of the present light every piece may stay
  100 %    50 to 50   lx    2 over their run,   0 over their level; all may stay 37 of 100 days
$ backmark light a.show --days 100 --dim 0.37 | sed -n 2p
0 pass what they may have in the run; 0 cannot be reckoned yet; 1 are counted as high because the record does not say what decides.
# One piece, with what decided and the source.
$ backmark light a.show "ES 1" --days 100 | head -6
ES 1  
R3 decides: cord, braided rayon: textile cord, bright dye
  rule of caution: an unknown dye is treated as high, common practice
50.0 lx, measured in the case; ultraviolet 4 microwatts a lumen
may have at most 50 lx (CIE 157 R3)
may have 15 000 lx h in the run (CIE 157 R3), 0 had in the year before taken off
# Nonsense changes nothing.
$ backmark reading a.show wall --lux minus
backmark: --lux: "minus" cannot be; write a number of at least 0 and at most 200000 lx
[2]
$ backmark reading a.show attic --lux 50
backmark: there is no case "attic"; cases are: wall
[2]
$ backmark light a.show --days 0
backmark: --days: "0" cannot be; write a number of at least 1 and at most 36500 days
[2]
$ backmark light a.show --days 100 --rule mine
backmark: --rule: there is no rule "mine"; rules are: CIE 157, merged, strict
[2]
$ backmark light a.show "ES 9" --days 100
backmark: there is no piece "ES 9" in this show; did you mean "ES 1"?
[2]
$ backmark fixture a.show wall spot --candela 100
backmark: the light "spot" has no place; give --distance in m and --angle in degrees, or --x, --y and --z in mm
[2]
$ backmark case a.show attic --width 100
backmark: the case "attic" has no inner size; give --width, --height and --depth in mm
[2]
$ backmark case a.show wall --hours 25
backmark: --hours: "25" cannot be; write a number of at least 0 and at most 24 hours a day
[2]
$ backmark require a.show "ES 1" --light-class R9
backmark: --light-class: "R9" is no class of light; write R0, R1, R2 or R3; or unknown, to go by the record
[2]
$ backmark require a.show "ES 1" --rh 55-40
backmark: --rh: the range "55-40" ends before it begins; write the lower end first
[2]
$ backmark exposure a.show "ES 1" --lux 50
backmark: the light that the piece had is not said, or said twice; give --lux-hours, or --lux and --hours
[2]
$ backmark history a.show | grep -c "3 pieces put into cases"
1
