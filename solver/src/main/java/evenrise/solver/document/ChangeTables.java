package evenrise.solver.document;

import java.util.List;
import java.util.stream.Stream;

/** What is another than in an earlier plan, as tables. */
public record ChangeTables(
        DocumentTable<KindOfChange> kinds,
        DocumentTable<AffectedSheet> sheets,
        DocumentTable<FigureChange> figures,
        DocumentTable<ChangedCell> cells) {
    static ChangeTables of(PlanState before, PlanState now) {
        List<ChangedCell> cells = ChangedCells.of(before, now);
        return new ChangeTables(
                KindOfChange.table(cells, before, now),
                AffectedSheet.table(before, now),
                FigureChange.table(before, now),
                ChangedCells.table(cells, now));
    }

    Stream<DocumentTable<?>> all() {
        return Stream.of(kinds, sheets, figures, cells);
    }
}
