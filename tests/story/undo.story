# A change is taken back by another; what was taken back is done again; the book keeps all of it.
$ backmark new back.show --title "Small Silver"
...
$ backmark setting back.show book.trim B
book.trim is B.
$ backmark section back.show quay --title "On the quay"
Section 1 "On the quay" is begun.
$ backmark undo back.show
Undone: section "On the quay".
$ backmark undo back.show
Undone: setting book.trim = B.
$ backmark setting back.show book.trim

$ backmark undo back.show --again
Done again: setting book.trim = B.
$ backmark setting back.show book.trim
B
$ backmark undo back.show --again
Done again: section "On the quay".
$ backmark undo back.show --again
backmark: curator has nothing to do again; only what was undone last, with nothing changed since, is done again
[2]
$ backmark undo back.show --change 2 --again
backmark: --change and --again are two ways to say which; give one of them
[2]
$ backmark new bare.show
...
$ backmark undo bare.show
backmark: curator has changed nothing that holds; "backmark history SHOW" has every change; take one back by its number
[2]
$ backmark years bare.show | head -2
0 pieces, 0 of them dated by themselves.
Give two dated pieces a character and it appears here.
$ backmark sources bare.show --weigh
Nobody has said anything yet. Note a source on any piece.
$ backmark undo back.show --change 99
backmark: there is no change 99; "backmark history SHOW" has their numbers
[2]
$ backmark undo back.show --change 2
Undone: setting book.trim = B.
$ backmark undo back.show --change 2
backmark: change 2 was taken back already, by change 8; take back change 8 to do it again
[2]
$ backmark history back.show
    8  2030-12-31 00:00  curator      undo       undone: setting book.trim = B
    7  2030-12-31 00:00  curator      undo       again: section "On the quay"
    6  2030-12-31 00:00  curator      undo       again: setting book.trim = B
    5  2030-12-31 00:00  curator      undo       undone: setting book.trim = B (taken back by 6)
    4  2030-12-31 00:00  curator      undo       undone: section "On the quay" (taken back by 7)
    3  2030-12-31 00:00  curator      section    section "On the quay"
    2  2030-12-31 00:00  curator      setting    book.trim = B (taken back by 8)
    1  2030-12-31 00:00  curator      new        the show was begun
