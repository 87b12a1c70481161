package vehicles

// Kinds are the kinds of obstruction of job file format 1, in the order lists show them.
var Kinds = []string{
	"crossmember", "chassis rail", "floor rib", "brake line", "fuel line", "fuel tank", "wiring",
	"vehicle exhaust", "spare wheel", "suspension", "driveshaft", "jacking point", "plastic part", "heat shield",
	"wheel arch", "double skin", "seat mount", "seat-belt mount", "reductant tank", "gas tank", "hand-brake cable",
	"air line", "tyre", "body sill", "other",
}

// OpeningKinds are the kinds of opening of job file format 1.
var OpeningKinds = []string{
	"door", "window", "vent", "floor drain", "fuel filler", "side step", "cab air inlet", "body plug", "other",
}
