package evenrise.solver.rendering;

import evenrise.model.plan.Cautions;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.report.OrderText;
import evenrise.solver.report.PanelPicture;
import evenrise.solver.report.WorkSheet;
import evenrise.solver.report.WorkSheets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** The sheets of a night on paper: a cover, then a page a stage, which goes on where one is not enough. */
public final class WorkPrint {
    /** Broken limits that stand beside the currents; more stand below. */
    private static final int MOST_BESIDE = 3;

    /** Groups that fit beside the blanks for who is told. */
    private static final int MOST_IN_A_LINE = 2;

    private static final String KIND = "W";

    private final PrintedSet set;

    /** A row of a panel's picture; the right side is empty where slots are in one column. */
    public record Row(PanelPicture.Position left, PanelPicture.Position right) {}

    /** A panel's picture, row by row. */
    public record Drawn(String panel, boolean isTwoSided, List<Row> rows) {}

    public WorkPrint(Imprint imprint, WorkSheets sheets) {
        Map<String, Object> shared = new HashMap<>();
        shared.put("sheets", sheets);
        shared.put("headline", OrderText.headline(sheets));
        shared.put("isAlarm", OrderText.isAlarm(sheets));
        shared.put("stages", sheets.rows());
        shared.put("outages", sheets.outages());
        shared.put("remarks", OrderText.remarks(sheets));
        shared.put("begins", sheets.sheets().stream().map(WorkPrint::begins).toList());
        shared.put("cautions", Cautions.ALL);
        Map<Integer, PrintSection> sections = new LinkedHashMap<>();
        sheets.sheets().forEach(each -> sections.put(each.number(), section(each)));
        this.set = new PrintedSet(new PrintedSet.Contents(
                imprint,
                KIND,
                OrderText.headline(sheets),
                OrderText.isAlarm(sheets),
                SheetWords.in(SheetLanguage.EN),
                signs(imprint, sections, shared),
                shared,
                "workcover",
                sections,
                Set.of()));
    }

    public Map<PrintedSheets.Paper, byte[]> on(List<PrintedSheets.Paper> papers) {
        return set.on(papers);
    }

    private static PrintSection section(WorkSheet sheet) {
        Map<String, Object> values = new HashMap<>();
        values.put("sheet", sheet);
        values.put("begin", begins(sheet));
        values.put("end", clock(sheet.nightMinutes() + sheet.minutes()));
        values.put("minutes", Math.round(sheet.minutes()));
        values.put("isManyOut", sheet.told().size() > MOST_IN_A_LINE);
        values.put("told", String.join(", ", sheet.told()));
        values.put("isShort", sheet.end().broken().size() <= MOST_BESIDE);
        values.put("wayBack", sheet.wayBack());
        values.put(
                "clocks", sheet.steps().stream().map(step -> clock(sheet, step)).toList());
        values.put("pictures", sheet.pictures().stream().map(WorkPrint::drawn).toList());
        return new PrintSection(
                "Stage " + sheet.number() + " of " + sheet.stages(),
                "work",
                List.of(new PrintSection.Part("", values)));
    }

    /** Of the night, where nights are stated; else of the stage. */
    private static String clock(WorkSheet sheet, WorkSheet.Line step) {
        return step.atMinute().isPresent()
                ? clock(sheet.nightMinutes() + step.atMinute().getAsDouble())
                : "";
    }

    private static String begins(WorkSheet sheet) {
        return sheet.night() > 0 ? clock(sheet.nightMinutes()) : "";
    }

    /** Hours and minutes: {@code 2:05}. */
    private static String clock(double minutes) {
        long whole = Math.round(minutes);
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static Drawn drawn(PanelPicture picture) {
        List<PanelPicture.Position> all = picture.positions();
        PanelPicture.Position none = new PanelPicture.Position(0, "", "", "", "", "", "", "", List.of());
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < all.size(); i += picture.isTwoSided() ? 2 : 1) {
            rows.add(new Row(all.get(i), picture.isTwoSided() && i + 1 < all.size() ? all.get(i + 1) : none));
        }
        return new Drawn(picture.panel(), picture.isTwoSided(), rows);
    }

    private static SortedSet<Integer> signs(
            Imprint imprint, Map<Integer, PrintSection> sections, Map<String, Object> shared) {
        SortedSet<Integer> signs = new TreeSet<>();
        (imprint + sections.toString() + shared)
                .codePoints()
                .filter(sign -> !Character.isWhitespace(sign))
                .forEach(signs::add);
        return signs;
    }
}
