package evenrise.model.file;

import evenrise.model.check.MappingChecks;
import evenrise.model.intake.Mapping;
import java.nio.file.Path;

/** Reads and writes how an equipment list is to be read. */
public final class MappingFile {
    private static final FileKind<Mapping> KIND = new FileKind<>(Mapping.class, "the mapping", Mapping.FORMAT) {
        @Override
        void check(Mapping mapping, Problems problems) {
            // Each field is checked by itself; none contradicts another.
            MappingChecks.errors(mapping).forEach(problems::add);
        }
    };

    private MappingFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<Mapping> read(Path file) {
        return KIND.read(file);
    }

    /**
     * Writes the file as a whole or not at all.
     *
     * @throws WriteFailed with a message that names the file and the cause
     */
    public static void write(Mapping mapping, Path file, Format format) throws WriteFailed {
        WholeFile.write(file, FileText.of(mapping, format));
    }
}
