# Calibrating: a show that knows nothing says so; nonsense is answered.
$ backmark new a.show --title "Tied" > /dev/null
$ backmark calibrate a.show
backmark: 0 known pieces cannot be hidden in 10 parts; record firm dates or marks of some pieces first
[2]
$ backmark calibrate a.show --folds many
backmark: --folds: "many" is not a whole number; write digits only, for example 310
[2]
$ backmark demo b.show --undrawn --pieces 80 > /dev/null
$ backmark calibrate b.show --folds 4 --json | grep -c '"maker_top3"'
1
$ ls b.show/prints
calibration.json
calibration.pdf
calibration.svg
