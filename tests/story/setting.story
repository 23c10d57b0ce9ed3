# What holds for the whole show is set, seen, and taken away; nonsense changes nothing.
$ backmark new shore.show --title "Small Silver"
...
$ backmark setting shore.show title
Small Silver
$ backmark setting shore.show book.trim B
book.trim is B.
$ backmark setting shore.show book.trim C
backmark: "C" is no book.trim; choose: A, B
[2]
$ backmark setting shore.show book.trm B
backmark: there is no setting "book.trm"; did you mean "book.trim"?
[2]
$ backmark setting shore.show opens tomorrow
backmark: "tomorrow" is no opens; write a day as 2027-05-17
[2]
$ backmark setting shore.show book.trim
B
$ backmark setting shore.show book.trim --unset
book.trim is unset.
$ backmark setting shore.show | grep -c "^book"
3
$ backmark history shore.show | grep -c " setting "
2
