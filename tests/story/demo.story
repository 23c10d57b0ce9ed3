# The main job on a small demo show: made, reckoned, listed, explained, printed, checked.
$ backmark demo ennet.show --pieces 60 --undrawn
The demo show is in ennet.show: 60 pieces of the Ennet coast. Every maker, place and story in it is invented.
Next: backmark infer ennet.show
$ backmark list ennet.show --limit 1 --columns number,words_made
number  words_made
ES 001
$ backmark print ennet.show checklists
backmark: nothing called "checklists" is printed; did you mean "checklist"?
[2]
$ backmark infer ennet.show
Weighed 60 pieces and 14 makers in ***
A year can be said of ***
...
$ backmark list ennet.show --csv --columns number,words_made | wc -l
61
$ backmark list ennet.show --columns number,fiting
backmark: --columns: there is no column "fiting"; did you mean "fitting"?
[2]
$ backmark explain ennet.show "ES 010" | head -1
ES 010  ***
$ backmark explain ennet.show "ES 999"
backmark: there is no piece "ES 999" in this show; did you mean "ES ***"?
[2]
$ backmark print ennet.show checklist | head -2
prints/checklist.pdf
prints/checklist.csv
# The same show and seed print the same bytes.
$ cp ennet.show/prints/checklist.pdf before.pdf && backmark print ennet.show checklist > out && cmp before.pdf ennet.show/prints/checklist.pdf && echo same
same
$ backmark infer ennet.show --unlisted 1.5
backmark: --unlisted: a share lies between 0 and 1; write 0.3 for three in ten
[2]
