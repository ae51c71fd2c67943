// Package weather turns a reported wind into the wind a model meets. Speeds are in m/s, heights and lengths in m, angles in radians, directions
// clockwise from true north and of where the wind comes from, moments seconds since 1970-01-01 UTC.
//
//	along and across a heading      Headwind, Crosswind; over gusts and a sector of directions Wind.Over; the wind triangle HoldTrack
//	change with height              NewProfile, Profile.Factor
//	gust                            GustFloor: the reported one, else the least of the terrain
//	behind hedges, walls, banks     Windbreak.At at a distance; Barrier.At on the field's plane; AlongPath for a launch or an approach;
//	                                Barrier.Wake for the outline to draw
//	wind over time                  Moment reads a time, NewForecast, Forecast.At, Forecast.Worst
//	wheels across the wind          Wheels.SlipLimit, WeathercockLimit, SlideLimit, CrabLimit, ApproachLimit
//	which winds hold                Search.Rose
//
// Types that can be impossible have a Check whose error names the field; functions take what passed it. What cannot be never gives NaN.
package weather
