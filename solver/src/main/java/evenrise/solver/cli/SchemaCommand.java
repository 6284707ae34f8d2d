package evenrise.solver.cli;

import evenrise.model.file.Schemas;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

@Command(
        name = "schema",
        header = "Print the JSON Schema of the project file or the plan file.",
        description = "Editors complete and check with it.",
        footer = {"%nExample:", "  evenrise schema project > evenrise-project.schema.json"})
final class SchemaCommand implements Callable<Integer> {
    /** The files that have a schema. */
    enum Kind {
        project,
        plan,
        script
    }

    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", description = "One of: ${COMPLETION-CANDIDATES}.")
    private Kind kind;

    SchemaCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        String schema =
                switch (kind) {
                    case project -> Schemas.project();
                    case plan -> Schemas.plan();
                    case script -> Schemas.script();
                };
        terminal.print(terminal.out(), List.of(schema.stripTrailing()));
        return ExitCode.DONE;
    }
}
