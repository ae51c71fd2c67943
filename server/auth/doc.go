// Package auth holds what proves who a caller is: password hashes, session tokens and the limit on sign-in
// attempts. It stores nothing; the database package does.
package auth
