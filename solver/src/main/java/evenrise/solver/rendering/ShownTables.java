package evenrise.solver.rendering;

import evenrise.solver.document.DocumentTable;
import java.util.IdentityHashMap;
import java.util.Map;

/** Tables of one document with their cells as texts, each made once. */
final class ShownTables {
    private final Map<DocumentTable<?>, ShownTable<?>> shown = new IdentityHashMap<>();

    @SuppressWarnings("unchecked") // what was put in for a table has its type of rows
    <R> ShownTable<R> of(DocumentTable<R> table) {
        return (ShownTable<R>) shown.computeIfAbsent(table, ShownTable::of);
    }
}
