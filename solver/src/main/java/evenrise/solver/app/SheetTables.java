package evenrise.solver.app;

import evenrise.model.file.ReadingsFile;
import evenrise.model.handout.PlanDigest;
import evenrise.model.plan.Plan;
import evenrise.model.readings.SavedReadings;
import evenrise.solver.commissioning.FilledSheets;
import evenrise.solver.commissioning.SavedTables;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** The tables of a filled sheet, whether somebody wrote into cells or into the commissioning page. */
final class SheetTables {
    private static final int BYTE_ORDER_MARK = 0xEF;

    /** What is longer was written by a recorder, and not by hand. */
    private static final long MOST_SHEET_BYTES = 8L << 20;

    /**
     * @param projectSha256 of the project that it is read for
     * @param plan that it is read for
     * @param note takes what is left out of account, and whether it was made of something else
     * @throws IOException with a message for the user where it is no table
     * @throws JobFailed that lists every problem of a saved file
     */
    static List<ReadTable> of(Path file, String projectSha256, Plan plan, Consumer<String> note) throws IOException {
        if (!isSaved(file)) {
            return TableFileReader.read(file);
        }
        SavedReadings saved = Inputs.told(file.toString(), ReadingsFile.read(file), note)
                .value()
                .orElseThrow();
        if (!saved.planSha256().equals(PlanDigest.sha256(plan))) {
            note.accept(file + ": its page was made of a plan that places or sets something else. What was read is held"
                    + " against this plan.");
        } else if (!saved.projectSha256().equals(projectSha256)) {
            note.accept(file + ": the project's file is another than when the page was made. What is planned may be"
                    + " another than whoever read it saw.");
        }
        return SavedTables.of(saved);
    }

    private SheetTables() {}

    /** Whether a file is anything of this kind; what cannot be read is none. */
    static boolean isOne(Path file) {
        try {
            return isSaved(file)
                    || Files.size(file) <= MOST_SHEET_BYTES && FilledSheets.isAny(TableFileReader.read(file));
        } catch (IOException e) {
            return false;
        }
    }

    /** A table of values never begins with a brace. */
    private static boolean isSaved(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(64);
            int at = head.length > 2 && (head[0] & 0xff) == BYTE_ORDER_MARK ? 3 : 0;
            while (at < head.length && Character.isWhitespace(head[at])) {
                at++;
            }
            return at < head.length && head[at] == '{';
        }
    }
}
