package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.model.contract.Harmless;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetWords;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A cover and numbered sections, printed on any paper. */
final class PrintedSet {
    /**
     * What a set is made of.
     *
     * @param kind in the number of each sheet, behind the prefix; empty for the documents of a plan
     * @param headline first on every page
     * @param isAlarm whether the headline is a warning
     * @param words of the sheets' own texts
     * @param signs that names are made of
     * @param shared what every template is filled with
     * @param cover its template
     * @param sections by the number that their sheets have, in their order
     */
    record Contents(
            Imprint imprint,
            String kind,
            String headline,
            boolean isAlarm,
            SheetWords words,
            SortedSet<Integer> signs,
            Map<String, Object> shared,
            String cover,
            Map<Integer, PrintSection> sections) {}

    /** A line of the index; pages count from 1. */
    public record Entry(String title, String sheets, int page) {}

    /**
     * Text in the margins of every page, each within a string of the style sheet.
     *
     * @param place which section the page belongs to
     */
    public record Margins(String project, String place, String revision, String date) {
        private static final int LONGEST = 60;

        static Margins of(Imprint imprint, String place) {
            return new Margins(css(imprint.project()), css(place), css(imprint.revision()), css(imprint.date()));
        }

        private static String css(String text) {
            return Harmless.cut(Harmless.withinCss(text), LONGEST);
        }
    }

    /** What one part takes while it is laid out, and what is kept of all until their file ends; measured, rounded up. */
    private static final long BYTES_A_FILE = 80_000_000;

    private static final long BYTES_A_PART = 150_000;

    private final Contents contents;
    /** Papers are printed beside each other. */
    private final Map<PrintedSheets.Paper, List<PrintedPage>> pages = new ConcurrentHashMap<>();

    PrintedSet(Contents contents) {
        this.contents = contents;
    }

    /** What is on each page, once they are printed on that paper. */
    List<PrintedPage> pages(PrintedSheets.Paper paper) {
        return pages.getOrDefault(paper, List.of());
    }

    /** Papers beside each other, where there are processors and memory for them: what each is made of is its own. */
    Map<PrintedSheets.Paper, byte[]> on(List<PrintedSheets.Paper> papers) {
        XRLog.setLoggingEnabled(false);
        int parts = contents.sections().values().stream()
                .mapToInt(section -> section.parts().size())
                .sum();
        return (isRoomFor(papers.size(), parts, Runtime.getRuntime().maxMemory())
                        ? papers.parallelStream()
                        : papers.stream())
                .collect(Collectors.toMap(
                        Function.identity(),
                        this::on,
                        (first, any) -> first,
                        () -> new EnumMap<>(PrintedSheets.Paper.class)));
    }

    /** Whether so many files of so many parts fit into half of a heap: the other half holds plan and documents. */
    static boolean isRoomFor(int files, int parts, long heapBytes) {
        return files * (BYTES_A_FILE + parts * BYTES_A_PART) < heapBytes / 2;
    }

    private byte[] on(PrintedSheets.Paper paper) {
        try (Printing file = new Printing(paper)) {
            for (Map.Entry<Integer, PrintSection> each : contents.sections().entrySet()) {
                PrintSection section = each.getValue();
                file.begin(each.getKey(), section);
                for (PrintSection.Part part : section.parts()) {
                    file.draw(section, part);
                }
            }
            return file.finished();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Markup markup(String template, String place, Map<String, Object> values, PrintFonts fonts) {
        Map<String, Object> all = new HashMap<>(contents.shared());
        all.putAll(values);
        all.put("w", contents.words().all());
        all.put("language", contents.words().language().word());
        all.put("imprint", contents.imprint());
        all.put("margins", Margins.of(contents.imprint(), place));
        all.put("family", fonts.family());
        return Markup.of(fonts.legible(Templates.fill("print/" + template + ".peb", all)));
    }

    /** One file. */
    private final class Printing implements Closeable {
        private final PrintedSheets.Paper paper;
        private final TaggedFile file;
        private final PrintOutline outline;
        private final SheetNumbers numbers = new SheetNumbers(contents.imprint(), contents.kind(), contents.words());
        private String begun = "";

        Printing(PrintedSheets.Paper paper) throws IOException {
            this.paper = paper;
            this.file = new TaggedFile(contents.signs());
            this.outline = new PrintOutline(file);
        }

        void begin(int number, PrintSection section) {
            begun = section.title();
            numbers.begin(number, section.title());
        }

        void draw(PrintSection section, PrintSection.Part part) throws IOException {
            String place = part.mark().isEmpty() ? section.title() : part.mark();
            int page = file.pages();
            file.add(file.laid(
                    markup(section.template(), place, part.values(), file.fonts()), paper.size(section.form())));
            numbers.drawn(file.pages() - page);
            if (!begun.isEmpty()) {
                outline.section(begun, page);
                begun = "";
            }
            if (!part.mark().isEmpty()) {
                outline.within(part.mark(), page);
            }
        }

        byte[] finished() throws IOException {
            cover();
            new PrintImprint(file, contents.imprint(), contents.headline(), contents.isAlarm())
                    .write(file.fonts().text(), numbers.all(file.pages()), contents.words());
            pages.put(paper, numbers.contents(file.pages()));
            return file.finished();
        }

        /** Drawn last, for it tells the pages of all else. Its own length moves them. */
        private void cover() throws IOException {
            int length = 1;
            while (true) {
                Map<String, Object> values = Map.of(
                        "contents",
                        numbers.index(length),
                        "missing",
                        file.fonts().missing(),
                        "replacement",
                        PrintFonts.REPLACEMENT);
                TaggedFile.Laid laid = file.laid(
                        markup(contents.cover(), "", values, file.fonts()), paper.size(PrintSection.Form.UPRIGHT));
                if (laid.pages() == length) {
                    file.addFirst(laid);
                    return;
                }
                length = laid.pages();
                laid.close();
            }
        }

        @Override
        public void close() {
            file.close();
        }
    }
}
