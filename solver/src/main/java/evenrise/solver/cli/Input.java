package evenrise.solver.cli;

import java.util.List;

/**
 * What was read from a file.
 *
 * @param findings what is well-formed but cannot come out well, one message each
 * @param sha256 of the file's bytes, in hexadecimal
 */
record Input<T>(T value, List<String> findings, String sha256) {}
