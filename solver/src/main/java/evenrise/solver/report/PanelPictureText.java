package evenrise.solver.report;

import java.util.ArrayList;
import java.util.List;

/** A panel as a stage leaves it, for a printer of letters: a mark where the stage changes something. */
final class PanelPictureText {
    private static final String CHANGED = ">";

    private PanelPictureText() {}

    static List<String> lines(PanelPicture picture) {
        Section section = new Section(
                Paint.NONE,
                "Panel " + picture.panel() + " as this stage leaves it; " + CHANGED + " marks what it changes");
        Table table = heads(new Table());
        if (picture.isTwoSided()) {
            heads(table);
        }
        List<PanelPicture.Position> all = picture.positions();
        for (int i = 0; i < all.size(); i += picture.isTwoSided() ? 2 : 1) {
            List<String> cells = new ArrayList<>(cells(all.get(i)));
            if (picture.isTwoSided()) {
                cells.addAll(i + 1 < all.size() ? cells(all.get(i + 1)) : List.of("", "", "", ""));
            }
            table.row(cells.toArray(String[]::new));
        }
        return section.table(table).lines();
    }

    private static Table heads(Table table) {
        return table.words("").number("slot").words("line").text("breaker");
    }

    private static List<String> cells(PanelPicture.Position position) {
        return List.of(
                position.isChanged() ? CHANGED : "",
                String.valueOf(position.number()),
                position.line(),
                position.now()
                        + (position.first().isEmpty() ? "" : " (with " + position.first() + ")")
                        + (position.isChanged() ? ", was " + position.was() : ""));
    }
}
