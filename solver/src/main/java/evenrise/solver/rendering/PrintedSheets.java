package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The set of sheets to print, as PDF. */
public final class PrintedSheets {
    /** Sizes of paper. */
    public enum Paper {
        A4("210mm", "297mm", "420mm"),
        LETTER("8.5in", "11in", "17in");

        private final String shortSide;
        private final String longSide;
        private final String twiceTheShortSide;

        Paper(String shortSide, String longSide, String twiceTheShortSide) {
            this.shortSide = shortSide;
            this.longSide = longSide;
            this.twiceTheShortSide = twiceTheShortSide;
        }

        String size(PrintSection.Form form) {
            return switch (form) {
                case UPRIGHT -> shortSide + " " + longSide;
                case ACROSS -> longSide + " " + shortSide;
                case DRAWING -> twiceTheShortSide + " " + longSide;
            };
        }
    }

    private final PrintedSet set;

    /** All sections. */
    public PrintedSheets(Document document) {
        this(document, SheetSection.ALL);
    }

    /** What every paper shares is made here, once. */
    public PrintedSheets(Document document, Collection<SheetSection> wanted) {
        ShownTables tables = new ShownTables();
        Map<Integer, PrintSection> sections = new LinkedHashMap<>();
        PrintSections.of(SiteDocument.of(document), tables, wanted)
                .forEach((which, section) -> sections.put(which.number(), section));
        this.set = new PrintedSet(new PrintedSet.Contents(
                document.imprint(),
                "",
                document.headline(),
                document.isBroken(),
                SheetWords.in(SheetLanguage.EN),
                UsedCharacters.of(document, tables),
                Map.of("document", document, "loadMillimetres", PrintSections.loadMillimetres(document)),
                "cover",
                sections,
                SheetSection.sharing()));
    }

    /** Titles of those sections that the document has something for, by their words. */
    public static Map<String, String> titles(Document document) {
        Map<String, String> titles = new LinkedHashMap<>();
        PrintSections.of(SiteDocument.of(document), new ShownTables(), SheetSection.ALL)
                .forEach((section, printed) -> titles.put(section.word(), printed.title()));
        return titles;
    }

    /** What is on each page, once they are printed on that paper. */
    public List<PrintedPage> pages(Paper paper) {
        return set.pages(paper);
    }

    public byte[] on(Paper paper) {
        return on(List.of(paper)).get(paper);
    }

    /** On all of them beside each other. */
    public Map<Paper, byte[]> on(List<Paper> papers) {
        return set.on(papers);
    }
}
