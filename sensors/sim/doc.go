// Package sim makes simulated rides: the true motion of a motorcycle and what a
// phone on it would have recorded, so that everything that reads a log can be
// checked against the truth.
//
// A Scenario defines bike, road, wind, phone and receiver and what the rider
// does (a plan of acts). Run simulates the plan and returns a Ride: the log and
// the truth. The same scenario and seed always give the same ride. Each part
// has its own random stream, so that changing the phone does not change the
// wind.
//
// # Motion
//
// The bike is a point mass with rotating parts on a road with a profile
// (Cossalter, Motorcycle Dynamics, chapter 3):
//
//	(m + m_rot + J·r²)·dv/dt = η·M(n)·r − ½·ρ·CdA·u·|u| − m·g·Crr·(1 + k·v) − m·g·sin θ(x) − B
//
// with the mass m, the wheels' m_rot, the engine's moment of inertia J referred
// to the road by r (radians of crank per metre of road; only while the clutch
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
// The accelerometer measures the specific force of the chassis, which squats
// and dives on its springs and leans in turns, through a mount of any attitude,
// with scale error, bias, drifting bias and white noise. The engine vibrates at
// ½, 1 and 2 times the engine speed; these lines are sampled without a filter,
// so that those above half the sampling rate alias, as in a phone without an
// anti-alias filter. The road adds broadband noise that grows with speed. The
// phone sits at the centre of rotation: lever arms are neglected.
//
// # Microphone
//
// If the scenario has one, it picks up the engine at half and whole multiples
// of its speed, louder with load, with the jitter of real firings; wind noise
// that grows with the dynamic pressure of the air and falls towards high
// frequencies; and a tone of the tyre's tread, which follows the wheel as an
// engine in one gear does. Automatic gain control, as in phones, acts on all of
// it. Time stamps of sound are late by Microphone.Latency.
//
// # Receiver
//
// A fix describes the motion Receiver.Latency earlier, smoothed if so
// configured, with white and first-order correlated errors along and across the
// path; so the speed at a standstill is small and positive and the course is
// meaningless there.
package sim
