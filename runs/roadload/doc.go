// Package roadload estimates the road load of a bike from its coast-downs: the
// drag area CdA and the coefficient of rolling resistance Crr.
//
// The equation of motion of a bike of mass m that coasts with the clutch in is
//
//	(m + m_rot)·dv/dt = −[½·ρ·CdA·u·|u| + m·g·Crr·(1 + k·v) + m·g·sin θ]
//
// with v the road speed, u = v + wind the air speed, ρ the air density, θ the
// slope and m_rot the equivalent mass of the rotating wheels. One run alone
// cannot separate rolling resistance from slope, nor drag from wind. Two runs
// in opposite directions can: what helps one hinders the other.
//
// # What is fitted
//
// The trajectory of the speed, for all runs at once, by nonlinear generalised
// least squares (GLS) with Gauss-Newton iterations: no measured speed is
// differentiated. Every run has its own starting speed, every pair its own mean
// wind and mean slope, and all runs on one road share that road's profile.
// These are random effects with variances that are given or learned (a mixed
// model, solved by Henderson's equations).
//
// # The road
//
// A profile that is mirror-symmetric, as seen by two opposite runs from the two
// ends of one stretch, changes the speed exactly as more drag or less rolling
// resistance would: however many such pairs there are, the two cannot be
// separated. Two things separate them. A barometer shows the profile, once the
// fraction of dynamic pressure that it senses is fitted as well (the two
// directions pass each place at different speeds). And runs that start in
// different places pass one place at different speeds in one direction: best
// where each pair starts some 200 m farther along, out and back, than the one
// before it. Without a barometer the receiver's altitude helps a little: during
// a run its error drifts by some metres (Soundy and others, Sensors 20 (2020)
// 6050, fit such processes to recorded positions), while the profile of a rough
// road varies by one. The drift is estimated from the altitudes; altitudes that
// are stuck or rounded are not used. The profile's slope is an
// Ornstein-Uhlenbeck process along the road, represented at knots; its variance
// (the roughness) is learned, and the result averaged over it.
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
// In calm air, where gusts mask less, the last but one stays at 1.1 to 1.2 and
// the others rise, with a barometer to as much as 1.8. The road cancels from a
// difference of two setups if both roll from the same places; if they do not,
// its standard error grows by up to a quarter (TestSamePlaces).
//
// An accelerometer would not help. In a coast-down it measures the drag without
// the slope, but also the pitch of the bike on its springs, which grows with
// the square of the speed as the drag does, and vibration. With vibration of 6
// m/s², a pitch of about 0.1° from the wind at 30 m/s and a pitch that changes
// measured accelerations by 5 % (common practice), the bound falls by 1 to 3 %
// where starts are apart and by 3 to 7 % from two ends of one stretch; by a
// quarter of that in vibration of 18 m/s²; and by no more than 5 and 14 % if
// the pitch were known (TestThirdWitness).
//
// Where fixes lack positions, the distance rolled takes their place (dead
// reckoning): runs in one direction begin at about the same place, and those
// back about where the runs out end. The road load is averaged over a smooth
// and several rough roads, weighted by the likelihood of the runs (Bayesian
// model averaging). On a road of 0.2 % the coverage of the 95 % intervals of
// CdA and Crr is then 92 and 97 % (two in three if the road is treated as
// smooth) where the runs back begin well beyond the end of the runs out, but
// some 85 % where they begin just there: the mirror-symmetric part of the
// profile looks like drag and leaves no trace. On a smooth road the intervals
// are some 10 % wider than necessary, in calm air 15 to 20 %. A road of 0.1 %
// is not always detected; coverage on it is 85 to 90 %.
//
// # What does not belong
//
// After the fit, each fix is tested for a jump of the speed just before it, and
// each run for a drag area or a rolling resistance of its own. The most
// significant outlier is cut or left out with its reason, and the fit is
// repeated until there are no more (sequential outlier rejection).
//
// The mean wind may change between the two runs of a pair, and then looks like
// drag in both. A pair that disagrees with the others is fitted with the change
// as one more random effect; if the likelihood is higher with such an effect in
// every pair, with a learned variance, that is used instead. So the pair stays
// in the fit with less weight. With only two pairs it is unknown which one
// changed, so both get less weight.
//
// The rider's posture differs from run to run. Where the likelihood is clearly higher
// with it, each run has a drag area of its own, a random effect with a learned variance;
// where a setup has four runs or fewer, which cannot show it, always, with a smaller
// variance expected (fewPosture). With two pairs for each setup 92 % of the intervals of a
// difference then contain the truth if the drag area varies by 6 %, where it was 90 %, and
// they are 11 % wider if it does not (TestPostureOfFewPairs).
//
// # What the errors are
//
// Measured speed deviates from the fitted curve for three reasons, which
// together are far from white: gusts (an Ornstein-Uhlenbeck process that acts
// through the drag and is integrated by the bike's inertia), the receiver's
// slowly varying error (a second such process), and the receiver's white noise.
// The three form a small linear state-space model, so a Kalman filter whitens a
// run in a time proportional to its length (Harvey, Forecasting, Structural
// Time Series Models and the Kalman Filter, 1989, section 3.4). A fit that
// assumes white errors gives intervals several times too narrow.
//
// The variance and correlation time of gusts and receiver error are estimated
// by restricted maximum likelihood (REML) with weak priors (Patterson and
// Thompson, Biometrika 58 (1971) 545), maximised by BFGS. Their uncertainty
// enters the standard errors (Kenward and Roger, Biometrics 53 (1997) 983) and
// Satterthwaite's degrees of freedom: the intervals are Student's t, not
// normal. Each variance is parametrised by its logarithm, with a weak but
// proper prior, so that the maximum does not lie on the boundary at zero; on
// days without wind or gusts the intervals are wider than necessary, but their
// coverage holds (TestCalmAndSmooth).
//
// The pairs of a day share a steady wind along the road and a mean slope, both
// free; only each pair's deviation from them has a prior. So a wind that blows
// one way all day neither widens nor biases the figures.
//
// # What is assumed, and what that costs
//
// The runs determine the force at each speed. Its division into air and tyres
// depends on how each grows with speed, on the cross-wind, on a constant
// posture, on warm tyres, and on mass and air density. Each such parameter that
// the fit holds fixed has a prior from textbooks and standards (see
// assumptions), and its effect on the road loads is calculated by consider
// covariance analysis (Schmidt): Estimate.Assumed. Load and Cov contain the
// uncertainty from noise, mass and air; Total adds that of the assumptions.
// Most of the latter is common to two setups and cancels in Between and Alike.
// The fall of rolling resistance while tyres warm up does not cancel where one
// setup was ridden earlier. The sequence of runs shows it, so its size is
// estimated by generalised least squares, with its prior, and differences are
// corrected for it. The force at a speed, in which the split does not matter,
// has its own band: Force.
//
// The larger the range of speed of a run, the more it determines the split.
// Where the runs leave Crr less certain than textbooks do, as with two or three
// fixes, it gets a prior from them (see tyres), and a note. A run of two fixes
// is enough: one change of speed. The uncertainty covers what few changes leave
// undetermined (TestFewFixes).
//
// Drag of clutch, gearbox and chain counts as rolling resistance here.
// TestWrongModel fits tests whose physics differ from this package's model.
package roadload
