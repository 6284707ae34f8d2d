package evenrise.solver.cli;

import evenrise.solver.app.GridAccess;
import evenrise.solver.app.Source;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Which other machines work, and how they are known. */
final class GridOptions {
    @Option(
            names = "--grid",
            paramLabel = "HOSTS",
            description = "Have workers of these machines search (see 'evenrise worker'): HOST or HOST:PORT, parted by"
                    + " commas. The plans are the same.")
    private String hosts;

    @Option(
            names = "--keys",
            paramLabel = "FOLDER",
            description = "Keys of this machine, without which nothing outside it is joined.")
    private String keys;

    @Option(names = "--grid-log", paramLabel = "FILE", description = "Where what carries the jobs writes what it does.")
    private String log;

    @Option(
            names = "--grid-log-level",
            paramLabel = "LEVEL",
            description = "How much of it: error, warning, info or debug. Default: warning.")
    private String level;

    /** Empty where none are named. */
    Optional<GridAccess> access(CommandLine command) {
        if (hosts == null && (keys != null || log != null || level != null)) {
            throw new ParameterException(command, "--keys and --grid-log go with --grid.");
        }
        return Optional.ofNullable(hosts).map(each -> access(command, each, keys, log, level));
    }

    static GridAccess access(CommandLine command, String hosts, String keys, String log, String level) {
        if (log == null && level != null) {
            throw new ParameterException(command, "--grid-log-level goes with --grid-log.");
        }
        return new GridAccess(
                hosts,
                Optional.ofNullable(keys).map(Source::path),
                Optional.ofNullable(log).map(file -> new GridAccess.Log(Source.path(file), level(command, level))));
    }

    private static GridAccess.Level level(CommandLine command, String level) {
        return Stream.of(GridAccess.Level.values())
                .filter(each -> each.name().equalsIgnoreCase(level == null ? "warning" : level))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        command, "--grid-log-level is '" + level + "', expected error, warning, info or debug."));
    }
}
