package evenrise.solver.cli;

import evenrise.solver.app.FileSchema;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

@Command(
        name = "schema",
        header = "Print the schema of a file that is read or written.",
        description = {
            "Editors complete and check with it, programs know what to expect: JSON Schema, of the table of measured"
                    + " currents metadata by CSV on the Web.",
        },
        footer = {"%nExample:", "  evenrise schema project > evenrise-project.schema.json"})
final class SchemaCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", description = "One of: ${COMPLETION-CANDIDATES}.")
    private FileSchema file;

    SchemaCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        terminal.print(terminal.out(), List.of(file.text().stripTrailing()));
        return ExitCode.DONE;
    }
}
