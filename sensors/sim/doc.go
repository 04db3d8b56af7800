// Package sim makes simulated rides: the true motion of a motorcycle and what a
// phone on it would have recorded, so that everything that reads a log can be
// checked against the truth beside it.
//
// A Scenario says what there is (bike, road, wind, phone, receiver) and what
// the rider does (a plan of acts). Run plays the plan and returns a Ride: the
// log and the truth. The same scenario and seed always give the same ride.
// Each part draws from a random stream of its own, so that changing the phone
// does not change the wind.
//
// # Motion
//
// The bike is a point mass with rotating parts on a road with a profile
// (Cossalter, Motorcycle Dynamics, chapter 3):
//
//	(m + m_rot + J·r²)·dv/dt = η·M(n)·r − ½·ρ·CdA·u·|u| − m·g·Crr·(1 + k·v) − m·g·sin θ(x) − B
//
// with the mass m, the wheels' m_rot, the engine's moment of inertia J turned
// to the road by r (radians of crank each metre of road; only while the clutch
// is closed), the torque M at the engine speed n, the air speed u, the slope θ
// at the road position x and the brake force B. It is integrated by the
// midpoint rule in steps of 2 ms.
//
// With a cross-wind w the air force is ½·ρ·CdA·u·√(u²+w²), the drag of a body
// whose drag area does not change with the yaw of the flow.
//
// # Wind
//
// A mean wind vector holds until the plan draws another (NewWind; each coast-down
// pair does so): the component along the road is normal with Wind.SD. Gusts are
// added as a first-order Gauss-Markov (Ornstein-Uhlenbeck) process in the
// bike's time, the longitudinal form of Dryden's turbulence (MIL-F-8785C), with
// the standard deviation Wind.GustRatio·Wind.SD and time constant Wind.GustTau.
//
// # Road
//
// The slope is a mean plus a Matérn process of smoothness 3/2 over the position
// along the road: the same place has the same slope on every run and in both
// directions. The surface does not change across the road.
//
// # Phone
//
// The accelerometer feels the specific force of the chassis, which squats and
// dives on its springs and leans in turns, through a mount of any attitude, with
// scale error, bias, drifting bias and white noise. The engine shakes it at ½,
// 1 and 2 times the engine speed; these lines are sampled as they are, so that
// those above half the sampling rate fold down, as in a phone without an
// anti-alias filter. The road adds broadband noise that grows with speed. The
// phone sits at the centre of the turns: lever arms are left out.
//
// # Microphone
//
// Where the scenario has one, it hears the engine at half and whole multiples
// of its speed, louder with load, with lines that waver as firings do; wind
// noise that grows with the dynamic pressure of the air and falls towards high
// frequencies; and a tone of the tyre's tread, which goes with the wheel as an
// engine in one gear does. A gain that sets itself, as phones have, lies over
// all of it. Sound is stamped late by Microphone.Latency.
//
// # Receiver
//
// A fix says what was true Receiver.Latency earlier, perhaps smoothed, with
// white and first-order correlated errors along and across the path; so the
// speed at a standstill is small and positive and the course means nothing
// there.
package sim
