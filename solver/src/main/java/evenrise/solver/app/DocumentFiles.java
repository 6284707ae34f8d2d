package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.FileSet;
import evenrise.model.project.TitleBlock;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Handover;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.document.SiteForm;
import evenrise.solver.rendering.CommissioningPage;
import evenrise.solver.rendering.DxfFile;
import evenrise.solver.rendering.HtmlPage;
import evenrise.solver.rendering.PrintedPage;
import evenrise.solver.rendering.PrintedSheets;
import evenrise.solver.rendering.SheetSection;
import evenrise.solver.rendering.SiteBooklet;
import evenrise.solver.rendering.WorkbookFile;
import evenrise.solver.table.Csv;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Documents of a plan as bytes, by the names of their files. */
final class DocumentFiles {
    private static final String HTML = "plan.html";
    private static final String READINGS = "readings.html";
    private static final String A4 = "plan-a4.pdf";
    private static final String LETTER = "plan-letter.pdf";
    private static final String WORKBOOK = "plan.xlsx";

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /**
     * Documents before they are written.
     *
     * @param files by their names
     * @param pages of those files that are printed sheets
     */
    record DrawnFiles(Document document, Map<String, byte[]> files, Map<String, List<PrintedPage>> pages) {}

    private final DocumentSet wanted;
    private final DocumentFolder folder;
    private final List<SheetSection> sections;
    private final TitleBlock title;
    private final LabelFiles labels;
    private final SheetWords words;

