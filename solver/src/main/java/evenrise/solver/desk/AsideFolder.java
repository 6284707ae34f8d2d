package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.JobFailed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;

/** A folder for as long as something is done with files that were handed over, under names that harm nobody. */
final class AsideFolder {
    private static final int LONGEST_NAME = 80;
    /** What one system takes for a device, whatever its ending. */
    private static final String DEVICES = "(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])([.].*)?";

    private static final String NO_ROOM = "nothing can be written in the folder for temporary files.";

    private AsideFolder() {}

    /** The folder and all in it are gone afterwards. */
    static <T> T during(Function<Path, T> deed) {
        Path folder;
        try {
            folder = Files.createTempDirectory("evenrise-desk");
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, NO_ROOM);
        }
        try {
            return deed.apply(folder);
        } finally {
            try (Stream<Path> left = Files.list(folder)) {
                left.forEach(each -> each.toFile().delete());
            } catch (IOException e) {
                // What cannot be listed cannot be taken away; the system does that.
            }
            folder.toFile().delete();
        }
    }

    static void write(Path file, byte[] bytes) {
        try {
            Files.write(file, bytes);
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, NO_ROOM);
        }
    }

    /** Of a name what no system takes for a path or a device: letters, figures and a few signs, with a plain ending. */
    static String harmless(String name) {
        String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
        String plain = last.replaceAll("[^\\p{L}\\p{N} ._-]", "_").strip().replaceAll("^[. ]+|[. ]+$", "");
        if (!plain.matches(".*[\\p{L}\\p{N}].*")) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "'" + Harmless.shown(name) + "' is no name of a file.");
        }
        int dot = plain.lastIndexOf('.');
        String ending = dot < 0 ? "" : plain.substring(dot).toLowerCase(Locale.ROOT);
        String stem = dot < 0 ? plain : plain.substring(0, dot);
        return (stem.matches(DEVICES) ? "_" : "")
                + stem.substring(0, Math.min(LONGEST_NAME, stem.length()))
                + ending.substring(0, Math.min(LONGEST_NAME, ending.length()));
    }
}
