package looks

import "bench.example/undermark/geometry/scene"

// The colours of each look. looks_test.go holds what stands in a table to what people can tell apart, with normal sight and without
// one of the eye's three receptors; whoever changes one runs it.

var dark = Table{
	Paper: Colour{0x101216, 0}, Ink: Colour{0xe8eef4, 7}, Last: [2]int{0x000000, 0xffffff},
	Text: Text{
		Faint: Colour{0x8f98a3, 8}, Title: Colour{0xc2edff, 14}, Key: Colour{0xc2edff, 14}, Field: Colour{0xe8eef4, 15},
		Foul: Colour{0xf65048, 9}, Doubtful: Colour{0xfdd13e, 11}, Clear: Colour{0x7adf7b, 10},
	},
	Marks: [Marks]Colour{
		Foul: {0xf65048, 9}, Doubtful: {0xfdd13e, 11}, Room: {0x7adf7b, 10}, Picked: {0xc2edff, 14},
		Lines: {0x56bdbb, 6}, Hot: {0xcb9c84, 5}, Exhaust: {0xf59430, 3}, Intake: {0x8290ff, 12}, Fuel: {0xf996c2, 13},
		Opening: {0xb898d7, 8}, Tie: {0xdd41cb, 13}, Cut: {0xffffff, 15},
		Rail: {0xcce3d3, 15}, Steel: {0xb5c5e7, 7}, Moves: {0xa7ada2, 7}, Fitting: {0xa08962, 7},
		SheetMetal: {0x7d8a95, 8}, Frame: {0x8a939c, 8}, Wheels: {0x6a737c, 8}, Grid: {0x4a535c, 8},
	},
	Faces: [Faces]int{
		FloorFace: 0x161b21, SteelFace: 0x7b7d8e, RailFace: 0x818891, LinesFace: 0x4a6c86, HotFace: 0xa17366, MovesFace: 0x626964,
		NoseFace: 0x2a3139, BumperFace: 0x666e77, ExhaustFace: 0xffa13f, MufflerFace: 0xcc7f26, IntakeFace: 0x7775e1, FuelFace: 0xda7eaf,
		FoulFace: 0xcd2b16, PickedFace: 0x6ab6ed, LittleRoomFace: 0x1d4429, FairRoomFace: 0x24603a, MuchRoomFace: 0x2c8049,
	},
	Cube: Cube{
		Marks: [Marks]uint8{
			Foul: 203, Doubtful: 220, Room: 77, Picked: 152, Lines: 73, Hot: 181, Exhaust: 208, Intake: 105, Fuel: 212, Opening: 183,
			Tie: 200, Cut: 231, Rail: 194, Steel: 189, Moves: 144, Fitting: 100, SheetMetal: 102, Frame: 246, Wheels: 243, Grid: 239,
		},
		Faces: [Faces]uint8{
			FloorFace: 234, SteelFace: 103, RailFace: 246, LinesFace: 61, HotFace: 132, MovesFace: 242, NoseFace: 236, BumperFace: 242, ExhaustFace: 215,
			MufflerFace: 172, IntakeFace: 105, FuelFace: 211, FoulFace: 160, PickedFace: 74, LittleRoomFace: 29, FairRoomFace: 65, MuchRoomFace: 35,
		},
	},
	Sixteen: [Faces]uint8{
		FloorFace: 0, SteelFace: 7, RailFace: 7, LinesFace: 6, HotFace: 5, MovesFace: 8, NoseFace: 8, BumperFace: 7, ExhaustFace: 3, MufflerFace: 3,
		IntakeFace: 12, FuelFace: 13, FoulFace: 9, PickedFace: 14, LittleRoomFace: 2, FairRoomFace: 2, MuchRoomFace: 10,
	},
	Rooms: [scene.Grades]Colour{
		scene.DoubtfulRoom: {0xd9a520, 3}, scene.LittleRoom: {0x5d8f64, 2}, scene.FairRoom: {0x68ad73, 2}, scene.MuchRoom: {0x86d694, 2},
	},
}

