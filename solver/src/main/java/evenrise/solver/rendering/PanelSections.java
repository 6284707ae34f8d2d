package evenrise.solver.rendering;

import evenrise.solver.document.DirectoryLine;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What belongs to one panel: its schedule, and the directory inside its door. */
final class PanelSections {
    /** Rows of pairs that stand on one page. */
    private static final int SHORT = 48;

    private static final Map<String, String> NOTHING = Map.of("slots", "", "purpose", "", "breaker", "", "open", "");

    /**
     * A panel's directory.
     *
     * @param pairs rows of two lines each: odd and even slots beside each other
     */
    public record Door(String name, String fedFrom, List<List<Map<String, String>>> pairs, boolean isShort) {}

    private final SiteDocument site;
    private final SheetWords words;
    private final ShownTables shown;

    PanelSections(SiteDocument site, ShownTables shown) {
        this.site = site;
        this.words = site.words();
        this.shown = shown;
    }

    PrintSection schedules() {
        return new PrintSection(
                words.say("schedules.title"),
                "panels",
                site.schedules().stream()
                        .map(schedule -> {
                            String title = words.say("panel.title", schedule.panel());
                            return new PrintSection.Part(
                                    title,
                                    Map.<String, Object>of(
                                            "title", title, "schedule", schedule, "fit", ScheduleFit.of(schedule)));
                        })
                        .toList(),
                PrintSection.Form.ACROSS);
    }

    PrintSection directory() {
        List<PrintBlock> panels = PrintBlock.of(shown.of(site.directory()), DirectoryLine::panel);
        return PrintSections.section(
                words.say("directory.title"),
                "directory",
                PrintBlock.parts(panels, PrintSections.ROWS),
                part -> Map.of(
                        "note",
                        site.directory().note(),
                        "panels",
                        part.stream().map(this::door).toList()));
    }

    private Door door(PrintBlock panel) {
        List<List<Map<String, String>>> pairs = new ArrayList<>();
        List<Map<String, String>> odd = slots(panel, 1);
        List<Map<String, String>> even = slots(panel, 0);
        for (int i = 0; i < Math.max(odd.size(), even.size()); i++) {
            pairs.add(List.of(i < odd.size() ? odd.get(i) : NOTHING, i < even.size() ? even.get(i) : NOTHING));
        }
        return new Door(
                words.say("panel.title", panel.name()),
                panel.rows().get(0).get("fedFrom"),
                pairs,
                pairs.size() <= SHORT);
    }

    /** @param rest of the first slot's number, halved */
    private static List<Map<String, String>> slots(PrintBlock panel, int rest) {
        return panel.rows().stream()
                .filter(row ->
                        Integer.parseInt(row.get("slots").split(",", 2)[0].strip()) % 2 == rest)
                .toList();
    }
}
