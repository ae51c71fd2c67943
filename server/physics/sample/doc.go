// Package sample spreads points evenly over many uncertain numbers at once and reads off what the answers say: quantiles, the share that holds, and
// how much of the variance each number is to blame for. Nothing here is random: the same seed gives the same bits on every machine and on any number
// of workers.
package sample
