package evenrise.solver.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * Which documents go where.
 *
 * @param folder holds those of one run, all of them or all of the run before
 * @param revision on every page
 * @param date on every page
 * @param overwrites whether files in the folder that no earlier run wrote, or that were changed since, may be overwritten
 * @param csv how tables of values are written
 * @since 0.1.0
 */
public record DocumentSet(
        Path folder, List<DocumentFormat> formats, String revision, String date, boolean overwrites, CsvStyle csv) {
    public DocumentSet {
        formats = List.copyOf(formats);
    }

    /** Every document, as revision A of today. */
    public static DocumentSet into(Path folder) {
        return new DocumentSet(
                folder,
                DocumentFormat.ALL,
                "A",
                LocalDate.now(ZoneId.systemDefault()).toString(),
                false,
                CsvStyle.USUAL);
    }

    public DocumentSet withFormats(List<DocumentFormat> value) {
        return new DocumentSet(folder, value, revision, date, overwrites, csv);
    }

    public DocumentSet withImprint(String newRevision, String newDate) {
        return new DocumentSet(folder, formats, newRevision, newDate, overwrites, csv);
    }

    public DocumentSet withOverwriting(boolean value) {
        return new DocumentSet(folder, formats, revision, date, value, csv);
    }

    public DocumentSet withCsv(CsvStyle value) {
        return new DocumentSet(folder, formats, revision, date, overwrites, value);
    }
}
