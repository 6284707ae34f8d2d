package evenrise.solver.app;

import evenrise.solver.document.SheetLanguage;
import evenrise.solver.rendering.SheetSection;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * Which documents go where.
 *
 * @param folder holds those of one run, all of them or all of the run before
 * @param revision on every page
 * @param date on every page
 * @param overwrites whether files in the folder that no earlier run wrote, or that were changed since, may be overwritten
 * @param csv how tables of values are written
 * @param sections of the printed sheets, by their words; all where empty
 * @param titleBlock what else stands in the title block of the sheets
 * @param labels on stock sheets
 * @param language of site sheets and labels: {@code en}, {@code de}, {@code fr}
 * @since 0.1.0
 */
public record DocumentSet(
        Path folder,
        List<DocumentFormat> formats,
        String revision,
        String date,
        boolean overwrites,
        CsvStyle csv,
        List<String> sections,
        Optional<Source> titleBlock,
        LabelOrder labels,
        String language) {
    public DocumentSet {
        formats = List.copyOf(formats);
        sections = List.copyOf(sections);
    }

    /** Every document, as revision A of today. */
    public static DocumentSet into(Path folder) {
        return new DocumentSet(
                folder,
                DocumentFormat.ALL,
                "A",
                LocalDate.now(ZoneId.systemDefault()).toString(),
                false,
                CsvStyle.USUAL,
                List.of(),
                Optional.empty(),
                LabelOrder.NONE,
                "en");
    }

    /** Words of all sections of the printed sheets, in their order. */
    public static List<String> sectionWords() {
        return SheetSection.ALL.stream().map(SheetSection::word).toList();
    }

    /** Languages of site sheets and labels, by their words. */
    public static List<String> languages() {
        return SheetLanguage.ALL.stream().map(SheetLanguage::word).toList();
    }

    public DocumentSet withFolder(Path value) {
        return new DocumentSet(value, formats, revision, date, overwrites, csv, sections, titleBlock, labels, language);
    }

    public DocumentSet withFormats(List<DocumentFormat> value) {
        return new DocumentSet(folder, value, revision, date, overwrites, csv, sections, titleBlock, labels, language);
    }

    public DocumentSet withImprint(String newRevision, String newDate) {
        return new DocumentSet(
                folder, formats, newRevision, newDate, overwrites, csv, sections, titleBlock, labels, language);
    }

    public DocumentSet withOverwriting(boolean value) {
        return new DocumentSet(folder, formats, revision, date, value, csv, sections, titleBlock, labels, language);
    }

    /** Prints those sections alone, named by their words. */
    public DocumentSet withSections(List<String> value) {
        return new DocumentSet(folder, formats, revision, date, overwrites, csv, value, titleBlock, labels, language);
    }

    /** @param value a file of format {@code evenrise-title/1} */
    public DocumentSet withTitleBlock(Source value) {
        return new DocumentSet(
                folder, formats, revision, date, overwrites, csv, sections, Optional.of(value), labels, language);
    }

    public DocumentSet withCsv(CsvStyle value) {
        return new DocumentSet(
                folder, formats, revision, date, overwrites, value, sections, titleBlock, labels, language);
    }

    public DocumentSet withLabels(LabelOrder value) {
        return new DocumentSet(folder, formats, revision, date, overwrites, csv, sections, titleBlock, value, language);
    }

    /** @param value of site sheets and labels: {@code en}, {@code de}, {@code fr} */
    public DocumentSet withLanguage(String value) {
        return new DocumentSet(folder, formats, revision, date, overwrites, csv, sections, titleBlock, labels, value);
    }
}
