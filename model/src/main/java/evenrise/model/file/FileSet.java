package evenrise.model.file;

import evenrise.model.check.Shown;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Files of one run that belong together in a folder: all of them are there, or all of the earlier run's. New files are
 * written beside the old ones; one list of them, renamed into place, is the commit; then they take their names, and what
 * the earlier run wrote and this one does not is removed, unless somebody has changed it since. A run that is killed
 * after the commit is finished by the next one, or by {@link #recover}.
 */
public final class FileSet {
    /** Names what the last run wrote, with the hash of each file. */
    public static final String MANIFEST = "evenrise-files.json";

    /** The list of a run that is committed and not yet finished. */
    static final String COMMITTED = ".evenrise-commit.json";

    private final Path folder;
    private final Map<String, byte[]> files = new LinkedHashMap<>();

    public FileSet(Path folder) {
        this.folder = folder;
    }

    /** Adds a file; of two with one name the later counts. */
    public FileSet add(String name, byte[] bytes) {
        files.put(name, bytes);
        return this;
    }

    /**
     * Names in the folder that would be overwritten although the last run did not write them, or somebody has changed them
     * since.
     */
    public List<String> foreign(Collection<String> names) throws WriteFailed {
        try {
            recover(folder);
            Map<String, String> earlier =
                    FileManifest.read(folder.resolve(MANIFEST)).hashes();
            List<String> foreign = new ArrayList<>();
            for (String name : names) {
                Path file = folder.resolve(name);
                if (Files.exists(file) && !FileManifest.hash(file).equals(earlier.get(name))) {
                    foreign.add(name);
                }
            }
            return foreign;
        } catch (WriteFailed e) {
            throw e;
        } catch (IOException e) {
            throw WholeFile.failed("the folder " + Shown.quoted(folder.toString()), e);
        }
    }

    /** Writes them all, or none. */
    public void write() throws WriteFailed {
        try {
            Files.createDirectories(folder);
            recover(folder);
            List<FileManifest.Entry> entries = new ArrayList<>();
            try {
                for (Map.Entry<String, byte[]> each : files.entrySet()) {
                    Path target = folder.resolve(each.getKey());
                    Path temporary = Temporary.besides(target);
                    entries.add(new FileManifest.Entry(
                            each.getKey(),
                            FileManifest.hash(each.getValue()),
                            Optional.of(temporary.getFileName().toString())));
                    Temporary.write(temporary, each.getValue(), target);
                }
                new FileManifest(entries).write(folder.resolve(COMMITTED));
            } catch (IOException e) {
                for (FileManifest.Entry each : entries) {
                    Files.deleteIfExists(folder.resolve(each.temporary().orElseThrow()));
                }
                throw e;
            }
            recover(folder);
            for (String name : files.keySet()) {
                Temporary.clean(folder.resolve(name));
            }
        } catch (WriteFailed e) {
            throw e;
        } catch (IOException e) {
            throw WholeFile.failed("the folder " + Shown.quoted(folder.toString()), e);
        }
    }

    /** Finishes what a run that was killed after its commit has left in {@code folder}. */
    public static void recover(Path folder) throws IOException {
        Path committed = folder.resolve(COMMITTED);
        if (!Files.exists(committed)) {
            return;
        }
        FileManifest done = FileManifest.read(committed);
        FileManifest earlier = FileManifest.read(folder.resolve(MANIFEST));
        for (FileManifest.Entry each : done.files()) {
            Path temporary = folder.resolve(each.temporary().orElse(""));
            if (each.temporary().isPresent() && Files.exists(temporary)) {
                Temporary.move(temporary, folder.resolve(each.name()));
            }
        }
        Map<String, String> kept = done.hashes();
        for (FileManifest.Entry each : earlier.files()) {
            Path file = folder.resolve(each.name());
            boolean isLeft = !kept.containsKey(each.name()) && Files.exists(file);
            if (isLeft && FileManifest.hash(file).equals(each.sha256())) {
                Files.delete(file);
            }
        }
        done.withoutTemporaries().write(folder.resolve(MANIFEST));
        Files.deleteIfExists(committed);
    }
}