    /**
     * @param inputs what the documents are made from, which they never overwrite
     * @param note takes what is left out of account
     * @throws JobFailed where a section is asked for that there is none of, the title block is not sound, or labels are asked for that
     *     fit on no sheet
     */
    DocumentFiles(DocumentSet wanted, List<Source> inputs, Consumer<String> note) {
        this.wanted = wanted;
        this.folder = new DocumentFolder(
                Stream.concat(inputs.stream(), wanted.titleBlock().stream()).toList());
        this.sections = sections(wanted.sections());
        this.title = wanted.titleBlock()
                .map(source -> Inputs.told(source.name(), source.titleBlock(), note)
                        .value()
                        .orElseThrow())
                .orElse(TitleBlock.NONE);
        this.labels = new LabelFiles(wanted.labels());
        this.words = SheetWords.in(SheetLanguage.of(wanted.language())
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "--language is '" + Harmless.shown(wanted.language()) + "', expected of "
                                + SheetLanguage.ALL.stream()
                                        .map(SheetLanguage::word)
                                        .collect(Collectors.joining(", "))
                                + ".")));
    }

    /** In the order of the sheets; all where none is named. */
    private static List<SheetSection> sections(List<String> words) {
        if (words.isEmpty()) {
            return SheetSection.ALL;
        }
        return words.stream()
                .map(word -> SheetSection.of(word)
                        .orElseThrow(() -> new JobFailed(
                                JobFailed.Reason.REQUEST,
                                "--sections is '" + Harmless.shown(word) + "', expected of "
                                        + SheetSection.ALL.stream()
                                                .map(SheetSection::word)
                                                .collect(Collectors.joining(", "))
                                        + ".")))
                .distinct()
                .sorted()
                .toList();
    }

    /** @throws JobFailed where the documents could not be written, so that nobody waits for what gets lost */
    void refuseWhatIsNotOurs() {
        folder.refuse(
                wanted.folder(), wanted.overwrites(), List.of(HTML, READINGS, A4, LETTER, WORKBOOK, FileSet.MANIFEST));
    }

    /** Where they can be written. */
    DocumentFolder folder() {
        return folder;
    }

    /**
     * Everything that is wanted, not written yet.
     *
     * @param at is told what is drawn next, and may end it by an exception
     */
    DrawnFiles drawn(
            Evaluation evaluation,
            String projectSha256,
            Optional<Evaluation> before,
            List<NodeScatter> scatter,
            Consumer<String> at) {
        at.accept("tables");
        Imprint imprint = new Imprint(
                evaluation.project().name(),
                wanted.revision(),
                wanted.date(),
                projectSha256,
                ProgramVersion.ofThisProgram(),
                title);
        Document document = Documents.of(imprint, evaluation, before, scatter);
        Map<String, byte[]> files = new LinkedHashMap<>();
        Map<String, List<PrintedPage>> pages = new LinkedHashMap<>();
        if (wanted.formats().contains(DocumentFormat.HTML)) {
            at.accept(HTML);
            files.put(HTML, HtmlPage.of(document).getBytes(StandardCharsets.UTF_8));
            files.put(
                    READINGS,
                    CommissioningPage.of(imprint, SiteForm.of(evaluation.layout()))
                            .getBytes(StandardCharsets.UTF_8));
        }
        if (wanted.formats().contains(DocumentFormat.PDF)) {
            at.accept("sheets, A4 and Letter");
            PrintedSheets printed = new PrintedSheets(document, sections);
            Map<PrintedSheets.Paper, byte[]> sheets =
                    printed.on(List.of(PrintedSheets.Paper.A4, PrintedSheets.Paper.LETTER));
            files.put(A4, sheets.get(PrintedSheets.Paper.A4));
            files.put(LETTER, sheets.get(PrintedSheets.Paper.LETTER));
            pages.put(A4, printed.pages(PrintedSheets.Paper.A4));
            pages.put(LETTER, printed.pages(PrintedSheets.Paper.LETTER));
        }
        at.accept("labels");
        files.putAll(labels.of(document, words));
        if (words.language() != SheetLanguage.EN) {
            String name = "site-" + words.language().word();
            at.accept(name + ", A4 and Letter");
            SiteBooklet printed = new SiteBooklet(SiteDocument.of(document, evaluation, words), sections);
            Map<PrintedSheets.Paper, byte[]> sheets =
                    printed.on(List.of(PrintedSheets.Paper.A4, PrintedSheets.Paper.LETTER));
            files.put(name + "-a4.pdf", sheets.get(PrintedSheets.Paper.A4));
            files.put(name + "-letter.pdf", sheets.get(PrintedSheets.Paper.LETTER));
            pages.put(name + "-a4.pdf", printed.pages(PrintedSheets.Paper.A4));
            pages.put(name + "-letter.pdf", printed.pages(PrintedSheets.Paper.LETTER));
        }
        if (wanted.formats().contains(DocumentFormat.XLSX)) {
            at.accept(WORKBOOK);
            files.put(WORKBOOK, WorkbookFile.of(document));
        }
        if (wanted.formats().contains(DocumentFormat.DXF)) {
            at.accept("drawings");
            DxfFile.all(document).forEach((name, bytes) -> files.put(name + ".dxf", bytes));
        }
        if (wanted.formats().contains(DocumentFormat.CSV)) {
            at.accept("tables of values");
            document.tables().toFillIn().forEach(table -> files.put(table.id() + ".csv", csv(table)));
            Handover.of(evaluation.layout()).forEach(table -> files.put(table.id() + ".csv", csv(table)));
        }
        return new DrawnFiles(document, files, pages);
    }

    /**
     * Draws and writes everything that is wanted.
     *
     * @return the names of what is written
     */
    List<String> write(
            Evaluation evaluation, String projectSha256, Optional<Evaluation> before, List<NodeScatter> scatter) {
        return folder.write(
                wanted.folder(),
                wanted.overwrites(),
                drawn(evaluation, projectSha256, before, scatter, any -> {}).files());
    }

    private byte[] csv(DocumentTable<?> table) {
        List<List<String>> values = new ArrayList<>(table.values());
        if (wanted.csv().keys()) {
            values.set(0, table.fields());
        }
        return ((wanted.csv().mark() ? BYTE_ORDER_MARK : "") + Csv.of(values, table.remarks()))
                .getBytes(StandardCharsets.UTF_8);
    }
}
