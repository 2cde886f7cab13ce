package wiretable

// swgTenthMil are the diameters of the imperial standard wire gauge in tenths
// of a mil, No. 7/0 first, No. 50 last (Order in Council of 23 August 1883;
// BS 3737:1964, withdrawn; GNU units 2.22, brwiregauge). Between its corners
// the gauge falls in equal steps. Sizes that were not seen printed are in swgFromMemory;
// they agree with those steps.
var swgTenthMil = [...]int32{
	5000, 4640, 4320, 4000, 3720, 3480, 3240, 3000, // 7/0 to 1
	2760, 2520, 2320, 2120, 1920, 1760, 1600, 1440, // 2 to 9
	1280, 1160, 1040, 920, 800, 720, 640, 560, // 10 to 17
	480, 400, 360, 320, 280, 240, 220, 200, // 18 to 25
	180, 164, 148, 136, 124, 116, 108, 100, // 26 to 33
	92, 84, 76, 68, 60, 52, 48, 44, // 34 to 41
	40, 36, 32, 28, 24, 20, 16, 12, // 42 to 49
	10, // 50 to 50
}

// swgFromMemory are the numbers whose diameter is from memory; -1 is 2/0.
var swgFromMemory = map[int32]bool{
	-1: true, 5: true, 7: true, 8: true, 11: true, 17: true, 23: true, 26: true, 27: true, 36: true, 37: true, 47: true, 48: true,
}
