// Package engine gives the thrust and fuel flow of a turbine, ducted fan or propeller with speed, time since the throttle was opened, and the
// air of the day. Thrust is in N, speed in m/s, time in s, temperature in K, pressure in Pa, mass flow in kg/s.
package engine
