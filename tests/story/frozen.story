# What went to the printer is frozen; later the show is asked what has changed since.
$ backmark demo ennet.show --pieces 40 --undrawn | head -1
The demo show is in ennet.show: 40 pieces of the Ennet coast. Every maker, place and story in it is invented.
$ backmark infer ennet.show > out
$ backmark check ennet.show --frozen proof
backmark: --frozen: no set "proof" was frozen; freeze one: backmark print SHOW all --freeze NAME
[2]
$ backmark print ennet.show checklist --freeze "First proof"
backmark: --freeze: "First proof" is no name for a frozen set; use small letters, figures, - and _, such as "first-proof"
[2]
$ backmark print ennet.show checklist --freeze proof | tail -1
Frozen as "proof".
$ backmark check ennet.show --frozen proof
1 papers, *** printed facts, 0 faults
0 facts changed since the set "proof" was frozen
$ backmark print ennet.show checklist --freeze proof
backmark: --freeze: a set "proof" is frozen already; a frozen set is never overwritten; give this one another name
[2]
# A piece that is dropped is gone from the paper, and the numbers behind it move up.
$ backmark pick ennet.show "ES 004" --drop
Dropped ES 004.
$ backmark check ennet.show --frozen proof 2> faults | grep "ES 004, number"
checklist, ES 004, number: "17" is gone
$ backmark check ennet.show --frozen proof --json 2> faults | grep -c '"number": "ES 004"'
6
