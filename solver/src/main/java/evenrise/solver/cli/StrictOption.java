package evenrise.solver.cli;

import picocli.CommandLine.Option;

/** Whether what was not checked fails a command, too. */
final class StrictOption {
    @Option(
            names = "--strict",
            description = "Fail also where an electrical check could not be made, or an event peaks over a limit.")
    private boolean isStrict;

    boolean isStrict() {
        return isStrict;
    }
}
