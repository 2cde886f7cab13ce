package wiretable

// nemaCell is the overall diameter in one build, in hundredths of a mil. A
// zero cell is a size the table does not have in that build.
type nemaCell struct {
	nominal int32
	maximum int32
	status  rowStatus
}

// nemaRow is one size of ANSI/NEMA MW 1000 round film-insulated wire.
type nemaRow struct {
	gauge                 int // AWG
	single, heavy, triple nemaCell
}

// nemaRows are the sizes, thin to thick. Published cells (Nearson, Centelsa
// and Elektrisola tables, see testdata/wire/nema_build.csv) are entered as
// printed, to 0.1 mil for No. 23 and thicker. Computed maxima, where the
// standard prints none for the build, add the heavy build's nominal-to-maximum
// step to the nominal. Sizes 13, 15, 16, 21, 29, 30, 35, all finer than 40
// and thicker than 8, and heavy maxima of 10 to 23 are from memory.
var nemaRows = [...]nemaRow{
	{50, nemaCell{110, 120, fromMemory}, nemaCell{130, 140, fromMemory}, nemaCell{}},
	{49, nemaCell{122, 130, fromMemory}, nemaCell{142, 150, fromMemory}, nemaCell{}},
	{48, nemaCell{138, 150, fromMemory}, nemaCell{158, 170, fromMemory}, nemaCell{}},
	{47, nemaCell{156, 170, fromMemory}, nemaCell{176, 190, fromMemory}, nemaCell{}},
	{46, nemaCell{172, 185, fromMemory}, nemaCell{197, 210, fromMemory}, nemaCell{}},
	{45, nemaCell{192, 205, fromMemory}, nemaCell{217, 230, fromMemory}, nemaCell{}},
	{44, nemaCell{222, 240, fromMemory}, nemaCell{250, 270, fromMemory}, nemaCell{}},
	{43, nemaCell{245, 260, fromMemory}, nemaCell{270, 290, fromMemory}, nemaCell{}},
	{42, nemaCell{280, 300, fromMemory}, nemaCell{300, 320, fromMemory}, nemaCell{}},
	{41, nemaCell{310, 330, fromMemory}, nemaCell{340, 360, fromMemory}, nemaCell{}},
	{40, nemaCell{346, 370, published}, nemaCell{382, 402, published}, nemaCell{406, 429, published}},
	{39, nemaCell{386, 409, published}, nemaCell{425, 449, published}, nemaCell{449, 480, published}},
	{38, nemaCell{445, 469, published}, nemaCell{484, 512, published}, nemaCell{512, 539, published}},
	{37, nemaCell{496, 520, published}, nemaCell{543, 571, published}, nemaCell{571, 598, published}},
	{36, nemaCell{555, 579, published}, nemaCell{598, 630, published}, nemaCell{634, 669, published}},
	{35, nemaCell{620, 640, fromMemory}, nemaCell{670, 700, fromMemory}, nemaCell{704, 743, fromMemory}},
	{34, nemaCell{697, 720, published}, nemaCell{752, 780, published}, nemaCell{783, 819, published}},
	{33, nemaCell{780, 811, published}, nemaCell{846, 882, published}, nemaCell{882, 921, published}},
	{32, nemaCell{882, 909, published}, nemaCell{945, 980, published}, nemaCell{988, 1031, published}},
	{31, nemaCell{969, 1000, published}, nemaCell{1043, 1079, published}, nemaCell{1094, 1142, published}},
	{30, nemaCell{1090, 1120, fromMemory}, nemaCell{1160, 1190, fromMemory}, nemaCell{1222, 1268, fromMemory}},
	{29, nemaCell{1224, 1260, fromMemory}, nemaCell{1300, 1330, fromMemory}, nemaCell{1370, 1410, fromMemory}},
	{28, nemaCell{1366, 1402, published}, nemaCell{1441, 1469, published}, nemaCell{1520, 1559, published}},
	{27, nemaCell{1524, 1559, published}, nemaCell{1606, 1642, published}, nemaCell{1689, 1728, published}},
	{26, nemaCell{1697, 1728, published}, nemaCell{1780, 1819, published}, nemaCell{1882, 1929, published}},
	{25, nemaCell{1902, 1941, published}, nemaCell{1988, 2031, published}, nemaCell{2091, 2142, published}},
	{24, nemaCell{2130, 2169, published}, nemaCell{2224, 2272, published}, nemaCell{2331, 2382, published}},
	{23, nemaCell{2390, 2430, published}, nemaCell{2490, 2530, maximumFromMemory}, nemaCell{2590, 2630, maximumComputed}},
	{22, nemaCell{2660, 2700, published}, nemaCell{2760, 2810, maximumFromMemory}, nemaCell{2870, 2920, maximumComputed}},
	{21, nemaCell{2990, 3030, fromMemory}, nemaCell{3090, 3140, fromMemory}, nemaCell{3210, 3260, fromMemory}},
	{20, nemaCell{3350, 3390, published}, nemaCell{3460, 3510, maximumFromMemory}, nemaCell{3580, 3630, maximumComputed}},
	{19, nemaCell{3730, 3790, published}, nemaCell{3860, 3910, maximumFromMemory}, nemaCell{3980, 4030, maximumComputed}},
	{18, nemaCell{4180, 4240, published}, nemaCell{4310, 4370, maximumFromMemory}, nemaCell{4440, 4500, maximumComputed}},
	{17, nemaCell{4690, 4750, published}, nemaCell{4820, 4880, maximumFromMemory}, nemaCell{4960, 5020, maximumComputed}},
	{16, nemaCell{5240, 5310, fromMemory}, nemaCell{5390, 5450, fromMemory}, nemaCell{5540, 5600, fromMemory}},
	{15, nemaCell{5870, 5940, fromMemory}, nemaCell{6020, 6090, fromMemory}, nemaCell{6190, 6260, fromMemory}},
	{14, nemaCell{6590, 6660, published}, nemaCell{6750, 6820, maximumFromMemory}, nemaCell{6910, 6980, maximumComputed}},
	{13, nemaCell{7380, 7420, fromMemory}, nemaCell{7530, 7570, fromMemory}, nemaCell{7620, 7660, fromMemory}},
	{12, nemaCell{8250, 8300, maximumComputed}, nemaCell{8420, 8470, maximumFromMemory}, nemaCell{8510, 8560, maximumComputed}},
	{11, nemaCell{9250, 9310, maximumComputed}, nemaCell{9420, 9480, maximumFromMemory}, nemaCell{9520, 9580, maximumComputed}},
	{10, nemaCell{10370, 10440, maximumComputed}, nemaCell{10540, 10610, maximumFromMemory}, nemaCell{10640, 10710, maximumComputed}},
	{9, nemaCell{11620, 11720, maximumComputed}, nemaCell{11790, 11890, published}, nemaCell{11910, 12010, maximumComputed}},
	{8, nemaCell{13020, 13140, maximumComputed}, nemaCell{13200, 13320, published}, nemaCell{13330, 13450, maximumComputed}},
	{7, nemaCell{}, nemaCell{14790, 14910, fromMemory}, nemaCell{}},
	{6, nemaCell{}, nemaCell{16570, 16710, fromMemory}, nemaCell{}},
	{5, nemaCell{}, nemaCell{18570, 18720, fromMemory}, nemaCell{}},
	{4, nemaCell{}, nemaCell{20820, 20980, fromMemory}, nemaCell{}},
}
