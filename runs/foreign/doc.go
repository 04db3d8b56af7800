// Package foreign holds nothing but tests: whole rides of a simulator that shares no
// code, no law and no number with package sim, from what a phone would have
// recorded to the result. Its engines, riders, roads, suspensions and receivers are
// redrawn for each ride, from 9 to 140 kW and 50 to 400 readings a second.
//
// What differs from package sim on purpose: power over engine speed is a parabola and
// gear changes cut it off; clutches take hold in five ways; a throttle that is not
// full wavers; rolling resistance grows with speed and its square by other shares;
// the phone's bike pitches on its springs as a damped oscillator; a receiver gives the
// mean speed of a window in place of a filtered one, and adds a slow drift.
//
// An earlier form of these rides, of other seeds, showed the faults that package marks
// and the judging of clutches in package runs now guard against, and set the limits
// of the latter. The pulls of seeds 3001 to 3040 set those of gears by their lines and of
// launches that are outdone, the rides without a run of seeds 6101 to 6225 those of
// unsteady thrust, and the launches of seeds 8001 to 8530 those of wheelies, of drops of
// the thrust and of the rounding of speeds near a gear change. The coast-downs of seeds
// 9101 to 9124 set those of a drag area that differs from run to run.
package foreign
