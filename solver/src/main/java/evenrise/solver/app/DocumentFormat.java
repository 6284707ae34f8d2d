package evenrise.solver.app;

import java.util.List;
import java.util.Locale;

/**
 * A kind of document.
 *
 * @since 0.1.0
 */
public enum DocumentFormat {
    /** One page for a browser. */
    HTML,
    /** Sheets to print, on two sizes of paper. */
    PDF,
    /** A workbook. */
    XLSX,
    /** Drawings for other programs, a file each. */
    DXF,
    /** Tables of values, a file each. */
    CSV;

    public static final List<DocumentFormat> ALL = List.of(values());

    /** The ending of its files, and its word on a command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
