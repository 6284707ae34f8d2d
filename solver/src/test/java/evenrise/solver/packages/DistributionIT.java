package evenrise.solver.packages;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Each package, unpacked into a bare folder and started as a person would, without the build's surroundings. */
@EnabledIfSystemProperty(named = "evenrise.dist", matches = "true", disabledReason = "only the profile dist makes them")
@DisabledOnOs(OS.WINDOWS)
class DistributionIT {
    private static final Path DIST = Parts.TARGET.resolve("dist");
    private static final Path DEMO = Path.of("..", "datasets", "lantern-yard").toAbsolutePath();
    private static final List<String> PAPERS = List.of("LICENSE", "NOTICE", "changelog.md", "evenrise.cdx.json");

    @TempDir
    private Path folder;

    @Test
    @Needs("unzip")
    void zipStartsWithTheJavaThatJavaHomeNames() throws Exception {
        Path home = unzip("evenrise-[0-9.]+\\.zip");

        run(Map.of("JAVA_HOME", System.getProperty("java.home")), home.resolve("bin/evenrise"), "--version");
        plans(Map.of("JAVA_HOME", System.getProperty("java.home")), home.resolve("bin/evenrise"));

        assertThat(home.resolve("runtime")).doesNotExist();
    }

    @Test
    @Needs("unzip")
    void imageStartsWithoutAnyJavaAndPrints() throws Exception {
        Path home = unzip("evenrise-[0-9.]+-(linux|darwin)-.*\\.zip");

        plans(Map.of(), home.resolve("bin/evenrise"));
        run(
                Map.of(),
                home.resolve("bin/evenrise"),
                "report",
                DEMO.resolve("project.json").toString(),
                DEMO.resolve("built.plan.json").toString(),
                "-o",
                folder.resolve("documents").toString());

        assertThat(folder.resolve("documents/plan-a4.pdf")).isNotEmptyFile();
        assertThat(home.resolve("evenrise.jsa")).as("the archive of classes").isNotEmptyFile();
    }

    @Test
    @Needs("dpkg-deb")
    void debianPackageStartsByItsLink() throws Exception {
        Path root = Files.createDirectory(folder.resolve("root"));
        run(
                Map.of(),
                Path.of("/usr/bin/dpkg-deb"),
                "-x",
                find("evenrise_.*\\.deb").toString(),
                root.toString());
        run(
                Map.of(),
                Path.of("/usr/bin/dpkg-deb"),
                "-I",
                find("evenrise_.*\\.deb").toString());

        assertThat(said()).contains("Package: evenrise");
        plans(Map.of(), root.resolve("usr/bin/evenrise"));

        papers(root.resolve("usr/lib/evenrise"));
        assertThat(root.resolve("usr/share/man/man1/evenrise.1.gz")).isNotEmptyFile();
        assertThat(root.resolve("usr/share/bash-completion/completions/evenrise"))
                .content()
                .contains("complete ", "rehearse");
    }

    private void plans(Map<String, String> environment, Path program) throws Exception {
        Path plan = folder.resolve("found.plan.json");
        int code = start(
                environment,
                program,
                "plan",
                DEMO.resolve("project.json").toString(),
                "--moves",
                "2000",
                "--threads",
                "1",
                "-o",
                plan.toString());

        assertThat(code).as("a plan of so few moves may break rules: " + said()).isIn(0, 4, 6);
        assertThat(said()).doesNotContain("nothing is proven");
        assertThat(plan).isNotEmptyFile();
    }

    private Path unzip(String name) throws Exception {
        run(Map.of(), Path.of("/usr/bin/unzip"), "-q", find(name).toString(), "-d", folder.toString());
        try (Stream<Path> files = Files.list(folder)) {
            Path home = files.filter(Files::isDirectory).findFirst().orElseThrow();
            papers(home);
            assertThat(home.resolve("share/evenrise.1")).content().startsWith(".TH EVENRISE 1");
            return home;
        }
    }

    private static void papers(Path home) {
        for (String paper : PAPERS) {
            assertThat(home.resolve(paper)).isNotEmptyFile();
        }
    }

    private static Path find(String name) throws IOException {
        try (Stream<Path> files = Files.list(DIST)) {
            return files.filter(file -> file.getFileName().toString().matches(name))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no " + name + " in " + DIST));
        }
    }

    private void run(Map<String, String> environment, Path program, String... arguments) throws Exception {
        assertThat(start(environment, program, arguments)).as(said()).isZero();
    }

    private int start(Map<String, String> environment, Path program, String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        builder.environment().clear();
        builder.environment().put("PATH", "/bin:/usr/bin");
        builder.environment().put("HOME", folder.toString());
        builder.environment().putAll(environment);
        Process process = builder.start();
        try {
            assertThat(process.waitFor(10, TimeUnit.MINUTES)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        return process.exitValue();
    }

    private String said() throws IOException {
        Path said = folder.resolve("said.txt");
        return Files.exists(said) ? Files.readString(said) : "";
    }
}
