package evenrise.solver.rendering;

import evenrise.solver.document.DirectoryLine;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.EquipmentLabel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What is fixed to equipment: labels of fault currents and arc flash, directories inside the doors of panels. */
final class PlateSections {
    private static final int ABREAST = 2;

    /** Rows of pairs that stand on one page. */
    private static final int SHORT = 48;

    /**
     * A panel's directory.
     *
     * @param pairs rows of two lines each: odd and even slots beside each other
     */
    public record Door(String name, String fedFrom, List<List<Map<String, String>>> pairs, boolean isShort) {}

    private final DocumentTables tables;
    private final ShownTables shown;

    PlateSections(Document document, ShownTables shown) {
        this.tables = document.tables();
        this.shown = shown;
    }

    PrintSection equipment() {
        List<List<EquipmentLabel>> lines =
                PrintSections.chunks(tables.equipment().rows(), ABREAST);
        return PrintSections.section(
                "Equipment labels",
                "equipment",
                PrintSections.parts(lines),
                part -> Map.of("note", tables.equipment().note(), "lines", part));
    }

    PrintSection directory() {
        List<PrintBlock> panels = PrintBlock.of(shown.of(tables.directory()), DirectoryLine::panel);
        return PrintSections.section(
                "Circuit directory",
                "directory",
                PrintBlock.parts(panels, PrintSections.ROWS),
                part -> Map.of(
                        "note",
                        tables.directory().note(),
                        "panels",
                        part.stream().map(PlateSections::door).toList()));
    }

    private static Door door(PrintBlock panel) {
        List<List<Map<String, String>>> pairs = new ArrayList<>();
        List<Map<String, String>> odd = slots(panel, 1);
        List<Map<String, String>> even = slots(panel, 0);
        for (int i = 0; i < Math.max(odd.size(), even.size()); i++) {
            pairs.add(List.of(i < odd.size() ? odd.get(i) : NOTHING, i < even.size() ? even.get(i) : NOTHING));
        }
        return new Door(panel.name(), panel.rows().get(0).get("fedFrom"), pairs, pairs.size() <= SHORT);
    }

    private static final Map<String, String> NOTHING = Map.of("slots", "", "purpose", "", "breaker", "", "open", "");

    /** @param rest of the first slot's number, halved */
    private static List<Map<String, String>> slots(PrintBlock panel, int rest) {
        return panel.rows().stream()
                .filter(row ->
                        Integer.parseInt(row.get("slots").split(",", 2)[0].strip()) % 2 == rest)
                .toList();
    }
}
