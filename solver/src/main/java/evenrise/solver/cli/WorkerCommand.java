package evenrise.solver.cli;

import evenrise.solver.app.Effort;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.KeysRequest;
import evenrise.solver.app.Source;
import evenrise.solver.app.WorkerRequest;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
        name = "worker",
        header = "Have this machine search for others.",
        description = {
            "Takes jobs of commands that run with --grid, until it is stopped. It writes no plan; whoever asks does. All who"
                    + " take part run the same build of this program.",
            "--join names the machines that run workers, two or three of them by all who take part; this one may be"
                    + " among them. Without --keys it works for this machine alone. Workers are not for strangers: who has"
                    + " a key can have them run what they are made for."
        },
        footer = {
            "%nExamples:",
            "  evenrise worker --join localhost",
            "  evenrise worker --make-certificates keys --for ws1,ws2,desk",
            "  evenrise worker --join ws1,ws2 --keys keys/ws1"
        })
final class WorkerCommand implements Callable<Integer> {
    private static final int LEAST_PORT = 1024;
    private static final int MOST_PORT = 65_000;

    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--join",
            paramLabel = "HOSTS",
            description = "Machines that run workers: HOST or HOST:PORT, parted by commas.")
    private String hosts;

    @Option(
            names = "--keys",
            paramLabel = "FOLDER",
            description = "Keys of this machine, without which nothing outside it is joined.")
    private String keys;

    @Option(names = "--slots", paramLabel = "N", description = "Jobs side by side. Default: one for each processor.")
    private Integer slots;

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "Where it listens, and at N+100. Default: the first of 27650 to 27669 that is free.")
    private Integer port;

    @Option(names = "--grid-log", paramLabel = "FILE", description = "Where what carries the jobs writes what it does.")
    private String log;

    @Option(
            names = "--grid-log-level",
            paramLabel = "LEVEL",
            description = "How much of it: error, warning, info or debug. Default: warning.")
    private String level;

    @Option(
            names = "--make-certificates",
            paramLabel = "FOLDER",
            description =
                    "Make keys for the machines that --for names, and an authority where there is none; join nothing.")
    private String certificates;

    @Option(
            names = "--for",
            split = ",",
            paramLabel = "NAME",
            description = "Names of machines, parted by commas; each gets a folder of keys.")
    private List<String> machines = List.of();

    WorkerCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        if ((hosts == null) == (certificates == null) || (certificates == null) != machines.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), "expected --join HOSTS, or --make-certificates FOLDER with --for NAMES.");
        }
        return certificates == null ? work() : makeKeys();
    }

    private int work() {
        if (slots != null && !Effort.isAllowed(slots)) {
            throw new ParameterException(
                    spec.commandLine(), "--slots is " + slots + ", expected 1 to " + Effort.MOST_THREADS + ".");
        }
        if (port != null && (port < LEAST_PORT || port > MOST_PORT)) {
            throw new ParameterException(
                    spec.commandLine(), "--port is " + port + ", expected " + LEAST_PORT + " to " + MOST_PORT + ".");
        }
        WorkerRequest request = new WorkerRequest(
                GridOptions.access(spec.commandLine(), hosts, keys, log, level),
                port == null ? OptionalInt.empty() : OptionalInt.of(port),
                slots == null ? OptionalInt.empty() : OptionalInt.of(slots));
        jobs.work(request, ProgressView.control(terminal, true, interruption));
        return ExitCode.DONE;
    }

    private int makeKeys() {
        jobs.makeKeys(new KeysRequest(Source.path(certificates), machines));
        terminal.print(
                terminal.out(),
                List.of(
                        "Written: keys for " + String.join(", ", machines) + " in " + certificates,
                        "Bring each machine its own folder, by a way that nobody else sees, and keep 'authority' where you"
                                + " keep passwords: whoever has it can make workers that yours trust."));
        return ExitCode.DONE;
    }
}
