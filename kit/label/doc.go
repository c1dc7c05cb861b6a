// Package label reckons what stands on the labels of a kit from the kit and its ledger:
// declared net contents, the height of type that a panel asks for, the places on a
// sheet. It draws nothing; render/labels does.
//
// What is reckoned follows published rules of the United States and figures that the
// maker wrote. Whether a label meets the law of the place where it is sold is not
// decided here.
package label
