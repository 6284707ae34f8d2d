package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.model.contract.Harmless;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetWords;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
     * @param sharing numbers of sections that may share a page where each of them leaves room on it
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
            Map<Integer, PrintSection> sections,
            Set<Integer> sharing) {}

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

    /** A section of so many pages may share its first and its last with others. */
    private static final int FEW_PAGES = 3;

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
                file.draw(new Numbered(each.getKey(), each.getValue()));
            }
            file.place();
            return file.finished();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String text(String template, String place, Map<String, Object> values, PrintFonts fonts) {
        Map<String, Object> all = new HashMap<>(contents.shared());
        all.putAll(values);
        all.put("w", contents.words().all());
        all.put("language", contents.words().language().word());
        all.put("imprint", contents.imprint());
        all.put("margins", Margins.of(contents.imprint(), place));
        all.put("family", fonts.family());
        return fonts.legible(Templates.fill("print/" + template + ".peb", all));
    }

    /** A section and the number of its sheets. */
    private record Numbered(int number, PrintSection section) {
        String title() {
            return section.title();
        }

        PrintSection.Part only() {
            return section.parts().get(0);
        }

        boolean isOnePart() {
            return section.parts().size() == 1
                    && only().mark().isEmpty()
                    && section.form() == PrintSection.Form.UPRIGHT;
        }
    }

    /** One file. */
    private final class Printing implements Closeable {
        private final PrintedSheets.Paper paper;
        private final TaggedFile file;
        private final PrintOutline outline;
        private final SheetNumbers numbers = new SheetNumbers(contents.imprint(), contents.kind(), contents.words());
        /** Sections that are laid out together, and not placed yet: the next may find room on their last page. */
        private final List<Numbered> sharing = new ArrayList<>();
        /** On which of those pages each of them begins. */
        private final List<Integer> begins = new ArrayList<>();

        private TaggedFile.Laid shared;

        Printing(PrintedSheets.Paper paper) throws IOException {
            this.paper = paper;
            this.file = new TaggedFile(contents.signs());
            this.outline = new PrintOutline(file);
        }

        void draw(Numbered section) throws IOException {
            boolean mayShare = contents.sharing().contains(section.number()) && section.isOnePart();
            if (!mayShare) {
                place();
            }
            int first = -1;
            for (PrintSection.Part part : section.section().parts()) {
                TaggedFile.Laid laid = laid(section, part);
                if (mayShare && laid.pages() <= FEW_PAGES) {
                    share(section, laid);
                    return;
                }
                place();
                int begin = file.pages();
                file.add(laid);
                if (first < 0) {
                    first = begin;
                    outline.section(section.title(), first);
                }
                if (!part.mark().isEmpty()) {
                    outline.within(part.mark(), begin);
                }
            }
            if (first >= 0) {
                numbers.add(section.number(), section.title(), first, file.pages() - first);
            }
        }

        /** Below the sections before, if that saves a page: then it begins on their last one. */
        private void share(Numbered section, TaggedFile.Laid alone) throws IOException {
            if (!sharing.isEmpty() && shared.pages() <= FEW_PAGES) {
                List<Numbered> all = new ArrayList<>(sharing);
                all.add(section);
                TaggedFile.Laid together = together(all);
                if (together.pages() < shared.pages() + alone.pages()) {
                    begins.add(shared.pages() - 1);
                    sharing.add(section);
                    alone.close();
                    shared.close();
                    shared = together;
                    return;
                }
                together.close();
            }
            place();
            begins.add(0);
            sharing.add(section);
            shared = alone;
        }

        private TaggedFile.Laid together(List<Numbered> all) throws IOException {
            String place = all.stream().map(Numbered::title).collect(Collectors.joining(", "));
            return file.laid(
                    Markup.of(SharedPage.of(all.stream()
                            .map(each -> text(
                                    each.section().template(),
                                    place,
                                    each.only().values(),
                                    file.fonts()))
                            .toList())),
                    paper.size(PrintSection.Form.UPRIGHT));
        }

        private TaggedFile.Laid laid(Numbered section, PrintSection.Part part) throws IOException {
            String place = part.mark().isEmpty() ? section.title() : part.mark();
            return file.laid(
                    Markup.of(text(section.section().template(), place, part.values(), file.fonts())),
                    paper.size(section.section().form()));
        }

        /** Puts what shares pages into the file. */
        void place() throws IOException {
            if (sharing.isEmpty()) {
                return;
            }
            int first = file.pages();
            file.add(shared);
            for (int i = 0; i < sharing.size(); i++) {
                Numbered each = sharing.get(i);
                int begin = first + begins.get(i);
                // The next one begins on the page that this one ends on.
                int end = i + 1 < sharing.size() ? first + begins.get(i + 1) + 1 : file.pages();
                numbers.add(each.number(), each.title(), begin, end - begin);
                outline.section(each.title(), begin);
            }
            sharing.clear();
            begins.clear();
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
                        Markup.of(text(contents.cover(), "", values, file.fonts())),
                        paper.size(PrintSection.Form.UPRIGHT));
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
