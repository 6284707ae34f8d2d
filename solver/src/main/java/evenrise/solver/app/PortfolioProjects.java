package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Project files by names that are told apart, of files and folders. */
final class PortfolioProjects {
    private static final Pattern PROJECT = Pattern.compile("(?i)(.*\\.)?project\\.(json|yaml|yml)");
    private static final Pattern ENDINGS = Pattern.compile("(?i)(\\.?project)?\\.(json|yaml|yml)$");
    private static final Pattern NO_NAME = Pattern.compile("[^A-Za-z0-9._-]+");

    private PortfolioProjects() {}

    /**
     * @param results where results go, which is never looked into
     * @throws JobFailed where one is not there
     */
    static Map<String, Path> named(List<Path> inputs, Path results) {
        Map<String, Path> named = new LinkedHashMap<>();
        Set<String> taken = new HashSet<>();
        for (Path input : inputs) {
            for (Path file : Files.isDirectory(input) ? below(input, results) : List.of(existing(input))) {
                named.put(free(name(file), taken), file);
            }
        }
        return named;
    }

    private static Path existing(Path file) {
        if (!Files.exists(file)) {
            throw new JobFailed(JobFailed.Reason.INPUT, "there is no " + shown(file) + ".");
        }
        return file;
    }

    private static List<Path> below(Path folder, Path results) {
        Path own = results.toAbsolutePath().normalize();
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> found = files.filter(file ->
                            PROJECT.matcher(file.getFileName().toString()).matches())
                    .filter(Files::isRegularFile)
                    .filter(file -> !file.toAbsolutePath().normalize().startsWith(own))
                    .sorted()
                    .toList();
            if (found.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.INPUT,
                        "in " + shown(folder) + " there is no project file, which is called project.json or ends in"
                                + " .project.json (or .yaml).");
            }
            return new ArrayList<>(found);
        } catch (IOException | UncheckedIOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, shown(folder) + " cannot be read: " + e.getMessage() + ".");
        }
    }

    /** Of {@code halls/east.project.json}: east; of {@code halls/east/project.json}: east, too. */
    private static String name(Path file) {
        String name = ENDINGS.matcher(file.getFileName().toString()).replaceFirst("");
        Path folder = file.toAbsolutePath().normalize().getParent();
        String told = name.isEmpty() && folder.getFileName() != null
                ? folder.getFileName().toString()
                : name;
        String plain = NO_NAME.matcher(told).replaceAll("-");
        return plain.isEmpty() ? "project" : plain;
    }

    private static String free(String name, Set<String> taken) {
        String free = name;
        for (int i = 2; !taken.add(free.toLowerCase(Locale.ROOT)); i++) {
            free = name + "-" + i;
        }
        return free;
    }

    private static String shown(Path path) {
        return "'" + Harmless.shown(path.toString()) + "'";
    }
}
