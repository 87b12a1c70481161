package vehicles

// What stands on every screen and sheet where something is missing. A job's file writes NotSaid, too, and is read by it: see WithHeld.
const (
	NotSaid     = "not said"     // somebody has only to say it
	NotKnown    = "not known"    // nobody here may know it
	NotMeasured = "not measured" // a reading
)
