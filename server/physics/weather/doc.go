// Package weather turns a reported wind into the wind a model meets: its components along and across a heading, its change with height over
// rough ground, and the gust to expect where none is reported. Speeds are in m/s, heights and lengths in m, angles in radians.
package weather
