// Package effect says what a road load is worth on the road: the power that a
// steady speed takes, the speed that a power gives, top speed, fuel and range,
// and what a difference between two setups makes of each.
//
// # Physics
//
// A bike at a steady speed v on the level, in still air, needs the force
//
//	F(v) = ½·ρ·CdA·v² + m·g·Crr·(1 + k·v)
//
// and the power P = F·v at the tyre (Cossalter, Motorcycle Dynamics, on the
// forces in steady straight running). Air takes power with the cube of speed,
// tyres hardly faster than in proportion to it, which is why a change of drag
// tells at high speed and a change of tyres at low.
//
// # Uncertainty
//
// Each result is a smooth function of CdA, Crr and what else was measured; its
// variance is carried through to first order with the covariance of CdA and
// Crr (JCGM 100:2008, 5.2.2). The two are strongly anti-correlated when they
// come from one coast-down fit, so leaving the covariance out would make the
// power at a speed inside the tested range look far less certain than it is.
//
// # Fuel
//
// Over the middle of its load range an engine burns fuel nearly along a
// straight line: so much to turn itself, and so much for each unit of work
// (the Willans line; Heywood, Internal Combustion Engine Fundamentals, on
// friction). A cut in road power therefore cuts fuel by less than in
// proportion. With consumption measured at one speed only the slope is not
// known; the package then takes it as 0.8 ± 0.1 of proportion and says so.
package effect
