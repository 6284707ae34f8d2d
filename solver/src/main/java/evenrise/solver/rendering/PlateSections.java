package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.EquipmentLabel;
import java.util.List;
import java.util.Map;

/** Labels: at each breaker, and of fault currents and arc flash on equipment. */
final class PlateSections {
    private static final int ABREAST = 2;
    private static final int BREAKERS_ABREAST = 4;

    private final DocumentTables tables;
    private final ShownTables shown;

    PlateSections(Document document, ShownTables shown) {
        this.tables = document.tables();
        this.shown = shown;
    }

    PrintSection breakers() {
        List<List<Map<String, String>>> lines =
                PrintSections.chunks(shown.of(tables.labels()).byKey(), BREAKERS_ABREAST);
        return PrintSections.section(
                "Labels for the breakers", "labels", PrintSections.parts(lines), part -> Map.of("lines", part));
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
}
