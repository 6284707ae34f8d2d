package evenrise.solver.bench;

import java.io.PrintStream;
import java.util.List;

/** A table in Markdown, row by row as its figures come, so that what is done is seen. */
final class BenchTable {
    private final List<String> columns;

    BenchTable(String... columns) {
        this.columns = List.of(columns);
    }

    void head(PrintStream out) {
        row(out, columns);
        row(out, columns.stream().map(any -> "---").toList());
    }

    void row(PrintStream out, List<String> cells) {
        out.println("| " + String.join(" | ", cells) + " |");
        out.flush();
    }
}
