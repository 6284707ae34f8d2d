package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;

/** Sheets for site in another language, as a set with a cover of its own: nothing in it is left in English by chance. */
public final class SiteBooklet {
    /** Those that there are words for. Each has the number that it has in the English set. */
    static final List<SheetSection> SECTIONS = List.of(
            SheetSection.SCHEDULES,
            SheetSection.SETTINGS,
            SheetSection.LANDING,
            SheetSection.SHUTDOWN,
            SheetSection.COMMISSIONING,
            SheetSection.MOTORS,
            SheetSection.DIRECTORY,
            SheetSection.EQUIPMENT);

    private final PrintedSet set;

    /** @param wanted of all sections; those without words are left out */
    public SiteBooklet(SiteDocument site, Collection<SheetSection> wanted) {
        Document document = site.document();
        SheetWords words = site.words();
        ShownTables tables = new ShownTables();
        Map<Integer, PrintSection> sections = new LinkedHashMap<>();
        PrintSections.of(
                        site, tables, SECTIONS.stream().filter(wanted::contains).toList())
                .forEach((which, section) -> sections.put(which.number(), section));
        SortedSet<Integer> signs = UsedCharacters.of(document, tables);
        words.all().values().forEach(text -> text.codePoints().forEach(signs::add));
        signs.removeIf(Character::isWhitespace);
        this.set = new PrintedSet(new PrintedSet.Contents(
                document.imprint(),
                words.language().word().toUpperCase(Locale.ROOT),
                site.verdict(),
                document.isBroken(),
                words,
                signs,
                Map.of(
                        "document",
                        document,
                        "loadMillimetres",
                        PrintSections.loadMillimetres(document),
                        "titles",
                        document.imprint().titles(words),
                        "verdict",
                        site.verdict(),
                        "cautions",
                        words.cautions()),
                "sitecover",
                sections,
                SheetSection.sharing()));
    }

    public Map<PrintedSheets.Paper, byte[]> on(List<PrintedSheets.Paper> papers) {
        return set.on(papers);
    }

    /** What is on each page, once they are printed on that paper. */
    public List<PrintedPage> pages(PrintedSheets.Paper paper) {
        return set.pages(paper);
    }
}
