# A show is begun, a section made, and what is mistyped is answered with words.
$ backmark new quay.show --title "Tied at the water"
The show "Tied at the water" is begun in quay.show.
Next: backmark import quay.show FILE.csv --map MAP.toml
$ backmark new quay.show
backmark: quay.show: there is a show here already; name another folder
[2]
$ mkdir letters && touch letters/a && backmark new letters
backmark: letters: this folder holds other things; name a folder that is empty or does not exist yet
[2]
$ backmark section quay.show quay --title "On the quay"
Section 1 "On the quay" is begun.
$ backmark section quay.show quay --title "The quay" --rank 2
Section 2 "The quay" is changed.
$ backmark pick quay.show "ES 1" --section kay
backmark: --section: there is no section "kay"; sections are: quay
[2]
$ backmark pick quay.show "ES 1" --section quay
backmark: there is no piece "ES 1" in this show; see "backmark list SHOW" for the numbers
[2]
$ backmark section quay.show quay --rank soon
backmark: --rank: "soon" is not a whole number; write digits only, for example 310
[2]
$ backmark history quay.show
    3  2030-12-31 00:00  curator      section    section "The quay"
    2  2030-12-31 00:00  curator      section    section "On the quay"
    1  2030-12-31 00:00  curator      new        the show was begun
$ backmark histroy quay.show
backmark: A subcommand is required; did you mean "history"?
Run "backmark --help" or "backmark COMMAND --help" for what can be asked.
[2]
$ backmark find nowhere.show silver
backmark: nowhere.show: there is no show here; check the folder, or start a show with "backmark new"
[2]
$ mkdir bad.show && echo "not a database, but long enough to be looked at as one, surely" > bad.show/show.db && backmark history bad.show
backmark: bad.show/show.db: the show's file is damaged or is no show; go back to a copy; a copy show.db.before-N may lie beside it
[2]
