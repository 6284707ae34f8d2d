package evenrise.model.file;

import evenrise.model.check.RecordersChecks;
import evenrise.model.intake.Recorders;
import java.nio.file.Path;

/** Reads and writes what was said of the columns of recordings. */
public final class RecordersFile {
    private static final class Kind extends FileKind<Recorders> {
        Kind() {
            super(Recorders.class, "the file of recorders", Recorders.FORMAT);
        }

        @Override
        void check(Recorders recorders, Problems problems) {
            RecordersChecks.errors(recorders).forEach(problems::add);
        }
    }

    private RecordersFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<Recorders> read(Path file) {
        return new Kind().read(file);
    }

    /**
     * Writes the file as a whole or not at all.
     *
     * @throws WriteFailed with a message that names the file and the cause
     */
    public static void write(Recorders recorders, Path file) throws WriteFailed {
        WholeFile.write(file, FileText.of(recorders, Format.JSON));
    }
}
