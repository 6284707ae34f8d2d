package evenrise.solver.rendering;

import evenrise.model.rules.NodeFigures;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.EquipmentLabel;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import java.util.List;
import java.util.Map;

/** Labels: at each breaker, and of fault currents and arc flash on equipment. */
final class PlateSections {
    private static final int ABREAST = 2;
    private static final int BREAKERS_ABREAST = 4;

    /** What a plate says, in a language. */
    public record Plate(
            String place,
            String fedFrom,
            String voltage,
            String fault,
            String without,
            boolean isOver,
            String calculated) {}

    private final Document document;
    private final SheetWords words;
    private final DocumentTables tables;
    private final ShownTables shown;

    PlateSections(SiteDocument site, ShownTables shown) {
        this.document = site.document();
        this.words = site.words();
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
        List<List<Plate>> lines = PrintSections.chunks(
                tables.equipment().rows().stream().map(this::plate).toList(), ABREAST);
        return PrintSections.section(
                words.say("stock.equipment"),
                "equipment",
                PrintSections.parts(lines),
                part -> Map.of("lines", part, "isLong", words.language() != SheetLanguage.EN));
    }

    /** What follows a place or a figure in the same line follows it in every language. */
    private Plate plate(EquipmentLabel each) {
        boolean isComputed = each.fault().isPresent();
        return new Plate(
                place(each.place()),
                each.fedFrom().isEmpty() ? "" : words.say("plate.fed-from", "", place(each.fedFrom())),
                words.voltage(each.voltage()),
                isComputed ? words.number(each.faultInWords()) : words.say("plate.unknown"),
                isComputed ? words.say("plate.without-motors", "") : "",
                each.isOver(),
                isComputed
                        ? words.say(
                                "plate.calculated",
                                document.imprint().date(),
                                document.imprint().revision())
                        : "");
    }

    /** The supply has no name of its own. */
    private String place(String id) {
        return Cells.text(id.equals(NodeFigures.SUPPLY) ? words.say("place.supply") : id);
    }
}