var light = Table{
	Paper: Colour{0xfafafa, 15}, Ink: Colour{0x10161c, 0}, Last: [2]int{0x000000, 0xffffff},
	Text: Text{
		Faint: Colour{0x5d6670, 8}, Title: Colour{0x004885, 4}, Key: Colour{0x004885, 4}, Field: Colour{0x10161c, 0},
		Foul: Colour{0xd8183c, 1}, Doubtful: Colour{0x7c6300, 5}, Clear: Colour{0x0c703c, 0},
	},
	Marks: [Marks]Colour{
		Foul: {0xd8183c, 1}, Doubtful: {0x7c6300, 5}, Room: {0x0c703c, 2}, Picked: {0x004885, 4},
		Lines: {0x007a8d, 6}, Hot: {0x9a6059, 8}, Exhaust: {0x833300, 13}, Intake: {0x0057f0, 12}, Fuel: {0xb92c6d, 0},
		Opening: {0x874aae, 8}, Tie: {0x3f0b6b, 0}, Cut: {0x000000, 0},
		Rail: {0x3a444d, 0}, Steel: {0x37474f, 0}, Moves: {0x625556, 8}, Fitting: {0x523a21, 8},
		SheetMetal: {0x6b7883, 8}, Frame: {0x6b7279, 8}, Wheels: {0x7f868d, 7}, Grid: {0xb4bac1, 7},
	},
	Faces: [Faces]int{
		FloorFace: 0xf2f4f6, SteelFace: 0x647a70, RailFace: 0x4b5c60, LinesFace: 0x00747c, HotFace: 0x966852, MovesFace: 0x8e8c8b,
		NoseFace: 0xdde2e6, BumperFace: 0x868e96, ExhaustFace: 0xd6710b, MufflerFace: 0xca6f18, IntakeFace: 0x7483ea, FuelFace: 0xb95691,
		FoulFace: 0xcc352b, PickedFace: 0x197dba, LittleRoomFace: 0xd3ecd2, FairRoomFace: 0xb4deb2, MuchRoomFace: 0x8fcb8f,
	},
	Cube: Cube{
		Marks: [Marks]uint8{
			Foul: 161, Doubtful: 58, Room: 28, Picked: 24, Lines: 31, Hot: 95, Exhaust: 52, Intake: 63, Fuel: 126, Opening: 92,
			Tie: 54, Cut: 16, Rail: 238, Steel: 238, Moves: 243, Fitting: 167, SheetMetal: 243, Frame: 242, Wheels: 102, Grid: 250,
		},
		Faces: [Faces]uint8{
			FloorFace: 231, SteelFace: 65, RailFace: 238, LinesFace: 23, HotFace: 95, MovesFace: 102, NoseFace: 254, BumperFace: 245, ExhaustFace: 166,
			MufflerFace: 166, IntakeFace: 68, FuelFace: 133, FoulFace: 160, PickedFace: 25, LittleRoomFace: 194, FairRoomFace: 151, MuchRoomFace: 78,
		},
	},
	Sixteen: [Faces]uint8{
		FloorFace: 15, SteelFace: 8, RailFace: 8, LinesFace: 6, HotFace: 5, MovesFace: 7, NoseFace: 7, BumperFace: 8, ExhaustFace: 3, MufflerFace: 3,
		IntakeFace: 12, FuelFace: 13, FoulFace: 9, PickedFace: 4, LittleRoomFace: 10, FairRoomFace: 10, MuchRoomFace: 2,
	},
	Rooms: [scene.Grades]Colour{
		scene.DoubtfulRoom: {0x946a00, 5}, scene.LittleRoom: {0x568a59, 2}, scene.FairRoom: {0x447a48, 2}, scene.MuchRoom: {0x2c6332, 2},
	},
}

var sun = Table{
	Paper: Colour{0xffffff, 15}, Ink: Colour{0x000000, 0}, Own: true, Last: [2]int{0x000000, 0xffffff},
	Text: Text{
		Faint: Colour{0x303030, 0}, Title: Colour{0x0a1352, 4}, Key: Colour{0x0a1352, 4}, Field: Colour{0x000000, 0},
		Foul: Colour{0x910000, 1}, Doubtful: Colour{0x3d3523, 5}, Clear: Colour{0x09261f, 0},
	},
	Marks: [Marks]Colour{
		Foul: {0x910000, 1}, Doubtful: {0x9f6b0e, 5}, Room: {0x418449, 2}, Picked: {0x845ae7, 4},
		Lines: {0x1d6974, 12}, Hot: {0x6d4433, 8}, Exhaust: {0x994600, 13}, Intake: {0x1c3be6, 12}, Fuel: {0xc5176d, 0},
		Opening: {0x59148d, 8}, Tie: {0xa600ad, 0}, Cut: {0x000000, 0},
		Rail: {0x363238, 0}, Steel: {0x4d4e57, 0}, Moves: {0x143a4e, 8}, Fitting: {0x3c1c00, 8},
		SheetMetal: {0x505a62, 8}, Frame: {0x303840, 8}, Wheels: {0x606870, 8}, Grid: {0x9aa2aa, 7},
	},
	Faces: [Faces]int{
		FloorFace: 0xffffff, SteelFace: 0x7f9796, RailFace: 0x596578, LinesFace: 0x008997, HotFace: 0x914f43, MovesFace: 0x817d7b,
		NoseFace: 0xd0d6dc, BumperFace: 0x59626b, ExhaustFace: 0xe27400, MufflerFace: 0xd66b00, IntakeFace: 0x114bd9, FuelFace: 0xdf5cb1,
		FoulFace: 0xd11912, PickedFace: 0x3c90f2, LittleRoomFace: 0xc6ecc0, FairRoomFace: 0x94d890, MuchRoomFace: 0x5cbc60,
	},
	Cube: Cube{
		Marks: [Marks]uint8{
			Foul: 124, Doubtful: 130, Room: 22, Picked: 63, Lines: 30, Hot: 95, Exhaust: 137, Intake: 21, Fuel: 161, Opening: 54,
			Tie: 127, Cut: 16, Rail: 237, Steel: 238, Moves: 24, Fitting: 52, SheetMetal: 240, Frame: 237, Wheels: 241, Grid: 247,
		},
		Faces: [Faces]uint8{
			FloorFace: 231, SteelFace: 246, RailFace: 60, LinesFace: 30, HotFace: 131, MovesFace: 242, NoseFace: 188, BumperFace: 241, ExhaustFace: 202,
			MufflerFace: 202, IntakeFace: 21, FuelFace: 169, FoulFace: 160, PickedFace: 33, LittleRoomFace: 194, FairRoomFace: 114, MuchRoomFace: 71,
		},
	},
	Sixteen: [Faces]uint8{
		FloorFace: 15, SteelFace: 8, RailFace: 8, LinesFace: 6, HotFace: 5, MovesFace: 7, NoseFace: 7, BumperFace: 8, ExhaustFace: 3, MufflerFace: 3,
		IntakeFace: 12, FuelFace: 13, FoulFace: 9, PickedFace: 4, LittleRoomFace: 10, FairRoomFace: 10, MuchRoomFace: 2,
	},
	Rooms: [scene.Grades]Colour{
		scene.DoubtfulRoom: {0x7c5600, 5}, scene.LittleRoom: {0x2c7a30, 2}, scene.FairRoom: {0x15651c, 2}, scene.MuchRoom: {0x004d0c, 2},
	},
}

