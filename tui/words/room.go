package words

// NoPlaceKeepsAll says that the cut can go nowhere.
const NoPlaceKeepsAll = "No place on the floor keeps every distance asked for"
