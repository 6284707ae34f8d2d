package evenrise.solver.cli;

import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.app.GenerateRequest;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.app.VenuePart;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

@Command(
        name = "generate",
        header = "Draw an invented venue as a project file.",
        description = {
            "For trials, measurements and lessons. The same seed and size always give the same project, and a plan that "
                    + "keeps every hard rule exists. Every figure is invented, in the range of common practice.",
            "A panel holds " + GenerateRequest.FEWEST_LOADS_A_PANEL + " to " + GenerateRequest.MOST_LOADS_A_PANEL
                    + " loads."
        },
        footer = {
            "%nExamples:",
            "  evenrise generate --panels 12 -o arena.project.json",
            "  evenrise generate --panels 4 --loads 60 --system split-phase --seed 3 -o hall.yaml",
            "  evenrise generate --panels 9 --with transformers,systems,scenes --overlap any -o campus.project.json"
        })
final class GenerateCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Jobs jobs;

    @Spec
    private CommandSpec spec;

    @Option(names = "--panels", required = true, paramLabel = "N", description = "Number of panels.")
    private int panels;

    @Option(
            names = "--loads",
            paramLabel = "N",
            description =
                    "Number of loads in all. Default: " + GenerateRequest.USUAL_LOADS_A_PANEL + " for each panel.")
    private Integer loads;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "Seed. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            defaultValue = "three-phase",
            converter = SystemWord.class,
            description = "three-phase (120/208 V) or split-phase (120/240 V). Default: ${DEFAULT-VALUE}.")
    private PhaseSystem system;

    @Option(
            names = "--with",
            paramLabel = "PART",
            split = ",",
            converter = PartWord.class,
            description = {
                "Parts of a plant beside panels on one supply, by commas:",
                "nodes (a main distribution for each zone of four panels), transformers (277/480 V down to 120 V, of "
                        + "several connections), source (the first zone on one of its own), systems (halls with "
                        + "commands of their own), scenes, boards (of other kinds), contactors, spare, racks, "
                        + "off-delays, wiring (cables, devices, sources); all for all of them."
            })
    private List<Parts> parts = List.of();

    @Option(
            names = "--overlap",
            paramLabel = "OVERLAP",
            defaultValue = "one-at-a-time",
            converter = OverlapWord.class,
            description = "How systems start: one-at-a-time, together, any. Default: ${DEFAULT-VALUE}.")
    private Overlap overlap;

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the project. Default: how it was drawn.")
    private String name;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FILE",
            description = "Project file to write, YAML by its ending, else JSON; - writes to standard output.")
    private String output;

    GenerateCommand(Terminal terminal, Jobs jobs) {
        this.terminal = terminal;
        this.jobs = jobs;
    }

    @Override
    public Integer call() {
        Project project = jobs.generate(request());
        try {
            if (output.equals(Terminal.STREAM)) {
                ProjectFile.write(project, terminal.data(), Format.JSON);
            } else {
                ProjectFile.write(project, Source.path(output), Format.ofName(output));
            }
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
        return ExitCode.DONE;
    }

    private GenerateRequest request() {
        try {
            return new GenerateRequest(
                    panels,
                    loads == null ? OptionalInt.empty() : OptionalInt.of(loads),
                    system,
                    seed,
                    Optional.ofNullable(name),
                    parts.stream().flatMap(each -> each.parts().stream()).collect(Collectors.toSet()),
                    overlap);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
    }

    /** Reads a system by its word in the project file. */
    static final class SystemWord implements ITypeConverter<PhaseSystem> {
        @Override
        public PhaseSystem convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "three-phase" -> PhaseSystem.THREE_PHASE;
                case "split-phase" -> PhaseSystem.SPLIT_PHASE;
                default -> throw new TypeConversionException("'" + word + "', expected three-phase or split-phase");
            };
        }
    }

    /** What one word names. */
    record Parts(Set<VenuePart> parts) {}

    /** Reads a part of a plant by its word. */
    static final class PartWord implements ITypeConverter<Parts> {
        private static final String ALL = "all";

        @Override
        public Parts convert(String word) {
            Set<VenuePart> all = EnumSet.allOf(VenuePart.class);
            if (word.equalsIgnoreCase(ALL)) {
                return new Parts(all);
            }
            return all.stream()
                    .filter(part -> wordOf(part).equalsIgnoreCase(word))
                    .findFirst()
                    .map(part -> new Parts(Set.of(part)))
                    .orElseThrow(() -> new TypeConversionException("'" + word + "', expected "
                            + all.stream().map(PartWord::wordOf).collect(Collectors.joining(", ")) + " or " + ALL));
        }

        private static String wordOf(VenuePart part) {
            return part.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** Reads an overlap by its word in the project file. */
    static final class OverlapWord implements ITypeConverter<Overlap> {
        @Override
        public Overlap convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "one-at-a-time" -> Overlap.ONE_AT_A_TIME;
                case "together" -> Overlap.TOGETHER;
                case "any" -> Overlap.ANY;
                default -> throw new TypeConversionException("'" + word + "', expected one-at-a-time, together or any");
            };
        }
    }
}
