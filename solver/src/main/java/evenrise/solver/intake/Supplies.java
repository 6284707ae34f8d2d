package evenrise.solver.intake;

import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;

/** Parts a piece that several breakers feed into one item for each: equal parts of it, or feeds A and B that each carry all. */
final class Supplies {
    /** Says that both feeds are a row's. */
    static final String BOTH = "A+B";

    private final CellReader cells;
    private final Notices notices;

    Supplies(CellReader cells, Notices notices) {
        this.cells = cells;
        this.notices = notices;
    }

    List<Item> of(ReadTable.Row row, Item whole, int breakers) {
        if (whole.feed().equals(BOTH)) {
            return redundant(row, whole);
        }
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < breakers; i++) {
            items.add(breakers == 1 ? whole : whole.part(breakers, i));
        }
        return items;
    }

    private List<Item> redundant(ReadTable.Row row, Item whole) {
        notices.assume("a piece with feeds A and B is two loads in different panels, each of which counts with all that"
                + " it draws, as it carries all where the other is lost");
        List<String> panels = List.of(whole.ties().fedFrom().split("\\s*[/+&,;]\\s*"));
        List<String> names = whole.circuit().names().all();
        if (panels.size() > 2) {
            cells.ask(row, "which of the panels '" + whole.ties().fedFrom() + "' feed it, by A and by B?");
        }
        List<Item> both = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            String panel = panels.size() == 2 ? panels.get(i) : panels.size() == 1 ? panels.get(0) : "";
            CircuitNames circuit = names.size() == 2
                    ? new CircuitNames(names.get(i), List.of(names.get(i)))
                    : i == 0 ? whole.circuit().names() : CircuitNames.NONE;
            both.add(whole.feed(i == 0 ? "A" : "B", panel, circuit, i > 0));
        }
        return both;
    }
}
