package evenrise.model.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Temporary neighbours of files that are being written. Their names carry the process that writes them, so that what a
 * killed one has left can be told from what a running one is writing.
 */
final class Temporary {
    private static final Pattern NAME =
            Pattern.compile("\\.(?<target>.+)\\.(?<process>[0-9]{1,18})-[0-9a-f-]{36}\\.tmp");

    private Temporary() {}

    /** A new name beside {@code target}. */
    static Path besides(Path target) {
        return target.resolveSibling(
                "." + target.getFileName() + "." + ProcessHandle.current().pid() + "-" + UUID.randomUUID() + ".tmp");
    }

    /** Writes a file that is not there yet, down to the disk, with the permissions of {@code like} if that is there. */
    static void write(Path temporary, byte[] bytes, Path like) throws IOException {
        try (FileChannel out =
                FileChannel.open(temporary, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE))) {
            keepPermissions(like, temporary);
            ByteBuffer rest = ByteBuffer.wrap(bytes);
            while (rest.hasRemaining()) {
                out.write(rest);
            }
            out.force(true);
        }
    }

    /** Puts a temporary file in the place of its target, at once where the file system can do that. */
    static void move(Path temporary, Path target) throws IOException {
        try {
            Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(temporary, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Removes what processes that are no more have left beside {@code target}; what cannot be removed stays. */
    static void clean(Path target) {
        Path folder = target.toAbsolutePath().getParent();
        String name = target.getFileName().toString();
        try (DirectoryStream<Path> hidden = Files.newDirectoryStream(folder, each -> isLeft(each, name))) {
            for (Path each : hidden) {
                Files.deleteIfExists(each);
            }
        } catch (IOException | DirectoryIteratorException e) {
            // What is left over takes room and does no other harm; the next run comes by again.
            return;
        }
    }

    private static boolean isLeft(Path file, String target) {
        Matcher name = NAME.matcher(file.getFileName().toString());
        return name.matches()
                && name.group("target").equals(target)
                && ProcessHandle.of(Long.parseLong(name.group("process"))).isEmpty();
    }

    private static void keepPermissions(Path from, Path to) throws IOException {
        PosixFileAttributeView earlier = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        if (earlier != null && Files.exists(from)) {
            Files.setPosixFilePermissions(to, earlier.readAttributes().permissions());
        }
    }
}
