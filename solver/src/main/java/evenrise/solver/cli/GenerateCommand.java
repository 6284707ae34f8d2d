package evenrise.solver.cli;

import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.Venue;
import evenrise.solver.sample.VenueSize;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
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
            "A panel holds " + VenueSize.FEWEST_LOADS + " to " + VenueSize.MOST_LOADS + " loads."
        },
        footer = {
            "%nExamples:",
            "  evenrise generate --panels 12 -o arena.project.json",
            "  evenrise generate --panels 4 --loads 60 --system split-phase --seed 3 -o hall.yaml"
        })
final class GenerateCommand implements Callable<Integer> {
    /** Stands for standard output in place of a file. */
    private static final String STREAM = "-";

    private static final int DONE = 0;
    private static final int NOT_WRITTEN = 5;

    private final OutputStream data;

    @Spec
    private CommandSpec spec;

    @Option(names = "--panels", required = true, paramLabel = "N", description = "Number of panels.")
    private int panels;

    @Option(
            names = "--loads",
            paramLabel = "N",
            description = "Number of loads in all. Default: " + VenueSize.USUAL_LOADS + " for each panel.")
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

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the project. Default: how it was drawn.")
    private String name;

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FILE",
            description = "Project file to write, YAML by its ending, else JSON; - writes to standard output.")
    private String output;

    /** @param data standard output, for a project that is written there */
    GenerateCommand(OutputStream data) {
        this.data = data;
    }

    @Override
    public Integer call() {
        VenueSize size = size();
        Venue venue = name == null ? Sample.venue(seed, size) : Sample.venue(seed, size, name);
        Project project = venue.project();
        try {
            if (output.equals(STREAM)) {
                ProjectFile.write(project, data, Format.JSON);
            } else {
                ProjectFile.write(project, Path.of(output), Format.ofName(output));
            }
        } catch (WriteFailed e) {
            spec.commandLine().getErr().println("evenrise: " + e.getMessage());
            return NOT_WRITTEN;
        }
        return DONE;
    }

    private VenueSize size() {
        if (name != null && name.isBlank()) {
            throw new ParameterException(spec.commandLine(), "a name without a visible character.");
        }
        try {
            return new VenueSize(
                    panels,
                    Optional.ofNullable(loads).orElseGet(() ->
                            (int) Math.min(Integer.MAX_VALUE, (long) VenueSize.USUAL_LOADS * panels)),
                    system);
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
}
