package evenrise.model.file;

import evenrise.model.check.Shown;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Writes a file as a whole or not at all: to a temporary neighbour, forced to the disk, then moved into place. A symbolic
 * link is followed, permissions of an earlier file stay. What is no regular file (a pipe, a terminal) is written straight.
 */
public final class WholeFile {
    private WholeFile() {}

    /** Writes text as UTF-8. */
    public static void write(Path file, String text) throws WriteFailed {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /** Writes bytes as they are. */
    public static void write(Path file, byte[] bytes) throws WriteFailed {
        try {
            Path target = target(file);
            if (Files.isDirectory(target)) {
                throw new FileSystemException(file.toString(), null, "it is a directory");
            }
            if (Files.exists(target) && !Files.isRegularFile(target)) {
                Files.write(target, bytes, StandardOpenOption.WRITE);
            } else {
                replace(target, bytes);
            }
        } catch (IOException e) {
            throw failed("file " + Shown.quoted(file.toString()), e);
        }
    }

    /** Writes text as UTF-8 and flushes; leaves the stream open. */
    public static void write(OutputStream out, String text) throws WriteFailed {
        try {
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.flush();
        } catch (IOException e) {
            throw failed("the output", e);
        }
    }

    private static void replace(Path target, byte[] bytes) throws IOException {
        if (Files.exists(target) && !Files.isWritable(target)) {
            throw new AccessDeniedException(target.toString()); // a move would replace it all the same
        }
        Path temporary = Temporary.besides(target);
        try {
            Temporary.write(temporary, bytes, target);
            Temporary.move(temporary, target);
        } finally {
            Files.deleteIfExists(temporary);
        }
        Temporary.clean(target);
    }

    /** The file itself, behind any symbolic links; a dangling link leads to the file that it would be. */
    private static Path target(Path file) throws IOException {
        Path at = file.toAbsolutePath();
        for (int hops = 0; Files.isSymbolicLink(at); hops++) {
            if (hops == 40) {
                throw new FileSystemException(file.toString(), null, "its symbolic links go round in a circle");
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        return at;
    }

    static WriteFailed failed(String what, IOException e) {
        String why = e instanceof NoSuchFileException
                ? "the folder does not exist"
                : e instanceof AccessDeniedException
                        ? "permission denied"
                        : e instanceof FileSystemException f && f.getReason() != null ? f.getReason() : e.getMessage();
        return new WriteFailed(what + " could not be written: " + Shown.plain(String.valueOf(why)) + ".", e);
    }
}
