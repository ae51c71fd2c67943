// Command pitgate is the whole house in one binary: the server, its demo, and tools that need neither server nor network.
//
//	pitgate serve            serve the API and the page
//	pitgate demo             the same on this machine only, with the Larkmoor club in it
//	pitgate migrate          bring a database to this version
//	pitgate club             open a club with its first administrator
//	pitgate reassess         compute a club's approvals again, or all clubs'
//	pitgate export CLUB      write a club's ledger for others to verify
//	pitgate metar TEXT       read an aerodrome report into the conditions of the day
//	pitgate assess FILE      compute one document; exit status 0 holds, 1 something fails or is unknown, 2 bad input
//	pitgate compare A B      what changed between two documents and which findings moved; exit status as assess, of the second
//	pitgate weigh FILE       mass, balance, travel with fuel and ballast; exit status as assess
//	pitgate bench FILE       what to inspect on a model, or its cards with --cards
//	pitgate roll FILE        rolling friction by the rolling tests of a document; exit status 0 worked out, 1 something is missing
//	pitgate field FILE       check a field's description; exit status 0 nothing stands out, 1 look again, 2 it cannot be kept
//	pitgate rules [PACK]     list the rule packs, show one, or make the strictest of several for a document
//	pitgate verify EXPORT    check a ledger export; exit status 0 verified, 1 not
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// command is one subcommand: it returns the exit status, or an error, which means status 2.
type command struct {
	name, usage string
	run         func(ctx context.Context, args []string, streams streams) (int, error)
}

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// exitUsage is the status of a command that could not do its work.
const exitUsage = 2

// commands lists every subcommand in the order of the help.
func commands() []command {
	return []command{
		{"serve", "serve the API and the page", runServe},
		{"demo", "serve the Larkmoor club on this machine only", runDemo},
		{"migrate", "bring a database to this version", runMigrate},
		{"assess", "compute one document: assess FILE [--json]", runAssess},
		{"compare", "compare two documents: compare FROM TO [--json]", runCompare},
		{"metar", "read an aerodrome report: metar TEXT [--json]", runMetar},
		{"weigh", "work out a weigh-in: weigh FILE [--json], or --form for a blank one", runWeigh},
		{"bench", "what to inspect on a model: bench FILE [--cards | --json]", runBench},
		{"roll", "work out rolling tests: roll FILE [--json]", runRoll},
		{"field", "check a field's description: field FILE", runField},
		{"rules", "rule packs: rules [PACK ...] [--for FILE] [--on DATE] [--json]", runRules},
		{"club", "open a club with its first administrator", runClub},
		{"reassess", "compute approvals again: reassess --club X|--all [--workers N]", runReassess},
		{"export", "write a club's ledger: export CLUB > FILE", runExport},
		{"verify", "check a ledger export: verify EXPORT", runVerify},
	}
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	status := run(ctx, os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})
	stop()
	os.Exit(status)
}

// run finds the subcommand and tells its exit status.
func run(ctx context.Context, args []string, s streams) int {
	if len(args) == 0 {
		help(s.err)
		return exitUsage
	}
	for _, c := range commands() {
		if c.name != args[0] {
			continue
		}
		status, err := c.run(ctx, args[1:], s)
		switch {
		case errors.Is(err, flag.ErrHelp):
			return 0
		case err != nil:
			tell(s.err, "pitgate %s: %v\n", c.name, err)
			return exitUsage
		}
		return status
	}
	if args[0] == "help" || args[0] == "--help" || args[0] == "-h" {
		help(s.out)
		return 0
	}
	tell(s.err, "pitgate: unknown command %q\n", args[0])
	help(s.err)
	return exitUsage
}

// help lists the subcommands.
func help(w io.Writer) {
	tell(w, "usage: pitgate COMMAND [flags]\n")
	for _, c := range commands() {
		tell(w, "  %-8s  %s\n", c.name, c.usage)
	}
	tell(w, "pitgate COMMAND --help tells the flags of one command\n")
}

// tell writes for people. A stream that is closed has nobody behind it to hear of the error.
func tell(w io.Writer, format string, args ...any) {
	_, _ = fmt.Fprintf(w, format, args...)
}
