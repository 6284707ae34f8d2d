package evenrise.solver.rendering;

import evenrise.model.project.OnEmergency;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.EmergencyEffect;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.report.GroupUse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What drops and what holds on an emergency: groups, then load by load. */
final class EmergencySection {
    /** A load, and what becomes of it where that is another than of its group. */
    public record Line(String load, String name, String place, String otherwise) {}

    /** Loads of one group. */
    public record Block(String title, List<Line> lines) {}

    private final SiteDocument site;
    private final SheetWords words;
    private final DocumentTables tables;
    private final ShownTables shown;

    EmergencySection(SiteDocument site, ShownTables shown) {
        this.site = site;
        this.words = site.words();
        this.tables = site.document().tables();
        this.shown = shown;
    }

    PrintSection section() {
        return PrintSections.section(
                words.say("emergency.section"),
                "emergency",
                List.of(blocks()),
                blocks -> Map.of("note", note(), "groups", groups(), "blocks", blocks));
    }

    /** Which loads the plan leaves out; in another language how many. */
    private String note() {
        int without = site.document().assessment().loadsWithoutPlace();
        return words.language() == SheetLanguage.EN
                ? tables.emergency().note()
                : without > 0 ? words.say("verdict.no-place", without) : "";
    }

    private List<Map<String, String>> groups() {
        List<Map<String, String>> cells = shown.of(tables.groups()).byKey();
        List<Map<String, String>> rows = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            GroupUse group = tables.groups().rows().get(i);
            Map<String, String> row = new TreeMap<>(cells.get(i));
            row.put("effect", words.say(group.onEmergency() == OnEmergency.DROP ? "test.drops" : "test.holds"));
            row.put("running", words.number(row.get("running")));
            String none = row.getOrDefault("notAssigned", "");
            row.put("notAssigned", none.isEmpty() ? "" : words.say("emergency.not-assigned", none));
            rows.add(row);
        }
        return rows;
    }

    private List<Block> blocks() {
        List<EmergencyEffect> effects = tables.emergency().rows();
        List<Map<String, String>> cells = shown.of(tables.emergency()).byKey();
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < effects.size(); i++) {
            groups.computeIfAbsent(effects.get(i).group(), any -> new ArrayList<>())
                    .add(i);
        }
        return groups.values().stream()
                .map(group -> {
                    EmergencyEffect first = effects.get(group.get(0));
                    return new Block(
                            Cells.text(first.groupIn(words)) + ": " + first.effectIn(words),
                            group.stream()
                                    .map(i -> line(effects.get(i), cells.get(i), first))
                                    .toList());
                })
                .toList();
    }

    private Line line(EmergencyEffect each, Map<String, String> cells, EmergencyEffect first) {
        String name = cells.get("name");
        return new Line(
                cells.get("load"),
                name.equals(cells.get("load")) ? "" : name,
                cells.get("panel") + " " + cells.get("slots"),
                each.effect().equals(first.effect()) ? "" : each.effectIn(words));
    }
}
