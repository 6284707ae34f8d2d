package evenrise.solver.bench;

import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.Venue;
import evenrise.solver.sample.VenueSize;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Projects by what is said on the command line: a file, the name of a dataset, or {@code drawn:PANELS:SEED}. */
final class BenchProjects {
    private static final String DRAWN = "drawn:";

    private BenchProjects() {}

    static Project read(String name) {
        if (name.startsWith(DRAWN)) {
            return venue(name).project();
        }
        Path file = Files.isRegularFile(Path.of(name)) ? Path.of(name) : dataset(name);
        Reading<Project> read = ProjectFile.read(file);
        return read.value().orElseThrow(() -> new IllegalArgumentException(file + ": " + read.problems()));
    }

    /** The plan that a drawn project is drawn around, which breaks no rule; others have none. */
    static Optional<Plan> layout(String name) {
        return name.startsWith(DRAWN) ? Optional.of(venue(name).layout()) : Optional.empty();
    }

    private static Venue venue(String name) {
        String[] parts = name.split(":");
        long seed = parts.length > 2 ? Long.parseLong(parts[2]) : 1;
        return Sample.venue(seed, VenueSize.ofPanels(Integer.parseInt(parts[1])));
    }

    /** How a project is called in a table. */
    static String label(String name) {
        return name.startsWith(DRAWN)
                ? name
                : Path.of(name).getFileName().toString().replaceAll("\\.project\\.json$|\\.json$|\\.ya?ml$", "");
    }

    /** The datasets stand beside the modules. */
    private static Path dataset(String name) {
        for (String root : new String[] {"datasets", "../datasets"}) {
            Path file = Path.of(root, name, "project.json");
            if (Files.isRegularFile(file)) {
                return file;
            }
        }
        throw new IllegalArgumentException("no file and no dataset is called " + name);
    }
}
