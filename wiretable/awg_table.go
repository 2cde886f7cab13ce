package wiretable

// awgHundredthMil are the nominal bare diameters of ASTM B258 in hundredths of
// a mil, No. 0000 first, No. 50 last. They are 5·92^((36-n)/39) mil rounded to
// 0.1 mil up to No. 44 and to 0.01 mil from No. 45; areas and resistances
// follow from the rounded figure, as in NBS Handbook 100, so that No. 40 has
// 9.61 circular mils. Rows of published copies (MWS Techbook; the copies named
// in testdata/wire/awg.csv) are entered as printed; the twelve sizes 0, 5,
// 6, 13, 15, 16, 21, 29, 30, 35, 42 and 45 were entered by that rule.
var awgHundredthMil = [...]int32{
	46000, 40960, 36480, 32490, 28930, 25760, // 0000 to 2
	22940, 20430, 18190, 16200, 14430, 12850, // 3 to 8
	11440, 10190, 9070, 8080, 7200, 6410, // 9 to 14
	5710, 5080, 4530, 4030, 3590, 3200, // 15 to 20
	2850, 2530, 2260, 2010, 1790, 1590, // 21 to 26
	1420, 1260, 1130, 1000, 890, 800, // 27 to 32
	710, 630, 560, 500, 450, 400, // 33 to 38
	350, 310, 280, 250, 220, 200, // 39 to 44
	176, 157, 140, 124, 111, 99, // 45 to 50
}
