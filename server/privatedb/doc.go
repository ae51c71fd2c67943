// Package privatedb runs this machine's own PostgreSQL for one pitgate process: a data directory, a socket that
// only its account may enter, a password that only this directory holds, and no network port.
//
// Layout of the directory:
//
//	lock      held by the running process; a second process is refused
//	password  of the cluster's owner, mode 0600
//	data      the cluster, mode 0700
//	run       its socket, mode 0700 (elsewhere when the path is too long for a socket)
//
// PostgreSQL refuses to run as root. Started by root, the cluster runs as the account "postgres", or "nobody"
// when there is none. Started by anyone else, it runs as that user. Flushing to disk is always on.
//
// The cluster dies with the process that started it. After a crash of either, the next Start stops what is left,
// clears the stale files and lets PostgreSQL recover. When only the cluster crashes, it is started again at the
// same address.
package privatedb
