// Package club holds the records of a model-flying club and the rules they obey: who may move an approval from which
// state to which, what a lesson's predicate says about a model, which occurrence categories exclude each other. It does
// no input or output and knows no database, no transport and no clock.
package club
