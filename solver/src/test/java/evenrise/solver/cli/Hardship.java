package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.FileSet;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A command that writes, in a process of its own, in a folder where it has written before; and what must hold of that
 * folder however the process ends.
 */
final class Hardship {
    private static final Path DATASETS =
            Path.of("..", "datasets").toAbsolutePath().normalize();
    private static final String YARD =
            DATASETS.resolve("lantern-yard/project.json").toString();
    private static final String BUILT =
            DATASETS.resolve("lantern-yard/built.plan.json").toString();
    private static final String READINGS =
            DATASETS.resolve("lantern-yard/measured.csv").toString();
    private static final String MILL =
            DATASETS.resolve("copper-mill/project.json").toString();

    /** Commands that write, with few moves; {@code %s} is the folder. */
    static final List<List<String>> COMMANDS = List.of(
            List.of("plan", YARD, "--moves", "3000", "--threads", "1", "-o", "%s/yard.plan.json"),
            List.of("plan", YARD, "--moves", "200", "--threads", "1", "-o", "%s/p.json", "--report", "%s"),
            List.of("report", YARD, BUILT, "--date", "today", "--format", "html,xlsx,csv", "-o", "%s"),
            List.of("rework", YARD, BUILT, "--measured", READINGS, "--moves", "600", "--threads", "1", "-o", "%s"),
            List.of("compare", MILL, "--panels", "6..6", "--moves", "100", "-o", "%s"),
            List.of("generate", "--panels", "40", "-o", "%s/drawn.project.json"),
            List.of("rehearse", YARD, BUILT, "--trace", "%s/trace.json"),
            List.of("bill", MILL, "--csv", "%s/bill.csv"));

    private final Path folder;
    private final List<String> command;
    private final Map<String, byte[]> earlier = new TreeMap<>();

    private Hardship(Path folder, List<String> command) {
        this.folder = folder;
        this.command = command;
    }

    /** A folder in which the command has run to its end once. */
    static Hardship after(Path folder, List<String> command) throws Exception {
        Files.createDirectories(folder);
        Hardship hardship = new Hardship(folder, command);
        Process process = hardship.start(List.of());
        assertThat(process.waitFor()).as(command.toString()).isIn(ExitCode.DONE, ExitCode.RULES_BROKEN, 6);
        hardship.earlier.putAll(hardship.contents());
        return hardship;
    }

    /** @param wrapper words before the command, such as those of a shell that sets limits */
    Process start(List<String> wrapper) throws IOException {
        List<String> words = new ArrayList<>(wrapper);
        words.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                Evenrise.class.getName()));
        command.forEach(word -> words.add(word.replace("%s", folder.toString())));
        return new ProcessBuilder(words)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(
                        ProcessBuilder.Redirect.to(folder.resolveSibling("said").toFile()))
                .start();
    }

    /** What the process said to the person. */
    String said() throws IOException {
        return Files.readString(folder.resolveSibling("said"));
    }

    /** Every earlier file is there, whole: as it was, or as the command would write it anew. */
    void isWhole() throws IOException {
        FileSet.recover(folder);
        Map<String, byte[]> now = contents();
        assertThat(now.keySet()).as(command.toString()).containsAll(expected(now));
        for (Map.Entry<String, byte[]> each : now.entrySet()) {
            Path file = folder.resolve(each.getKey());
            String name = file.getFileName().toString();
            boolean isAsItWas = java.util.Arrays.equals(earlier.get(each.getKey()), each.getValue());
            if (isAsItWas || name.startsWith(".")) {
                continue;
            }
            if (name.startsWith("rework.checkpoint")) {
                assertThat(new String(each.getValue(), StandardCharsets.UTF_8).strip())
                        .as(name)
                        .contains("evenrise-rework/1")
                        .endsWith("}");
            } else if (name.endsWith(".plan.json") || name.matches("plan-\\d+\\.json|p\\.json|.*checkpoint.*")) {
                assertThat(PlanFile.read(file).problems()).as(name).isEmpty();
            } else if (name.endsWith("project.json") || name.startsWith("project-as")) {
                assertThat(ProjectFile.read(file).value()).as(name).isPresent();
            } else if (name.endsWith(".json")) {
                assertThat(new String(each.getValue(), java.nio.charset.StandardCharsets.UTF_8).strip())
                        .as(name)
                        .endsWith("}");
            } else {
                assertThat(each.getValue()).as(name).isNotEmpty();
            }
        }
    }

    /**
     * All earlier files; or, where an interrupted run has written a set of its own in the place of the earlier one, which may
     * be smaller, all of the new set and what never belonged to one.
     */
    private Set<String> expected(Map<String, byte[]> now) {
        byte[] before = earlier.getOrDefault(FileSet.MANIFEST, new byte[0]);
        byte[] after = now.getOrDefault(FileSet.MANIFEST, new byte[0]);
        if (Arrays.equals(before, after)) {
            return earlier.keySet();
        }
        Set<String> expected = new TreeSet<>(earlier.keySet());
        expected.removeAll(names(before));
        expected.addAll(names(after));
        return expected;
    }

    private static Set<String> names(byte[] manifest) {
        return Pattern.compile("\"name\"\\s*:\\s*\"([^\"]+)\"")
                .matcher(new String(manifest, StandardCharsets.UTF_8))
                .results()
                .map(result -> result.group(1))
                .collect(Collectors.toSet());
    }

    /** The next run of the same command ends well and leaves nothing of the broken one behind. */
    void nextRunCleansUp() throws Exception {
        assertThat(start(List.of()).waitFor()).as(said()).isIn(ExitCode.DONE, ExitCode.RULES_BROKEN, 6);
        assertThat(contents().keySet()).as(command.toString()).noneMatch(name -> name.endsWith(".tmp"));
        for (String left : List.of("yard.plan.json", "p.json", "rework")) {
            Files.deleteIfExists(folder.resolve(left + ".checkpoint-before.json"));
        }
        assertThat(contents().keySet()).as(command.toString()).isEqualTo(earlier.keySet());
    }

    private Map<String, byte[]> contents() throws IOException {
        Map<String, byte[]> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path each : files.filter(Files::isRegularFile).toList()) {
                contents.put(folder.relativize(each).toString(), Files.readAllBytes(each));
            }
        }
        return contents;
    }

    /** Puts the earlier files back, for the next trial. */
    void reset() throws IOException {
        for (String name : contents().keySet()) {
            Files.deleteIfExists(folder.resolve(name));
        }
        for (Map.Entry<String, byte[]> each : earlier.entrySet()) {
            Path file = folder.resolve(each.getKey());
            Files.createDirectories(file.getParent());
            Path temporary = Files.write(folder.resolveSibling("reset"), each.getValue());
            Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }
}
