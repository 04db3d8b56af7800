// Package effect computes what a road load means on the road: the power needed
// at a steady speed, the speed for a given power, top speed, fuel consumption
// and range, and the effect of a difference between two setups on each.
//
// # Physics
//
// A bike at a steady speed v on the level, in still air, needs the force
//
//	F(v) = ½·ρ·CdA·v² + m·g·Crr·(1 + k·v)
//
// and the power P = F·v at the tyre (Cossalter, Motorcycle Dynamics, on the
// forces in steady straight running). The power lost to air drag grows with the
// cube of speed, that lost to tyres hardly faster than in proportion, so a
// change of drag matters at high speed and a change of tyres at low speed.
//
// # Uncertainty
//
// Each result is a smooth function of CdA, Crr and other measured quantities;
// its variance is propagated to first order with the covariance of CdA and Crr
// (JCGM 100:2008, 5.2.2). The two are strongly anti-correlated when they come
// from one coast-down fit, so leaving the covariance out would make the power
// at a speed inside the tested range look far less certain than it is.
//
// # Fuel
//
// Over the middle of its load range the fuel rate of an engine is nearly linear
// in power: a constant part to turn itself, and a part in proportion to work
// (the Willans line; Heywood, Internal Combustion Engine Fundamentals, on
// friction). A cut in road power therefore cuts fuel by less than in
// proportion. With consumption measured at one speed only, the slope is
// unknown; it is then assumed to be 0.8 ± 0.1 of proportional, which the result
// shows.
package effect
