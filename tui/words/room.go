package words

// NoRoom says that the cut can go nowhere.
const NoRoom = "No place on the floor keeps every distance asked for"
