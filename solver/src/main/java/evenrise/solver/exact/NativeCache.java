package evenrise.solver.exact;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A folder into which native files are unpacked once. Each set lies in a folder named by its content; it is filled under
 * another name and renamed when it is whole, so a run that is killed meanwhile leaves nothing that a later one would
 * load, and several runs at once do not disturb each other.
 */
final class NativeCache {
    private static final String PREFIX = "natives-";
    private static final String FILLING = ".filling-";

    private final Path folder;
    private final NativeFiles files;

    NativeCache(Path folder, NativeFiles files) {
        this.folder = folder;
        this.files = files;
    }

    /** Where caches may lie, the first choice first. */
    static List<Path> folders() {
        return folders(System.getenv(), System.getProperty("user.home"), System.getProperty("os.name"));
    }

    static List<Path> folders(Map<String, String> environment, String home, String system) {
        List<Path> folders = new ArrayList<>();
        String os = system.toLowerCase(Locale.ROOT);
        String local = environment.get("LOCALAPPDATA");
        String cache = environment.get("XDG_CACHE_HOME");
        if (os.startsWith("win") && local != null) {
            folders.add(Path.of(local, "evenrise", "cache"));
        } else if (cache != null && Path.of(cache).isAbsolute()) {
            folders.add(Path.of(cache, "evenrise"));
        } else if (home != null && !home.equals("?")) {
            folders.add(
                    os.startsWith("mac")
                            ? Path.of(home, "Library", "Caches", "evenrise")
                            : Path.of(home, ".cache", "evenrise"));
        }
        String user = System.getProperty("user.name", "user").replaceAll("[^A-Za-z0-9_-]", "_");
        folders.add(Path.of(System.getProperty("java.io.tmpdir"), "evenrise-" + user));
        return folders;
    }

    /**
     * The folder with the files, each with its hash; they are unpacked where they are not there or not right.
     *
     * @param reasons takes why they cannot be had here
     */
    Optional<Path> fill(List<String> reasons) {
        Path home = folder.resolve(PREFIX + files.key());
        try {
            if (!isWhole(home)) {
                unpack(home);
            }
            return Optional.of(home);
        } catch (IOException | RuntimeException e) {
            reasons.add("it cannot be unpacked into '" + folder + "': " + why(e));
            return Optional.empty();
        }
    }

    /** Removes what runs that were killed have left half filled, here and, from versions before, among temporary files. */
    void clean() {
        try (DirectoryStream<Path> halves = Files.newDirectoryStream(folder, FILLING + "*")) {
            for (Path each : halves) {
                String process = each.getFileName()
                        .toString()
                        .substring(FILLING.length())
                        .replaceFirst("-.*", "");
                boolean isRunning = process.matches("[0-9]{1,18}")
                        && ProcessHandle.of(Long.parseLong(process)).isPresent();
                if (!isRunning) {
                    remove(each);
                }
            }
        } catch (IOException | RuntimeException e) {
            // Nothing to clean, or not ours to clean; the cache is as good as before.
            return;
        }
    }

    private boolean isWhole(Path home) throws IOException {
        if (!Files.isDirectory(home)) {
            return false;
        }
        for (Map.Entry<String, String> each : files.hashes().entrySet()) {
            Path file = home.resolve(each.getKey());
            if (!Files.isRegularFile(file) || !hash(file).equals(each.getValue())) {
                return false;
            }
        }
        return true;
    }

    private void unpack(Path home) throws IOException {
        makePrivate(folder);
        Path filling =
                folder.resolve(FILLING + ProcessHandle.current().pid() + "-" + Long.toHexString(System.nanoTime()));
        try {
            Files.createDirectory(filling);
            for (Map.Entry<String, String> each : files.hashes().entrySet()) {
                unpack(each.getKey(), each.getValue(), filling);
            }
            if (Files.exists(home)) {
                remove(home); // It is not whole, or it would have been taken.
            }
            try {
                Files.move(filling, home, StandardCopyOption.ATOMIC_MOVE);
            } catch (IOException e) {
                if (!isWhole(home)) { // Another run may have been quicker.
                    throw e;
                }
            }
        } finally {
            remove(filling);
        }
    }

    private void unpack(String name, String hash, Path into) throws IOException {
        MessageDigest digest = NativeFiles.sha256();
        try (InputStream in = files.open(name);
                OutputStream out = new DigestOutputStream(Files.newOutputStream(into.resolve(name)), digest)) {
            in.transferTo(out);
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(hash)) {
            throw new IOException("'" + name + "' is not the file that was built for this version");
        }
    }

    private static void makePrivate(Path folder) throws IOException {
        Files.createDirectories(folder);
        if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
            if (!Files.getOwner(folder).getName().equals(System.getProperty("user.name"))) {
                throw new IOException("it belongs to somebody else");
            }
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    private static String hash(Path file) throws IOException {
        MessageDigest digest = NativeFiles.sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static void remove(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException | RuntimeException e) {
            // Another run may clean the same folder, or use it; the next one comes by again.
            return;
        }
    }

    private static String why(Exception e) {
        return e.getMessage() == null ? "it failed" : e.getMessage();
    }
}
