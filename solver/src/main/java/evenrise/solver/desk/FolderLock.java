package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.JobFailed;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Holds a folder for one desk. The operating system lets go of it however the process ends, so that no file that a killed
 * desk has left behind keeps the next one out.
 */
final class FolderLock implements AutoCloseable {
    private static final String NAME = ".evenrise-desk.lock";

    private final FileChannel channel;
    private final FileLock lock;

    private FolderLock(FileChannel channel, FileLock lock) {
        this.channel = channel;
        this.lock = lock;
    }

    /** @throws JobFailed where another desk has the folder, or nothing can be written there */
    static FolderLock of(Path folder) {
        try {
            FileChannel channel =
                    FileChannel.open(folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = tried(channel);
            if (lock == null) {
                channel.close();
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "folder '" + Harmless.shown(folder.toString()) + "' is on another desk already. Use that one's"
                                + " window, or end it with Ctrl-C first.");
            }
            return new FolderLock(channel, lock);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT,
                    "nothing can be written in folder '" + Harmless.shown(folder.toString())
                            + "': the desk keeps its files there. Maybe it is another folder, or you may not write"
                            + " in it.");
        }
    }

    private static FileLock tried(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    /** The file stays: whoever removed it could take it from under a desk that has just begun. */
    @Override
    public void close() {
        try {
            lock.release();
            channel.close();
        } catch (IOException e) {
            // The process ends, and the lock with it.
            return;
        }
    }
}
