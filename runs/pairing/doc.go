// Package pairing brings coast-downs together that were ridden on the same
// road in opposite directions.
//
// Wind and slope help in one direction as much as they hinder in the other, so
// only a pair of opposite runs can tell air drag and rolling resistance from
// them. Two runs belong to one road when they point along the same line, lie
// beside each other to within a road's width and the receiver's error, and
// overlap along it. Within a road and a setup, opposite runs are paired so
// that as many pairs as possible come together with the least time between
// their two runs, since the wind changes with time.
//
// Places are distances along the road's axis: the fixes are laid on a plane
// that touches the Earth (local east and north, exact to centimetres over a
// few kilometres) and projected on the direction in which they spread most.
package pairing
