package evenrise.solver.exact;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The native files of one platform: where they lie in the jar, and the SHA-256 that each must have. The hashes are a list
 * in the sources, so that neither a broken cache nor a changed library is ever loaded.
 *
 * @param platform name of their folder in the jar
 * @param hashes SHA-256 in hexadecimal digits by file name
 */
record NativeFiles(String platform, Map<String, String> hashes) {
    static final String LIST = "natives.sha256";

    NativeFiles {
        hashes = Map.copyOf(hashes);
    }

    /** @throws Unfit where there are none for this system and processor */
    static NativeFiles ofThisPlatform() {
        return of(platform(System.getProperty("os.name"), System.getProperty("os.arch")));
    }

    /** @throws Unfit where the list names none for {@code platform} */
    static NativeFiles of(String platform) {
        Map<String, String> hashes = new TreeMap<>();
        for (String line : list().lines().toList()) {
            String[] parts = line.split(" +");
            if (parts.length == 2 && parts[1].startsWith(platform + "/")) {
                hashes.put(parts[1].substring(platform.length() + 1), parts[0]);
            }
        }
        if (hashes.isEmpty()) {
            throw new Unfit("there is none for '" + platform + "'");
        }
        return new NativeFiles(platform, hashes);
    }

    /** The folder in which the jar has the files of a system and a processor, as the JVM names the two. */
    static String platform(String system, String processor) {
        String os = system.toLowerCase(Locale.ROOT);
        String name = os.startsWith("win") ? "win32" : os.startsWith("mac") ? "darwin" : os;
        String arch =
                switch (processor.toLowerCase(Locale.ROOT)) {
                    case "amd64", "x86_64", "x86-64" -> "x86-64";
                    case "aarch64", "arm64" -> "aarch64";
                    default -> processor;
                };
        return "ortools-" + name + "-" + arch;
    }

    /** The one that Java calls; it finds the others beside itself. */
    String entryLibrary() {
        return System.mapLibraryName("jniortools");
    }

    /** Changes with any of the files: the name of a folder that holds just these. */
    String key() {
        String all = new TreeMap<>(hashes)
                .entrySet().stream()
                        .map(each -> each.getValue() + " " + each.getKey())
                        .collect(Collectors.joining("\n"));
        return HexFormat.of().formatHex(sha256().digest(all.getBytes(StandardCharsets.UTF_8)), 0, 8);
    }

    /** @throws IOException where the jar lacks the file, as one packed for another platform does */
    InputStream open(String file) throws IOException {
        InputStream stream = NativeFiles.class.getResourceAsStream("/" + platform + "/" + file);
        if (stream == null) {
            throw new IOException("this package holds none for " + platform);
        }
        return stream;
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static String list() {
        try (InputStream stream = NativeFiles.class.getResourceAsStream(LIST)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
