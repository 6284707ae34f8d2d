package evenrise.solver.grid;

import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Answers that have landed, a file each, named by the job's key and written whole: what is there stays as it is, and a run
 * that was cut off goes on from it. One driver at a time holds the folder.
 */
public final class AnswerFolder implements AutoCloseable {
    private static final String LOCK = ".lock";

    private final Path folder;
    private final String ending;
    private final FileChannel channel;
    private final FileLock lock;
    private boolean isCleared;

    private AnswerFolder(Path folder, String ending, FileChannel channel, FileLock lock) {
        this.folder = folder;
        this.ending = ending;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * @param ending of the files' names
     * @return empty where another run holds the folder
     * @throws IOException where it cannot be made or written to
     */
    public static Optional<AnswerFolder> held(Path folder, String ending) throws IOException {
        Files.createDirectories(folder);
        FileChannel channel =
                FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return Optional.of(new AnswerFolder(folder, ending, channel, lock));
            }
        } catch (OverlappingFileLockException e) {
            // Another run of this very process.
        }
        channel.close();
        return Optional.empty();
    }

    /** What has landed of a job; empty where nothing has, or nothing that can be read. */
    public Optional<byte[]> answer(String key) {
        try {
            return Files.isRegularFile(file(key)) ? Optional.of(Files.readAllBytes(file(key))) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /**
     * Keeps an answer, unless one is there: the first counts.
     *
     * @return whether this one is kept
     */
    public boolean land(String key, byte[] answer) throws WriteFailed {
        if (Files.exists(file(key))) {
            return false;
        }
        WholeFile.write(file(key), answer);
        return true;
    }

    /** Removes every answer, and the folder where nothing else is in it: nobody needs them any more. */
    public void clear() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path each : files.filter(file -> file.getFileName().toString().endsWith(ending))
                    .toList()) {
                Files.delete(each);
            }
        }
        isCleared = true;
    }

    private Path file(String key) {
        return folder.resolve(key + ending);
    }

    @Override
    public void close() throws IOException {
        if (isCleared) {
            // Before it is let go: whoever comes next makes one of his own.
            Files.deleteIfExists(folder.resolve(LOCK));
        }
        lock.release();
        channel.close();
        if (isCleared && isEmpty()) {
            Files.deleteIfExists(folder);
        }
    }

    private boolean isEmpty() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }
}
