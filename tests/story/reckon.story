# Formulas by name, against published values.
# WCAG 2.2: black on white is 21 to 1, a colour on itself 1 to 1.
$ backmark reckon contrast text=000000 ground=FFFFFF
21
WCAG 2.2, contrast ratio and relative luminance; 7 is asked of label text, 4.5 of numbers
$ backmark reckon contrast text=8B391D ground=8B391D | head -1
1
$ backmark reckon points length=25.4 | head -1
72 pt
# Wilson's interval for 0 of 10 begins at 0 and ends at z^2 / (n + z^2) = 0.2129 with z = 1.6449.
$ backmark reckon rate_high hits=0 n=10 | head -1
0.212942
# Evidence that says nothing leaves the reliability as it was; evidence that rules it out leaves none.
$ backmark reckon empty_talk reliability=0.8 for=1 | head -1
0.2
$ backmark reckon empty_talk reliability=0.8 for=0 | head -1
1
$ backmark reckon label_text distance=9000
backmark: distance = 9000 is outside 100 to 1000; the formula is not known to hold there
[2]
$ backmark reckon contrats text=000000
backmark: there is no formula "contrats"; did you mean "contrast"?
[2]
$ backmark reckon contrast text=black ground=FFFFFF
backmark: "black" is no value for text; write six hexadecimal digits, for example 1C1B1A
[2]
$ backmark reckon points width=3
backmark: points takes nothing called "width"; see "backmark reckon --list"
[2]
