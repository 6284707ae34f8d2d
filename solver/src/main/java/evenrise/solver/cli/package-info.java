/** The command line: parse, read, call one service, write, map to an exit code. Only this package prints. */
package evenrise.solver.cli;
