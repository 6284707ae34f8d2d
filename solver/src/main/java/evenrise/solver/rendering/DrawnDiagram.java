package evenrise.solver.rendering;

import evenrise.solver.document.Diagram;
import evenrise.solver.document.Document;
import evenrise.solver.drawing.Sheet;
import evenrise.solver.drawing.Sheets;
import java.util.List;

/** A drawing with its sheets. */
public record DrawnDiagram(Diagram diagram, List<Sheet> sheets) {
    static List<DrawnDiagram> all(Document document) {
        return document.diagrams().stream()
                .map(each -> new DrawnDiagram(each, Sheets.of(each)))
                .toList();
    }

    public String title(Sheet sheet) {
        return sheets.size() == 1
                ? diagram.title()
                : diagram.title() + ", sheet " + sheet.number() + " of " + sheets.size();
    }

    /** What it says to who does not see it. */
    public String inWords() {
        return diagram.title() + " of " + diagram.blocks().size() + " parts; the tables have all that it shows";
    }
}
