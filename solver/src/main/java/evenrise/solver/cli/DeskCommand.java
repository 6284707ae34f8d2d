package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.desk.OpenDesk;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "desk",
        header = "Work on a project and its plan by hand, in a browser of this machine.",
        description = {
            "Opens the folder's project in the browser: loads as a table, panels and boards to put loads into by hand,"
                    + " searches in the background, questions, plans kept beside one another. Every change is kept in"
                    + " the project's and the plan's files at once; every other command works on them beside it.",
            "Nobody but this machine is served, and nothing is asked of any network. The address holds a token that"
                    + " opens once. Ctrl-C ends the desk when everything is written."
        },
        footer = {
            "%nExamples:",
            "  evenrise desk hall                     the project in folder hall; with none there, one begins",
            "  evenrise desk hall/project.json",
            "  evenrise desk hall --no-open           prints the address instead of opening it"
        })
final class DeskCommand implements Callable<Integer> {
    private static final int MOST_PORT = 65_535;

    private final Terminal terminal;
    private final Jobs jobs;
    private final Interruption interruption;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FOLDER",
            arity = "0..1",
            defaultValue = ".",
            description = "Folder with one project, or the project's file. Default: the current folder.")
    private String place;

    @Option(
            names = "--no-open",
            description = "Open no browser: print the address as the one line on standard output, and go on serving.")
    private boolean isNotOpening;

    @Option(names = "--port", paramLabel = "N", description = "Port to serve at. Default: a free one.")
    private int port;

    DeskCommand(Terminal terminal, Jobs jobs, Interruption interruption) {
        this.terminal = terminal;
        this.jobs = jobs;
        this.interruption = interruption;
    }

    @Override
    public Integer call() {
        if (port < 0 || port > MOST_PORT) {
            throw new ParameterException(
                    spec.commandLine(), "--port is from 1 to " + MOST_PORT + ", or 0 for a free one.");
        }
        try (OpenDesk desk = OpenDesk.on(Source.path(place), port, jobs)) {
            interruption.whenCancelled(desk::close);
            if (isNotOpening || !SystemBrowser.opens(desk.address())) {
                terminal.print(terminal.out(), List.of(desk.address()));
            }
            terminal.print(terminal.err(), List.of("evenrise: the desk is open. Ctrl-C ends it; everything is kept."));
            desk.await();
        }
        return ExitCode.DONE;
    }
}
