// Package labels lays the labels of a kit out on sheets: what each kind of label says (a
// file a kind), at which size it has room, and the HTML of the sheets in millimetres.
//
// Every line is measured with the metrics of the faces that are printed, so that lines are
// broken here and a browser only sets them. What has no room at the smallest size is a
// Misfit, never cut off.
package labels