// night has no light of short waves in it, which the eye that sees in the dark answers to most: red before green before blue, and little of that. With sixteen
// colours it has four inks; letters, patterns and words tell the rest.
var night = Table{
	Paper: Colour{0x080200, 0}, Ink: Colour{0xc89058, 3}, Own: true, Last: [2]int{0x080200, 0xffa850},
	Text: Text{
		Faint: Colour{0x9c6f48, 1}, Title: Colour{0xff8c66, 11}, Key: Colour{0xff8c66, 11}, Field: Colour{0xe0a860, 3},
		Foul: Colour{0xff4c00, 9}, Doubtful: Colour{0xbb9b42, 11}, Clear: Colour{0xb8b800, 3},
	},
	Marks: [Marks]Colour{
		Foul: {0xff4c00, 9}, Doubtful: {0xbb9b42, 11}, Room: {0xb8b800, 3}, Picked: {0xff8c66, 11},
		Lines: {0x9f8c65, 1}, Hot: {0x84522e, 1}, Exhaust: {0xef6362, 3}, Intake: {0x7d5b5b, 1}, Fuel: {0xa43a00, 1},
		Opening: {0xb26160, 1}, Tie: {0xca4015, 1}, Cut: {0xffa850, 11},
		Rail: {0x956f3e, 1}, Steel: {0x997040, 1}, Moves: {0x6a6a4a, 1}, Fitting: {0x908f22, 1},
		SheetMetal: {0x755840, 1}, Frame: {0x987350, 1}, Wheels: {0x6e553a, 1}, Grid: {0x402e1c, 1},
	},
	Faces: [Faces]int{
		FloorFace: 0x120500, SteelFace: 0x877366, RailFace: 0xa58366, LinesFace: 0x7b7a00, HotFace: 0xa19a5d, MovesFace: 0xa06952,
		NoseFace: 0x2c1c10, BumperFace: 0x8e7254, ExhaustFace: 0xe98500, MufflerFace: 0xc5633c, IntakeFace: 0xe2b400, FuelFace: 0xfc674b,
		FoulFace: 0xfe0900, PickedFace: 0xff9f66, LittleRoomFace: 0x2a2800, FairRoomFace: 0x3c3a00, MuchRoomFace: 0x4c4900,
	},
	Cube: Cube{
		Marks: [Marks]uint8{
			Foul: 174, Doubtful: 178, Room: 184, Picked: 209, Lines: 246, Hot: 172, Exhaust: 203, Intake: 95, Fuel: 180, Opening: 131,
			Tie: 196, Cut: 215, Rail: 137, Steel: 137, Moves: 242, Fitting: 100, SheetMetal: 95, Frame: 101, Wheels: 94, Grid: 236,
		},
		Faces: [Faces]uint8{
			FloorFace: 232, SteelFace: 244, RailFace: 138, LinesFace: 101, HotFace: 144, MovesFace: 167, NoseFace: 234, BumperFace: 137, ExhaustFace: 208,
			MufflerFace: 173, IntakeFace: 179, FuelFace: 202, FoulFace: 160, PickedFace: 216, LittleRoomFace: 235, FairRoomFace: 58, MuchRoomFace: 94,
		},
	},
	Rooms: [scene.Grades]Colour{
		scene.DoubtfulRoom: {0xbb9b42, 11}, scene.LittleRoom: {0x807f10, 3}, scene.FairRoom: {0x949318, 3}, scene.MuchRoom: {0xb8b800, 3},
	},
}
