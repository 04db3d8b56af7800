// Package roadload finds what holds a bike back from its coast-downs: the drag
// area CdA and the coefficient of rolling resistance Crr.
//
// A bike of mass m that rolls with the clutch in slows by
//
//	(m + m_rot)·dv/dt = −[½·ρ·CdA·u·|u| + m·g·Crr·(1 + k·v) + m·g·sin θ]
//
// with v the road speed, u = v + wind the speed of the air against it, ρ the
// air density, θ the slope and m_rot what the wheels add to the inertia. One
// run alone cannot tell rolling resistance from slope nor drag from wind. Two
// runs in opposite directions can: what helps one hinders the other.
//
// # What is fitted
//
// The speed over time itself, of all runs at once: no derivative of a measured
// speed is taken. Every run has its own starting speed, every pair its own
// mean wind and mean slope, and all runs on one road share that road's
// profile. These enter as random effects with a spread that is given or learned
// (Henderson's mixed model).
//
// # The road
//
// A profile that repeats itself mirrored, as two opposite runs from the two
// ends of one stretch see it, does to the speed just what more drag or less
// rolling resistance would do: no number of such pairs tells them apart. Two
// things do. A barometer shows the profile, once the share of dynamic pressure
// that it feels is fitted with the rest (the two directions pass each place at
// different speeds). And runs that start in different places pass one place at
// different speeds in one direction: best where each pair starts some 200 m
// farther on its way, out and back, than the one before it. The receiver's
// altitude, where there is no barometer, helps a little: in the time of a run its
// error wanders by some metres (Soundy and others, Sensors 20 (2020) 6050, fit
// such processes to recorded positions), the profile of a rough road by one. How
// much is found from the altitudes, and those that are stuck or rounded are not
// used. The profile's slope is an Ornstein-Uhlenbeck process along the road,
// given at knots; how rough it is is learned, and averaged over.
//
// On a road with a slope of 0.2 % over 150 m, in a wind of 1.5 m/s, the bound of
// CdA from five pairs is larger than on a smooth road by these factors, for three
// bikes:
//
//	two ends of one stretch, no barometer         1.6 to 2.3
//	starts 250 m apart by chance, no barometer    1.2 to 1.6
//	each pair 200 m farther on, no barometer      1.1 to 1.2
//	two ends of one stretch, barometer            1.2 to 1.3
//
// In calm air, where the gusts hide less, the last but one stays at 1.1 to 1.2,
// the others rise, with a barometer to as much as 1.8. A difference of two
// setups does not need to know the road where both roll from the same places,
// and loses up to a quarter of its certainty where they do not (TestSamePlaces).
//
// An accelerometer would not help. In a coast-down it feels the drag and not the
// slope, but also the pitch of the bike on its springs, which grows with the
// square of the speed as the drag does, and it is shaken. In vibration of 6 m/s²,
// with a pitch of about 0.1° by the wind at 30 m/s and one that changes what is
// felt of accelerations by 5 % (common practice), the bound falls by
// 1 to 3 % where starts are apart and by 3 to 7 % from two ends of one stretch; a
// quarter of that in vibration of 18 m/s²; and no more than 5 and 14 % were the
// pitch known (TestThirdWitness).
//
// Where not every fix has a position, the distance rolled takes its place: runs
// in one direction begin at much the same place, and those back about where
// the runs out end. The road load is averaged over a smooth and several rough
// roads, each weighed by how likely it makes the runs. On a road of 0.2 % the
// intervals of CdA and Crr then hold in 92 and 97 % of tests (two in three
// when it is treated as smooth) where the runs back begin well beyond the end of
// the runs out, but in some 85 % where they begin just there: what opposite runs
// see mirrored passes for drag and leaves no trace. On a smooth road they
// are some 10 % wider than necessary, in calm air 15 to 20 %. A road of
// 0.1 % is not always noticed; on it they hold in 85 to 90 %.
//
// # What does not belong
//
// After the fit, each fix is tested for a jump of the speed just before it, and
// each run for a drag area or a rolling resistance of its own. The clearest case is cut or left out with its reason, and all is fitted
// again, until nothing is left to find.
//
// The mean wind may change between the two runs of a pair, and then looks like
// drag in both. A pair that disagrees with the others is fitted with the change
// as one more random effect; where that makes the runs more likely, all pairs
// are, with a spread that is learned. So the pair stays in and counts for
// less. With two pairs nobody can say which of them it was: both count for less.
//
// # What the errors are
//
// Measured speed leaves the fitted curve for three reasons, none of them
// white: gusts (an Ornstein-Uhlenbeck process that acts through the drag and
// is integrated by the bike), the receiver's slowly wandering error (a second
// such process), and the receiver's white noise. The three form a small linear
// state-space model, so a Kalman filter whitens a run in a time proportional
// to its length (Harvey, Forecasting, Structural Time Series Models and the
// Kalman Filter, 1989, section 3.4). A fit that takes the errors as white
// gives intervals several times too narrow.
//
// The size and correlation time of gusts and receiver error are learned by
// restricted maximum likelihood with weak priors (Patterson and Thompson,
// Biometrika 58 (1971) 545). How well that succeeded goes into the standard
// errors (Kenward and Roger, Biometrics 53 (1997) 983) and into Satterthwaite's
// degrees of freedom: the intervals are Student's, not normal.
// Each size is learned by its logarithm, with a prior that is weak but proper, so
// that the maximum does not lie at a boundary where a size is zero; on days
// without wind or gusts the intervals are wider than necessary, but hold
// (TestCalmAndSmooth).
//
// The pairs of a day share a steady wind along the road and a mean slope, both
// free; only what a pair has beyond them has a prior. So a wind that blows one
// way all day neither widens nor biases the figures.
//
// # What is assumed, and what that costs
//
// The force at each speed is what the runs show. How it is divided into air and
// tyres relies on how either grows with speed, on the cross-wind, on a posture
// that is kept, on tyres that are warm, and on the mass and the air. What the
// fit keeps fixed without knowing it has a prior from textbooks and standards (see
// assumptions), and its effect on the road loads is calculated by consider
// covariance analysis (Schmidt): Estimate.Assumed. Load and Cov hold what noise
// leaves, together with mass and air; Total adds what is assumed. Most of that
// is common to two setups and cancels in Between and Alike. How rolling resistance
// falls while tyres warm up does not, where one setup was ridden earlier. The runs
// show it as they follow each other, so its size is found by generalised least
// squares, with its prior, and differences are corrected for it. The force at a
// speed, in which the split does not matter, has its own band: Force.
//
// The more the speed of a run falls, the more it says about the split. Where the
// runs leave Crr more open than textbooks do, as with two or three fixes, it gets
// their prior (see tyres), and a note says so. A run of two fixes is enough: one change
// of speed. What few changes leave open is in the uncertainty (TestFewFixes).
//
// Drag of clutch, gearbox and chain is part of what is called rolling here.
// TestWrongModel fits tests whose physics are not those of this package.
package roadload
