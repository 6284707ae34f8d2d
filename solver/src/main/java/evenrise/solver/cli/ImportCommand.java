package evenrise.solver.cli;

import evenrise.model.file.Format;
import evenrise.model.file.MappingFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Project;
import evenrise.solver.intake.EquipmentList;
import evenrise.solver.intake.Template;
import evenrise.solver.report.IntakeText;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "import",
        header = "Make a project of an equipment list.",
        description = "Reads pieces of equipment from a workbook (.xlsx) or a table of values (.csv), recognises the"
            + " columns by the trade's usual words or by a mapping file, bundles the pieces onto the fewest breakers,"
            + " and sketches a supply, panels and boards for them. A breaker's rating follows what it carries, never"
            + " an inrush. Life-safety equipment is listed as outside the project. Everything that was guessed is"
            + " listed for confirmation; every row that cannot be taken over is listed with its place.",
        footer = {
            "%nExamples:",
            "  evenrise import --template list.xlsx",
            "  evenrise import list.xlsx -o hall.project.json",
            "  evenrise import list.csv --map mapping.yaml -o hall.project.json --without-bad-rows"
        })
final class ImportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", arity = "0..1", paramLabel = "LIST", description = "Equipment list, .xlsx or .csv.")
    private String list;

    @Option(
            names = "--map",
            paramLabel = "MAPPING",
            description = "File that says how the list is to be read, YAML or JSON.")
    private String map;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "Project file to write, YAML by its ending, else JSON.")
    private String output;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the project. Default: the list's name.")
    private String name;

    @Option(names = "--without-bad-rows", description = "Write the project without the rows that cannot be taken over.")
    private boolean withoutBadRows;

    @Option(
            names = "--template",
            paramLabel = "FILE",
            description = "Write a blank list there, .xlsx or .csv, and nothing else.")
    private String template;

    @Option(
            names = "--place-life-safety",
            description = "Give life-safety equipment a place in the project, unswitched and each piece alone on its "
                    + "breaker. Ask whoever is responsible for it first.")
    private boolean placesLifeSafety;

    @Option(names = "--all", description = "Show long lists in full.")
    private boolean all;

    ImportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (template != null) {
            boolean isCsv = template.toLowerCase(Locale.ROOT).endsWith(".csv");
            write(() -> WholeFile.write(Inputs.path(template), isCsv ? Template.csv() : Template.workbook()));
            return ExitCode.DONE;
        }
        if (list == null || output == null) {
            throw new Failure(ExitCode.USAGE, "say which LIST to read and where to write (-o), or --template FILE.");
        }
        Inputs.refuseAsOutput(output, list, map);
        EquipmentList read = read();
        terminal.print(terminal.out(), IntakeText.lines(read, all, terminal.outPaint()));
        boolean isWritten = read.project().isPresent() && (read.problems().isEmpty() || withoutBadRows);
        if (!isWritten) {
            throw new Failure(
                    ExitCode.BAD_INPUT,
                    list + ": nothing is written. Cure what is listed"
                            + (read.project().isPresent() ? ", or say --without-bad-rows." : "."));
        }
        Project project = read.project().get();
        write(() -> ProjectFile.write(project, Inputs.path(output), Format.ofName(output)));
        terminal.print(terminal.out(), java.util.List.of("", "Written: " + output));
        return ExitCode.DONE;
    }

    private EquipmentList read() {
        Mapping mapping = map == null
                ? Mapping.USUAL
                : Inputs.sound(map, MappingFile.read(Inputs.path(map))).value().orElseThrow();
        if (placesLifeSafety) {
            mapping = mapping.withPlacesLifeSafety(true);
        }
        Path file = Inputs.path(list);
        String title = name == null ? file.getFileName().toString().replaceFirst("\\.[^.]*$", "") : name;
        try {
            return EquipmentList.read(file, mapping, title.isBlank() ? "Equipment list" : title);
        } catch (NoSuchFileException e) {
            throw new Failure(ExitCode.BAD_INPUT, "file '" + list + "' does not exist.");
        } catch (IOException e) {
            throw new Failure(ExitCode.BAD_INPUT, "file '" + list + "' cannot be read: " + e.getMessage() + ".");
        }
    }

    private interface Writing {
        void run() throws WriteFailed;
    }

    private static void write(Writing writing) {
        try {
            writing.run();
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
    }
}
