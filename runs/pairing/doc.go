// Package pairing pairs coast-downs that were ridden on the same road in
// opposite directions.
//
// Wind and slope help in one direction as much as they hinder in the other, so
// only a pair of opposite runs can separate air drag and rolling resistance
// from them. Two runs belong to one road if they have the same line of
// direction, a lateral distance within a road's width and the receiver's error,
// and overlap along it. Within a road and a setup, opposite runs are matched
// for the largest number of pairs and then the least time between their two
// runs, since the wind changes with time.
//
// Places are distances along the road's axis: the fixes are mapped to a local
// tangent plane (east and north, exact to centimetres over a few kilometres)
// and projected on their principal axis.
package pairing
