package quantity

// String tells the amount again: "20 g ± 1 g". Read by Amount it gives the same
// amount, with the same Reader where it has a measure of the kit's own.
func (a Amount) String() string { return a.Written }
