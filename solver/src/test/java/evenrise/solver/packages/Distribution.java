package evenrise.solver.packages;

import evenrise.solver.cli.ManPage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * Makes what people install, of the jars that the build has packed: a zip with launchers for whoever has Java, one with a
 * Java runtime of its own, and a Debian package of the latter. Run by the profile "dist".
 */
public final class Distribution {
    /** Of the JDK, what evenrise and its parts ask for. */
    private static final String MODULES =
            "java.base,java.desktop,java.sql,java.naming,java.net.http,jdk.crypto.ec,jdk.httpserver,jdk.management,jdk.unsupported,jdk.zipfs";

    private final Path dist = Parts.TARGET.resolve("dist");
    private final String version;
    private final String platform;

    private Distribution(String version, String platform) {
        this.version = version;
        this.platform = platform;
    }

    /** @param arguments version, and the platform that the proofs are packed for */
    public static void main(String[] arguments) throws IOException {
        new Distribution(arguments[0], arguments[1]).make();
    }

    private void make() throws IOException {
        remove(dist);
        Path plain = dist.resolve("plain/evenrise-" + version);
        fill(plain);
        Archives.zip(plain, dist.resolve("evenrise-" + version + ".zip"));

        Path image = dist.resolve("image/evenrise-" + version);
        fill(image);
        link(image.resolve("runtime"));
        Archives.zip(image, dist.resolve("evenrise-" + version + "-" + platform + ".zip"));

        if (platform.startsWith("linux-")) {
            String architecture = platform.endsWith("aarch64") ? "arm64" : "amd64";
            new DebPackage(image, version, architecture)
                    .write(dist.resolve("evenrise_" + version + "_" + architecture + ".deb"));
        }
    }

    private static void fill(Path home) throws IOException {
        copy(Path.of("src/dist/bin"), home.resolve("bin"));
        Files.copy(Parts.PROGRAM, home.resolve("evenrise.jar"));
        copy(Parts.LIB, home.resolve("lib"));
        for (String paper : List.of("LICENSE", "NOTICE", "README.md", "docs/changelog.md")) {
            Path file = Path.of("..", paper);
            Files.copy(file, home.resolve(file.getFileName()));
        }
        Files.write(home.resolve("evenrise.cdx.json"), Parts.entry(Parts.PROGRAM, "META-INF/sbom/evenrise.cdx.json"));
        Files.createDirectories(home.resolve("share"));
        Files.writeString(home.resolve("share/evenrise.1"), ManPage.text(), StandardCharsets.UTF_8);
        Files.writeString(home.resolve("share/evenrise.bash"), ManPage.completion(), StandardCharsets.UTF_8);
        for (String program : List.of("bin/evenrise", "bin/evenrise-archive")) {
            if (!home.resolve(program).toFile().setExecutable(true, false)) {
                throw new IOException(program + " cannot be made a program");
            }
        }
    }

    private static void link(Path runtime) throws IOException {
        int code = ToolProvider.findFirst("jlink")
                .orElseThrow(() -> new IllegalStateException("this JDK has no jlink"))
                .run(
                        System.out,
                        System.err,
                        "--add-modules",
                        MODULES,
                        "--strip-java-debug-attributes",
                        "--no-header-files",
                        "--no-man-pages",
                        "--compress=2",
                        "--generate-cds-archive",
                        "--output",
                        runtime.toString());
        if (code != 0) {
            throw new IOException("jlink ended with " + code);
        }
        // Only for heaps over 32 GB.
        Files.deleteIfExists(runtime.resolve("lib/server/classes_nocoops.jsa"));
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    private static void remove(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }
}
