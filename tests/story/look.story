# Looks: nonsense is answered, and a show without a dated piece says what it cannot say.
$ backmark new a.show --title "Tied" > /dev/null
$ backmark look a.show
0 looks worth taking, most bits a minute first (years now; after each answer)

0 things that do not fit, with the odds on it
No piece is dated: what a look would settle cannot be said.
$ backmark look a.show --hours -2
backmark: --hours: a plan needs some hours; write 3.5
[2]
$ backmark look a.show --hours soon
backmark: --hours: "soon" is not a number; write it with a full stop as decimal mark, for example 12.5
[2]
$ backmark demo b.show --undrawn --pieces 150 > /dev/null
$ backmark look b.show --hours 1 --by lender --json | grep -c '"planned_minutes"'
1
