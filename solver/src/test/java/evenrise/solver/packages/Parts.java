package evenrise.solver.packages;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** What is handed out, and the jars by others that it is made of. */
final class Parts {
    static final Path TARGET = Path.of("target").toAbsolutePath();
    static final Path PROGRAM = TARGET.resolve("evenrise.jar");
    static final Path LIB = TARGET.resolve("lib");

    static final Path GRID = LIB.resolve("evenrise-grid.jar");

    private Parts() {}

    /** The jars by others on the class path of the program, as the build found them. */
    static List<Path> jars() throws IOException {
        String classPath = Files.readString(TARGET.resolve("parts.txt")).strip();
        return Arrays.stream(classPath.split(File.pathSeparator)).map(Path::of).toList();
    }

    /** A jar's name without its version. */
    static String artifact(Path jar) {
        return jar.getFileName().toString().replaceFirst("-[0-9][^/]*\\.jar$", "");
    }

    static Path proofs() throws IOException {
        try (var files = Files.list(LIB)) {
            return files.filter(file -> file.getFileName().toString().startsWith("evenrise-proofs-"))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("no proofs in " + LIB));
        }
    }

    static Set<String> names(Path jar) throws IOException {
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            return zip.stream()
                    .filter(entry -> !entry.isDirectory())
                    .map(ZipEntry::getName)
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    static byte[] entry(Path jar, String name) throws IOException {
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            return zip.getInputStream(zip.getEntry(name)).readAllBytes();
        }
    }

    static String sha256(Path file) throws IOException {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
